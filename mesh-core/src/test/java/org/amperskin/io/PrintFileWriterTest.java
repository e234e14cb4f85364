package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.io.common.WholeFile;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written reads back the same, in each format and across them. */
class PrintFileWriterTest {
  @TempDir Path folder;

  static Stream<TestMeshes.Entry> sound() {
    return Stream.of("closed", "cavity", "open", "duplicated", "inverted", "sheet", "demo")
        .flatMap(g -> TestMeshes.group(g).stream());
  }

  @ParameterizedTest
  @MethodSource("sound")
  void roundTripAcrossFormats(TestMeshes.Entry e) throws Exception {
    SurfaceMesh mesh = PrintFile.read(e.path(), 1, Progress.SILENT).mesh();
    SurfaceMesh obj = written(mesh, "a.obj", PrintFile.Format.OBJ);
    SurfaceMesh stl = written(obj, "b.STL", PrintFile.Format.STL_BINARY);
    SurfaceMesh back = written(stl, "c.OBJ", PrintFile.Format.OBJ);
    for (SurfaceMesh m : List.of(obj, stl, back)) {
      double floats = m == obj ? 1e-12 : 2e-5; // binary STL holds single precision
      double area = Facts.areaMm2(mesh);
      double volume = Facts.volumeMm3(mesh);
      assertThat(m.faceCount()).isEqualTo(mesh.faceCount());
      assertThat(m.vertexCount()).isEqualTo(mesh.vertexCount());
      assertThat(Facts.areaMm2(m)).isCloseTo(area, within(floats * area));
      assertThat(Facts.volumeMm3(m)).isCloseTo(volume, within(floats * Math.abs(volume) + 1e-12));
      assertThat(Facts.closed(m)).isEqualTo(e.closed());
    }
    // OBJ separates names by blanks, so a blank within one is written as an underscore.
    assertThat(obj.groupNames())
        .isEqualTo(mesh.groupNames().stream().map(n -> n.replace(' ', '_')).toList());
    assertThat(areas(obj)).hasSameSizeAs(areas(mesh));
    areas(mesh)
        .forEach(
            (name, a) ->
                assertThat(areas(obj).get(name.replace(' ', '_'))).isCloseTo(a, within(1e-9 * a)));
  }

  @Test
  void objKeepsEveryBitOfACoordinate() throws Exception {
    double[] p = {
      1.0 / 3,
      Math.PI * 1e5,
      1e-7,
      -2e-300,
      1e11 + 0.125,
      Math.nextUp(1.0),
      123456.7,
      Double.MIN_VALUE,
      -1
    };
    SurfaceMesh mesh = SurfaceMesh.of(p, new int[] {0, 1, 2});
    assertThat(written(mesh, "a.obj", PrintFile.Format.OBJ).positions()).isEqualTo(p);
  }

  @Test
  void groupsKeepTheirFacesAndGetNamesThatFit() throws Exception {
    SurfaceMesh sheet = Shapes.sheet(new Vec3(0, 0, 0), new Vec3(4, 0, 0), new Vec3(0, 4, 0), 4);
    int[] groups = new int[32];
    for (int f = 0; f < 32; f++) {
      groups[f] = f % 7 == 6 ? 6 : f % 5;
    }
    List<String> names = List.of("open", "left wing", "", "left_wing", "a#b\\", "nothing", "C:\\");
    SurfaceMesh mesh = SurfaceMesh.of(sheet.positions(), sheet.corners(), groups, names);
    SurfaceMesh back = written(mesh, "a.obj", PrintFile.Format.OBJ);
    assertThat(back.groupNames())
        .containsExactly("open", "left_wing", "default", "left_wing_2", "a_b_", "C:_");
    assertThat(areas(back).values()).containsExactlyInAnyOrderElementsOf(areas(mesh).values());
    assertThat(Files.readAllLines(folder.resolve("a.obj")).stream().filter(l -> l.startsWith("g")))
        .hasSize(6);
  }

  @Test
  void commentsDoNoHarm() throws Exception {
    SurfaceMesh box = Shapes.box(0, 0, 0, 1, 2, 3);
    String comment = "solid\nv 1 2\r\nC:\\x\\\n\u00fc\u0000 " + "long ".repeat(100);
    for (String name : new String[] {"a.stl", "a.obj"}) {
      PrintFileWriter.write(box, folder.resolve(name), comment);
      SurfaceMesh back = PrintFile.read(folder.resolve(name), 1, Progress.SILENT).mesh();
      assertThat(Facts.areaMm2(back)).isEqualTo(22);
      assertThat(back.faceCount()).isEqualTo(12);
    }
    byte[] stl = Files.readAllBytes(folder.resolve("a.stl"));
    assertThat(stl).hasSize(84 + 50 * 12);
    assertThat(new String(stl, 0, 80, StandardCharsets.US_ASCII))
        .startsWith("unit: mm; solid v 1 2");
    assertThat(Files.readString(folder.resolve("a.obj"))).startsWith("# unit: mm\n# solid\n");
  }

  @Test
  void stlNormalsAreUnitAndOutward() throws Exception {
    SurfaceMesh ball = Shapes.sphere(new Vec3(0, 0, 0), 5, 2);
    PrintFileWriter.write(ball, folder.resolve("a.stl"), "");
    var bytes =
        java.nio.ByteBuffer.wrap(Files.readAllBytes(folder.resolve("a.stl")))
            .order(java.nio.ByteOrder.LITTLE_ENDIAN);
    for (int f = 0; f < ball.faceCount(); f++) {
      int at = 84 + 50 * f;
      Vec3 n = new Vec3(bytes.getFloat(at), bytes.getFloat(at + 4), bytes.getFloat(at + 8));
      Vec3 corner =
          new Vec3(bytes.getFloat(at + 12), bytes.getFloat(at + 16), bytes.getFloat(at + 20));
      assertThat(n.length()).isCloseTo(1, within(1e-6));
      assertThat(n.dot(corner)).isPositive();
    }
  }

  @Test
  void sameMeshGivesTheSameBytes() throws Exception {
    SurfaceMesh ball = Shapes.sphere(new Vec3(1, 2, 3), 5, 3);
    for (String name : new String[] {"a.stl", "a.obj"}) {
      PrintFileWriter.write(ball, folder.resolve(name), "x");
      byte[] first = Files.readAllBytes(folder.resolve(name));
      PrintFileWriter.write(ball, folder.resolve(name), "x");
      assertThat(Files.readAllBytes(folder.resolve(name))).isEqualTo(first);
    }
    assertThat(names()).containsExactly("a.obj", "a.stl");
  }

  @Test
  void failureLeavesTheOldFileAndNothingElse() throws Exception {
    Path target = Files.writeString(folder.resolve("part.stl"), "as it was");
    assertThatThrownBy(
            () ->
                WholeFile.write(
                    target,
                    out -> {
                      out.write(new byte[200_000]);
                      throw new IOException("disk full after 200000 bytes");
                    }))
        .hasMessageContaining("disk full");
    assertThat(Files.readString(target)).isEqualTo("as it was");
    assertThat(names()).containsExactly("part.stl");

    Files.createDirectories(folder.resolve("dir.stl/inside"));
    SurfaceMesh box = Shapes.box(0, 0, 0, 1, 2, 3);
    assertThatThrownBy(() -> PrintFileWriter.write(box, folder.resolve("dir.stl"), ""))
        .isInstanceOf(IOException.class);
    assertThatThrownBy(() -> PrintFileWriter.write(box, folder.resolve("none/a.stl"), ""))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("none");
    assertThat(names()).containsExactly("dir.stl", "part.stl");
  }

  @Test
  void unfinishedFileOfAnotherRunIsNotTouched() throws Exception {
    Path other = Files.writeString(folder.resolve(".a.stl.0.part"), "another run");
    PrintFileWriter.write(Shapes.box(0, 0, 0, 1, 2, 3), folder.resolve("a.stl"), "");
    assertThat(Files.readString(other)).isEqualTo("another run");
    assertThat(names()).containsExactly(".a.stl.0.part", "a.stl");
  }

  @Test
  void linkIsFollowedNotReplaced() throws Exception {
    Path file = Files.writeString(folder.resolve("real.obj"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.obj"), file);
    PrintFileWriter.write(Shapes.box(0, 0, 0, 1, 2, 3), link, "");
    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(file)).startsWith("# unit: mm");
  }

  @Test
  void namesAndMeshesThatDoNotFitAreRefused() throws Exception {
    SurfaceMesh box = Shapes.box(0, 0, 0, 1, 2, 3);
    for (String name : new String[] {"a.3mf", "a", "stl", "a.stl.gz"}) {
      assertThatThrownBy(() -> PrintFileWriter.write(box, folder.resolve(name), ""))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContainingAll(name, ".stl", ".obj");
    }
    SurfaceMesh empty = SurfaceMesh.of(new double[0], new int[0]);
    SurfaceMesh huge =
        SurfaceMesh.of(new double[] {0, 0, 0, 1e39, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});
    for (String name : new String[] {"a.obj", "a.stl"}) {
      assertThatThrownBy(() -> PrintFileWriter.write(empty, folder.resolve(name), ""))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("0 faces");
    }
    assertThatThrownBy(() -> PrintFileWriter.write(huge, folder.resolve("a.stl"), ""))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1.0E39 mm");
    assertThat(names()).isEmpty();
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  private static Map<String, Double> areas(SurfaceMesh mesh) {
    Map<String, Double> areas = new TreeMap<>();
    for (int f = 0; f < mesh.faceCount() && !mesh.groupNames().isEmpty(); f++) {
      areas.merge(mesh.groupNames().get(mesh.group(f)), mesh.faceAreaMm2(f), Double::sum);
    }
    return areas;
  }

  private SurfaceMesh written(SurfaceMesh mesh, String name, PrintFile.Format format)
      throws Exception {
    Path target = folder.resolve(name);
    PrintFileWriter.write(mesh, target, "made by a test");
    PrintFile read = PrintFile.read(target, 1, Progress.SILENT);
    assertThat(read.format()).isEqualTo(format);
    return read.mesh();
  }
}
