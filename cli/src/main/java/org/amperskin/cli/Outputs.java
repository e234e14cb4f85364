package org.amperskin.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Checks where an answer is to be written, before the work rather than after it. */
final class Outputs {
  private Outputs() {}

  /** Refuses a name no writer fits and a folder that is not there; null passes. */
  static void check(String option, Path out, String... endings) throws UsageFault {
    if (out == null) {
      return;
    }
    boolean known = false;
    for (String ending : endings) {
      known |= ends(out, ending);
    }
    if (!known) {
      throw new UsageFault(
          option + " " + out + ": a name ending in " + String.join(" or ", endings) + " fits");
    }
    Path folder = out.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      throw new UsageFault(option + " " + out + ": there is no folder " + folder);
    }
  }

  static boolean ends(Path file, String ending) {
    return file.toString().toLowerCase(Locale.ROOT).endsWith(ending);
  }
}
