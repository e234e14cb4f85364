package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.TestMeshes;
import org.apache.commons.geometry.io.euclidean.threed.IO3D;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Real files that Debian and Maven packages carry, against the areas in {@code
 * test-meshes/from-packages.tsv}.
 *
 * <p>Debian's lie below {@code /usr} once the packages are installed; Maven's are on the class
 * path. A row whose file is not there is named on standard output and skipped.
 */
class RealFilesTest {
  private static final Pattern EXPECTED =
      Pattern.compile("n=(\\d+) A=(\\S+) V=(\\S+) closed=(yes|no) \\[(.+)]");

  @TempDir Path folder;

  /** One line of the list. */
  private record Row(
      String origin,
      String file,
      int faces,
      double area,
      double volume,
      boolean closed,
      String how) {
    @Override
    public String toString() {
      return origin + ": " + file;
    }

    boolean isMaven() {
      return origin.startsWith("Maven");
    }
  }

  static Stream<Row> rows() throws IOException {
    List<Row> rows = new ArrayList<>();
    for (String line : Files.readAllLines(TestMeshes.folder().resolve("from-packages.tsv"))) {
      String[] w = line.split("\t");
      if (w.length == 4
          && w[1].toLowerCase(Locale.ROOT).matches(".*\\.(stl|obj|ply|3mf|stl\\.gz)")) {
        Matcher m = EXPECTED.matcher(w[3]);
        assertThat(m.matches()).as(line).isTrue();
        rows.add(
            new Row(
                w[0],
                w[1],
                Integer.parseInt(m.group(1)),
                Double.parseDouble(m.group(2)),
                Double.parseDouble(m.group(3)),
                m.group(4).equals("yes"),
                m.group(5)));
      }
    }
    return rows.stream();
  }

  @Test
  void listHasTheRowsOfAllFormats() throws Exception {
    assertThat(rows()).hasSize(29);
    assertThat(rows().filter(Row::isMaven)).hasSize(5);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void areaIsAsListed(Row row) throws Exception {
    Path path = find(row);
    if (path == null) {
      assertThat(row.isMaven()).as("%s must be on the class path", row).isFalse();
      System.out.println("NOT RUN, file not installed: " + row);
      Assumptions.abort("not installed: " + row);
    }
    SurfaceMesh mesh = PrintFile.read(path, 1, Progress.SILENT).mesh();
    double area = Facts.areaMm2(mesh);
    assertThat(mesh.faceCount()).isEqualTo(row.faces());
    if (row.how().equals("polygon-dependent")) {
      concave(row, path, area);
      return;
    }
    assertThat(area).isCloseTo(row.area(), within(2e-5 * row.area()));
    assertThat(Facts.closed(mesh)).isEqualTo(row.closed());
    if (row.closed()) {
      assertThat(Facts.volumeMm3(mesh)).isCloseTo(row.volume(), within(1e-4 * row.volume()));
    }
  }

  /**
   * A plane polygon has the area of its Newell vector if its triangles neither overlap nor stand
   * out; the listed value is that of a fan, which does both.
   */
  private static void concave(Row row, Path path, double area) {
    double newell = OracleReaders.commons(path).area();
    System.out.printf(
        Locale.ROOT,
        "%s: our area %.10f, its polygons' Newell vectors %.10f, listed %.10f%n",
        row,
        area,
        newell,
        row.area());
    assertThat(area).isCloseTo(newell, within(1e-9 * newell));
  }

  private Path find(Row row) throws IOException {
    if (row.isMaven()) {
      Path copy = folder.resolve(Path.of(row.file()).getFileName().toString());
      try (InputStream in = IO3D.class.getResourceAsStream("/" + row.file())) {
        if (in == null) {
          return null;
        }
        Files.copy(in, copy);
      }
      return copy;
    }
    Path installed = Path.of("/usr", row.file());
    if (!Files.isReadable(installed)) {
      return null;
    }
    return installed;
  }
}
