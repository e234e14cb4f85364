package org.amperskin.testmeshes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The files below {@code test-meshes} in named groups, with what is known of them.
 *
 * <p>Definition: the lines of {@code test-meshes/manifest.csv}, in order. Tests ask for groups,
 * never for paths. The folder is found by walking up from the working folder.
 */
public final class TestMeshes {
  /** The only groups there are. */
  public static final List<String> GROUPS =
      List.of(
          "closed",
          "cavity",
          "open",
          "duplicated",
          "inverted",
          "sheet",
          "faulty",
          "demo",
          "artwork",
          "job",
          "shop");

  private static final String HEADER =
      "file,group,format,unit,triangles,areaMm2,volumeMm3,closed,origin,licence,note";

  private TestMeshes() {}

  /**
   * One file.
   *
   * @param path where it is
   * @param file its name below {@code test-meshes}
   * @param group its group
   * @param format {@code stl-binary}, {@code stl-ascii}, {@code obj}, {@code ply}, {@code 3mf},
   *     {@code svg} or {@code yaml}
   * @param unit unit of the file's coordinates
   * @param triangles number of triangles as stored, empty if the file is not a sound mesh
   * @param areaMm2 sum of all triangles as stored (mm2)
   * @param volumeMm3 signed volume (mm3), empty if nothing is enclosed
   * @param closed every side has one opposite twin
   * @param note what a reader or a measurement has to say
   */
  public record Entry(
      Path path,
      String file,
      String group,
      String format,
      String unit,
      OptionalInt triangles,
      OptionalDouble areaMm2,
      OptionalDouble volumeMm3,
      boolean closed,
      String note) {
    @Override
    public String toString() {
      return file;
    }
  }

  /** The folder {@code test-meshes}. */
  public static Path folder() {
    Path start = Path.of("").toAbsolutePath();
    for (Path p = start; p != null; p = p.getParent()) {
      if (Files.exists(p.resolve("test-meshes/manifest.csv"))) {
        return p.resolve("test-meshes");
      }
    }
    throw new IllegalStateException("no test-meshes/manifest.csv above " + start);
  }

  /** The files of a group, never none. */
  public static List<Entry> group(String group) {
    if (!GROUPS.contains(group)) {
      throw new IllegalArgumentException("no group " + group + ", only " + GROUPS);
    }
    List<Entry> found = all().stream().filter(e -> e.group().equals(group)).toList();
    if (found.isEmpty()) {
      throw new IllegalStateException("group " + group + " is empty");
    }
    return found;
  }

  /** The one file of that name, such as {@code demo/visor.stl}. */
  public static Entry named(String file) {
    return all().stream()
        .filter(e -> e.file().equals(file))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("not in the manifest: " + file));
  }

  /** All files. */
  public static List<Entry> all() {
    Path folder = folder();
    List<Entry> entries = new ArrayList<>();
    try {
      List<String> lines = Files.readAllLines(folder.resolve("manifest.csv"));
      if (!lines.get(0).equals(HEADER)) {
        throw new IllegalStateException("manifest.csv:1: expected " + HEADER);
      }
      for (int i = 1; i < lines.size(); i++) {
        entries.add(entry(folder, lines.get(i), i + 1));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return List.copyOf(entries);
  }

  private static Entry entry(Path folder, String line, int number) {
    // The note comes last and may hold commas.
    String[] w = line.split(",", 11);
    if (w.length != 11 || !GROUPS.contains(w[1]) || !w[7].matches("yes|no|-")) {
      throw new IllegalStateException("manifest.csv:" + number + ": cannot read " + line);
    }
    return new Entry(
        folder.resolve(w[0]),
        w[0],
        w[1],
        w[2],
        w[3],
        w[4].isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(w[4])),
        quantity(w[5]),
        quantity(w[6]),
        w[7].equals("yes"),
        w[10]);
  }

  private static OptionalDouble quantity(String word) {
    return word.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(word));
  }
}
