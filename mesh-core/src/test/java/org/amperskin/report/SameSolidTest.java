package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.io.PrintFile;
import org.amperskin.job.Job;
import org.amperskin.job.MeasuredPart;
import org.amperskin.mesh.MeshDiagnosis.Search;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.PrintBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The same solid has the same mm2 whatever its format and unit. */
class SameSolidTest {
  /** Millimetres of each unit; inch and foot by the international yard of 1959, exact. */
  private static final Map<String, Double> UNITS =
      Map.of("um", 0.001, "mm", 1.0, "cm", 10.0, "in", 25.4, "ft", 304.8, "m", 1000.0);

  private static final Map<String, String> WORDS =
      Map.of(
          "um",
          "micron",
          "mm",
          "millimeter",
          "cm",
          "centimeter",
          "in",
          "inch",
          "ft",
          "foot",
          "m",
          "meter");

  @TempDir Path folder;

  private record Solid(String name, SurfaceMesh mm, double areaMm2, double tolerance) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Solid> solids() {
    SurfaceMesh box = Shapes.box(0, 0, 0, 20, 30, 40);
    int[] open = java.util.Arrays.copyOf(box.corners(), 30);
    SurfaceMesh sphere = Shapes.sphere(new Vec3(3, -4, 5), 12.5, 4);
    return Stream.of(
        new Solid("cube", Shapes.box(-5, -5, -5, 5, 5, 5), 600, 1e-9),
        new Solid("open box", SurfaceMesh.of(box.positions(), open), 5200 - 1200, 1e-9),
        // A sphere of 2048 faces falls short of 4 pi r2 by their flatness only.
        new Solid("sphere", sphere, 4 * Math.PI * 12.5 * 12.5, 8e-3));
  }

  @ParameterizedTest
  @MethodSource("solids")
  void sameAreaInEveryFormatAndUnit(Solid solid) throws Exception {
    double exact = Facts.areaMm2(solid.mm());
    assertThat(exact).isCloseTo(solid.areaMm2(), within(solid.tolerance() * solid.areaMm2()));
    int compared = 0;
    for (Map.Entry<String, Double> unit : UNITS.entrySet()) {
      SurfaceMesh inUnit = scaled(solid.mm(), 1 / unit.getValue());
      for (Map.Entry<String, byte[]> file : files(inUnit, WORDS.get(unit.getKey())).entrySet()) {
        String name = solid.name() + unit.getKey() + file.getKey();
        Path path = Files.write(folder.resolve(name), file.getValue());
        boolean says = name.endsWith(".3mf");
        boolean floats = name.endsWith("b.stl");
        Optional<String> tell = says ? Optional.empty() : Optional.of(unit.getKey());
        MeasuredPart part =
            MeasuredPart.of(
                Job.PartSpec.of(path, tell, 1), Search.NO_OVERLAPS, false, Progress.SILENT);
        assertThat(part.unit()).as(name).isEqualTo(unit.getKey());
        assertThat(part.unitAssumed()).as(name).isFalse();
        assertThat(part.diagnosis().areaMm2())
            .as(name)
            .isCloseTo(exact, within((floats ? 1e-6 : 1e-12) * exact));
        assertThat(part.print().mesh().faceCount()).isEqualTo(solid.mm().faceCount());
        assertThat(Facts.closed(part.print().mesh())).isEqualTo(Facts.closed(solid.mm()));
        compared++;
      }
    }
    assertThat(compared).isEqualTo(6 * 7);
  }

  @Test
  void unitIsTheToldOneThenTheFilesThenMillimetres() throws Exception {
    SurfaceMesh cube = Shapes.box(0, 0, 0, 1, 1, 1);
    Path inches =
        Files.write(folder.resolve("i.3mf"), PackageBytes.of(PackageBytes.model("inch", cube)));
    Path bare = Files.write(folder.resolve("b.ply"), PrintBytes.plyBinary(cube, true));
    MeasuredPart own = measured(inches, Optional.empty());
    assertThat(own.unit()).isEqualTo("in");
    assertThat(own.unitAssumed()).isFalse();
    assertThat(own.diagnosis().areaMm2()).isCloseTo(6 * 645.16, within(1e-9));
    MeasuredPart told = measured(inches, Optional.of("cm"));
    assertThat(told.unit()).isEqualTo("cm");
    assertThat(told.diagnosis().areaMm2()).isCloseTo(600, within(1e-9));
    assertThat(told.print().notes())
        .containsExactly("the file says its unit is in; read in the unit that was told");
    assertThat(measured(inches, Optional.of("in")).print().notes()).isEmpty();
    MeasuredPart assumed = measured(bare, Optional.empty());
    assertThat(assumed.unit()).isEqualTo("mm");
    assertThat(assumed.unitAssumed()).isTrue();
    assertThat(assumed.print().fileUnit()).isEmpty();
    assertThat(PrintFile.quick(inches, 1, Progress.SILENT).areaMm2())
        .isCloseTo(6 * 645.16, within(1e-9));
    assertThat(PrintFile.quick(inches, OptionalDouble.of(10), 2, Progress.SILENT).areaMm2())
        .isCloseTo(2400, within(1e-9));
    assertThat(MeasureText.of(own)).contains("3MF, unit in)").doesNotContain("assumed");
    assertThat(JsonReports.measure(own, false))
        .contains("\"unit\" : \"in\"")
        .contains("\"unitAssumed\" : false");
  }

  private static MeasuredPart measured(Path file, Optional<String> unit) throws Exception {
    return MeasuredPart.of(Job.PartSpec.of(file, unit, 1), Search.ALL, false, Progress.SILENT);
  }

  private static Map<String, byte[]> files(SurfaceMesh mesh, String word) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("b.stl", PrintBytes.stlBinary(mesh, "solid"));
    files.put("a.stl", text(PrintBytes.stlAscii(mesh, "s", "\n")));
    files.put(".obj", text(PrintBytes.obj(mesh, "\r\n")));
    files.put("a.ply", text(PrintBytes.plyAscii(mesh, "\n")));
    files.put("b.ply", PrintBytes.plyBinary(mesh, true));
    files.put("l.ply", PrintBytes.plyBinary(mesh, false));
    files.put(".3mf", PackageBytes.of(PackageBytes.model(word, mesh)));
    return files;
  }

  private static SurfaceMesh scaled(SurfaceMesh mesh, double factor) {
    double[] p = mesh.positions().clone();
    for (int i = 0; i < p.length; i++) {
      p[i] *= factor;
    }
    return SurfaceMesh.of(p, mesh.corners());
  }

  private static byte[] text(String s) {
    return s.getBytes(StandardCharsets.UTF_8);
  }
}
