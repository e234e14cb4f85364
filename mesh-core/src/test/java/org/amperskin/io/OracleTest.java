package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.PrintBytes;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Our areas against two general-purpose readers: the Open Asset Import Library 6 (through LWJGL)
 * and Apache Commons Geometry 1.0. The first keeps coordinates as 32-bit floats.
 */
class OracleTest {
  private static final double FLOATS = 2e-5;

  private static final List<String> GROUPS =
      List.of("demo", "closed", "cavity", "open", "duplicated", "inverted", "sheet");

  /** Neither of them reads ASCII STL in upper case. */
  private static final String UPPER_CASE = "small/v04_cube10_upper_crlf.stl";

  @TempDir Path folder;

  static Stream<TestMeshes.Entry> sound() {
    return GROUPS.stream()
        .flatMap(g -> TestMeshes.group(g).stream())
        .filter(e -> !e.file().equals(UPPER_CASE) && !e.format().equals("3mf"));
  }

  @Test
  void onlyOneSoundFileIsLeftOut() {
    List<TestMeshes.Entry> all =
        GROUPS.stream().flatMap(g -> TestMeshes.group(g).stream()).toList();
    // The first ignores units and transforms of 3MF, the second does not read it.
    int packages = (int) all.stream().filter(e -> e.format().equals("3mf")).count();
    assertThat(packages).isEqualTo(6);
    assertThat(sound()).hasSize(all.size() - 1 - packages).hasSizeGreaterThan(8);
  }

  @ParameterizedTest
  @MethodSource("sound")
  void ourAreaIsTheirs(TestMeshes.Entry e) throws Exception {
    compare(e.path(), !e.file().contains("solid_header") && !e.format().equals("ply"));
  }

  @Test
  void generatedSpheresInEveryFormat() throws Exception {
    int compared = 0;
    for (int depth = 0; depth <= 5; depth++) {
      SurfaceMesh sphere = Shapes.sphere(new Vec3(12.3, -4.5, 6.7), 8.9, depth);
      List<Path> paths = new ArrayList<>();
      paths.add(
          Files.write(folder.resolve(depth + "b.stl"), PrintBytes.stlBinary(sphere, "sphere")));
      String ascii = PrintBytes.stlAscii(sphere, "sphere", "\n");
      paths.add(Files.writeString(folder.resolve(depth + "a.stl"), ascii, StandardCharsets.UTF_8));
      paths.add(Files.writeString(folder.resolve(depth + ".obj"), PrintBytes.obj(sphere, "\n")));
      Path ply = Files.write(folder.resolve(depth + ".ply"), PrintBytes.plyBinary(sphere, false));
      compare(ply, false);
      Path plain =
          Files.write(
              folder.resolve(depth + ".3mf"),
              PackageBytes.of(PackageBytes.model("millimeter", sphere)));
      compare(plain, false);
      for (Path path : paths) {
        compare(path, true);
        compared++;
      }
    }
    assertThat(compared).isEqualTo(18);
  }

  /** Files of the Debian package assimp-testmodels, one of them with free text in its header. */
  @Test
  void installedPlyFiles() throws Exception {
    int compared = 0;
    for (String name : List.of("Wuson", "cube", "cube_binary", "cube_uv", "float-color")) {
      Path path = Path.of("/usr/share/assimp/models/PLY", name + ".ply");
      if (!Files.isReadable(path)) {
        System.out.println("NOT RUN, file not installed: " + path);
        continue;
      }
      compare(path, false);
      compared++;
    }
    org.junit.jupiter.api.Assumptions.assumeTrue(compared > 0, "no file installed");
    assertThat(compared).isEqualTo(5);
  }

  /** The second reader takes a binary STL whose header begins with "solid" for text. */
  private static void compare(Path path, boolean bySecond) throws Exception {
    SurfaceMesh ours = PrintFile.read(path, 1, Progress.SILENT).mesh();
    double area = Facts.areaMm2(ours);
    OracleReaders.Found first = OracleReaders.assimp(path);
    assertThat(first.faces()).isEqualTo(ours.faceCount());
    assertThat(first.area()).isCloseTo(area, within(FLOATS * area));
    if (bySecond) {
      OracleReaders.Found second = OracleReaders.commons(path);
      assertThat(second.area()).isCloseTo(area, within(FLOATS * area));
    }
  }
}
