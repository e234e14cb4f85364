package org.amperskin.bench;

import java.nio.file.Path;
import java.util.Map;

/**
 * Where the user's own files are kept.
 *
 * <p>Definition: the folder in {@code AMPERSKIN_HOME} if that is set; else {@code amperskin} in the
 * data folder of the user: {@code XDG_DATA_HOME} or {@code ~/.local/share} (freedesktop.org base
 * directories), {@code APPDATA} on Windows. {@code AMPERSKIN_LOG} names another bench log. Not
 * guaranteed: that any of it is there; nothing is made here.
 *
 * @param home the folder
 * @param log the bench log
 */
public record UserFolder(Path home, Path log) {
  /** Names the folder. */
  public static final String HOME_VARIABLE = "AMPERSKIN_HOME";

  /** Names the bench log. */
  public static final String LOG_VARIABLE = "AMPERSKIN_LOG";

  /**
   * The folder by these settings.
   *
   * @param environment environment variables
   * @param userHome the user's home folder
   */
  public static UserFolder of(Map<String, String> environment, Path userHome) {
    Path home =
        set(environment, HOME_VARIABLE)
            ? Path.of(environment.get(HOME_VARIABLE))
            : data(environment, userHome).resolve("amperskin");
    Path log =
        set(environment, LOG_VARIABLE)
            ? Path.of(environment.get(LOG_VARIABLE))
            : home.resolve("bench-log.db");
    return new UserFolder(home, log);
  }

  private static Path data(Map<String, String> environment, Path userHome) {
    if (set(environment, "XDG_DATA_HOME")) {
      return Path.of(environment.get("XDG_DATA_HOME"));
    }
    if (set(environment, "APPDATA")) {
      return Path.of(environment.get("APPDATA"));
    }
    return userHome.resolve(".local").resolve("share");
  }

  private static boolean set(Map<String, String> environment, String name) {
    String value = environment.get(name);
    return value != null && !value.isBlank();
  }

  /** Where the counts of steps that are under way are kept. */
  public Path runs() {
    return home.resolve("runs");
  }

  /** Where the user's recipes are. */
  public Path recipes() {
    return home.resolve("recipes");
  }
}
