package org.amperskin.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.amperskin.io.common.WholeFile;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlText;

/**
 * A job file as text, for changing single values of its films and writing it back.
 *
 * <p>Guaranteed: what is not changed keeps its bytes, a byte order mark too. Not guaranteed:
 * anything of files that are not UTF-8; they are refused when read.
 *
 * @param file where it stands
 * @param mark whether it began with a byte order mark
 * @param yaml its text
 */
public record JobText(Path file, boolean mark, YamlText yaml) {
  private static final String MARK = "\ufeff";

  /**
   * Reads a file.
   *
   * @throws IOException if it cannot be read
   * @throws YamlFault if it is not a text
   */
  public static JobText read(Path file) throws IOException, YamlFault {
    byte[] bytes = JobFile.bytes(file);
    String text = JobFile.text(bytes, file.toString());
    boolean mark = bytes.length > text.getBytes(StandardCharsets.UTF_8).length;
    return new JobText(file, mark, new YamlText(text));
  }

  /** A value of a film as it stands, without quotes. */
  public Optional<String> film(String film, String key) {
    return yaml.get(List.of("film", film, key));
  }

  /**
   * The same with another value of a film.
   *
   * @throws IllegalArgumentException if the text does not let it be changed
   */
  public JobText withFilm(String film, String key, String value) {
    return new JobText(file, mark, yaml.with(List.of("film", film, key), value));
  }

  /** The job it tells. */
  public Job job(RecipeLibrary recipes) throws YamlFault {
    return JobFile.parse(yaml.text(), file, recipes);
  }

  /** True if the file holds just this text. */
  public boolean isOnDisk() throws IOException {
    return java.util.Arrays.equals(bytes(), Files.readAllBytes(file));
  }

  /** Writes it into its file, whole or not at all. */
  public void save() throws IOException {
    WholeFile.write(file, out -> out.write(bytes()));
  }

  private byte[] bytes() {
    return ((mark ? MARK : "") + yaml.text()).getBytes(StandardCharsets.UTF_8);
  }
}
