package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshDiagnosis.Search;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PrintBytes;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a print file is told to be, and what comes of it. */
class PrintFileTest {
  private static final SurfaceMesh CUBE = Shapes.box(0, 0, 0, 10, 10, 10);

  /** For each faulty file: where the message points, then words it must hold. */
  private static final Map<String, List<String>> REFUSALS =
      Map.ofEntries(
          Map.entry("faulty/m01_zero.stl", List.of("", "empty", "0 bytes")),
          Map.entry(
              "faulty/m03_trunc_mid_facet.stl",
              List.of("byte 457", "12 facets", "684", "7 whole facets", "457")),
          Map.entry(
              "faulty/m04_count_too_big.stl", List.of("byte 684", "13 facets", "734", "12 whole")),
          Map.entry("faulty/m07_header_only.stl", List.of("", "84 bytes", "found 83")),
          Map.entry("faulty/m08_nan.stl", List.of("byte 220", "facet 3 ", "NaN")),
          Map.entry(
              "faulty/m10_ascii_trunc.stl", List.of("line 76", "expected z", "end of the file")),
          Map.entry("faulty/m15_index0.obj", List.of("line ", "index 0")),
          Map.entry("faulty/m16_index_range.obj", List.of("line ", "index 9 of 8")),
          Map.entry(
              "faulty/m21_trunc.ply", List.of("byte 493", "inside face 11 of 12", "5 bytes left")),
          Map.entry("faulty/m28_trunc.3mf", List.of("", "damaged ZIP", "507 bytes")),
          Map.entry("faulty/m30_missing_part.3mf", List.of("", "no part /3D/3dmodel.model")),
          Map.entry(
              "faulty/m34_missing_object.3mf", List.of("/3D/3dmodel.model, line", "object 7")));

  @TempDir Path folder;

  static Stream<TestMeshes.Entry> sound() {
    return Stream.of("closed", "cavity", "open", "duplicated", "inverted", "sheet", "demo")
        .flatMap(g -> TestMeshes.group(g).stream());
  }

  @ParameterizedTest
  @MethodSource("sound")
  void soundFilesMeasureAsTheManifestSays(TestMeshes.Entry e) throws Exception {
    PrintFile file = PrintFile.read(e.path(), 1, Progress.SILENT);
    assertThat(file.format().label().toLowerCase().replace(", ", "-")).isEqualTo(e.format());
    assertThat(file.mesh().faceCount()).isEqualTo(e.triangles().getAsInt());
    double area = e.areaMm2().getAsDouble();
    assertThat(Facts.areaMm2(file.mesh())).isCloseTo(area, within(1e-9 * area));
    assertThat(Facts.closed(file.mesh())).isEqualTo(e.closed());
    MeshDiagnosis seen = MeshDiagnosis.of(file.mesh(), Search.NO_OVERLAPS, Progress.SILENT);
    assertThat(seen.areaMm2()).isCloseTo(area, within(1e-9 * area));
    if (e.volumeMm3().isPresent()) {
      double volume = e.volumeMm3().getAsDouble();
      assertThat(seen.closed()).isTrue();
      assertThat(seen.volumeMm3()).isPresent();
      assertThat(seen.volumeMm3().getAsDouble()).isCloseTo(volume, within(1e-9 * Math.abs(volume)));
      assertThat(Facts.volumeMm3(file.mesh())).isCloseTo(volume, within(1e-9 * Math.abs(volume)));
    } else if (!e.group().equals("duplicated")) {
      assertThat(seen.closed()).isFalse();
      assertThat(seen.volumeMm3()).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("sound")
  void quickSumAgreesWithTheFullReading(TestMeshes.Entry e) throws Exception {
    PrintFile.Quick quick = PrintFile.quick(e.path(), 2, Progress.SILENT);
    PrintFile full = PrintFile.read(e.path(), 2, Progress.SILENT);
    double area = Facts.areaMm2(full.mesh());
    assertThat(quick.format()).isEqualTo(full.format());
    assertThat(quick.triangles()).isEqualTo(full.mesh().faceCount());
    assertThat(quick.areaMm2()).isCloseTo(area, within(1e-12 * area));
    assertThat(quick.areaMm2()).isCloseTo(4 * e.areaMm2().getAsDouble(), within(1e-8 * area));
    assertThat(quick.box())
        .isEqualTo(MeshDiagnosis.of(full.mesh(), Search.NO_OVERLAPS, Progress.SILENT).box());
  }

  @Test
  void faultyFilesAreRefusedWithPlaceAndNumbers() {
    List<TestMeshes.Entry> faulty = TestMeshes.group("faulty");
    assertThat(faulty.stream().map(TestMeshes.Entry::file))
        .containsExactlyInAnyOrderElementsOf(new TreeSet<>(REFUSALS.keySet()));
    for (TestMeshes.Entry e : faulty) {
      List<String> expected = REFUSALS.get(e.file());
      for (boolean quick : new boolean[] {false, true}) {
        PrintFileException refusal = refusal(e.path(), quick);
        assertThat(refusal.where()).as(e.file()).startsWith(expected.get(0));
        assertThat(refusal).as(e.file()).message().contains(expected.subList(1, expected.size()));
        assertThat(refusal.getMessage()).as(e.file()).containsPattern("\\d");
      }
    }
  }

  @Test
  void asciiTruncationNamesTheLastLine() throws Exception {
    Path path = TestMeshes.named("faulty/m10_ascii_trunc.stl").path();
    int lines = Files.readAllLines(path).size();
    assertThat(refusal(path, false).where()).isEqualTo("line " + lines);
  }

  @ParameterizedTest
  @ValueSource(strings = {"part.obj", "part", "part.txt", "part.3mf"})
  void binaryStlIsKnownWhateverItsName(String name) throws Exception {
    PrintFile file = read(name, PrintBytes.stlBinary(CUBE, "solid facet normal"));
    assertThat(file.format()).isEqualTo(PrintFile.Format.STL_BINARY);
    assertThat(file.storedVertices()).isEqualTo(36);
    assertThat(file.mesh().vertexCount()).isEqualTo(8);
    if (name.endsWith(".obj") || name.endsWith(".3mf")) {
      String says = name.substring(name.length() - 3).toUpperCase(java.util.Locale.ROOT);
      assertThat(file.notes())
          .containsExactly("named as " + says + ", but its content is STL: read as that");
    } else {
      assertThat(file.notes()).isEmpty();
    }
  }

  @Test
  void textIsKnownWhateverItsName() throws Exception {
    assertCube(read("part.obj", text(PrintBytes.stlAscii(CUBE, "a", "\n"))), "STL, ASCII");
    assertCube(read("part.stl", text(PrintBytes.obj(CUBE, "\n"))), "OBJ");
  }

  @Test
  void binaryStlWithTrailingBytesIsReadAndTold() throws Exception {
    for (String header : new String[] {"", "solid of some program", "# v 1 2 3"}) {
      byte[] bytes = PrintBytes.stlBinary(CUBE, header);
      byte[] longer = Arrays.copyOf(bytes, bytes.length + 7);
      PrintFile file = read("a.stl", longer);
      assertCube(file, "STL, binary");
      assertThat(file.notes()).singleElement().asString().startsWith("7 bytes after");
    }
  }

  @Test
  void colourInAttributesAndNormalsArePassedOver() throws Exception {
    byte[] bytes = PrintBytes.stlBinary(CUBE, "COLOR=....");
    for (int f = 0; f < 12; f++) {
      Arrays.fill(bytes, 84 + 50 * f, 84 + 50 * f + 12, (byte) 0xff); // a normal of NaN
      bytes[84 + 50 * f + 48] = (byte) 0xff;
      bytes[84 + 50 * f + 49] = (byte) 0x83;
    }
    assertCube(read("a.stl", bytes), "STL, binary");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void anyLineEndAnyCaseAndNoLastLineEnd(String end) throws Exception {
    for (String stl :
        new String[] {
          PrintBytes.stlAscii(CUBE, "a b", end), PrintBytes.stlAscii(CUBE, "", end).toUpperCase()
        }) {
      assertCube(read("a", text(stl)), "STL, ASCII");
      assertCube(read("a", text(stl.strip())), "STL, ASCII");
      assertCube(read("a", text(end + end + "  " + stl + end)), "STL, ASCII");
    }
    String obj = PrintBytes.obj(CUBE, end);
    assertCube(read("a", text(obj)), "OBJ");
    assertCube(read("a", text(obj.strip())), "OBJ");
  }

  @Test
  void byteOrderMarksAndSixteenBitTextAreRead() throws Exception {
    for (String s :
        new String[] {PrintBytes.stlAscii(CUBE, "a", "\r\n"), PrintBytes.obj(CUBE, "\n")}) {
      String label = s.startsWith("solid") ? "STL, ASCII" : "OBJ";
      for (Charset c :
          List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
        assertCube(read("a", ("\ufeff" + s).getBytes(c)), label);
      }
    }
    byte[] broken = ("\ufeff" + PrintBytes.obj(CUBE, "\n") + "f 1 2 99\n").getBytes("UTF-16LE");
    assertThat(refusal(write("a", broken), false).where()).isEqualTo("line 21");
  }

  @Test
  void longCommentOrNameBeforeTheFirstVertexIsStillKnown() throws Exception {
    String comment = "# by hand\n".repeat(1000);
    assertCube(read("a", text(comment + PrintBytes.obj(CUBE, "\n"))), "OBJ");
    assertCube(read("a", text(PrintBytes.stlAscii(CUBE, "n".repeat(9000), "\n"))), "STL, ASCII");
  }

  @Test
  void otherFilesAreNamed() throws Exception {
    assertRefused("PK\u0003\u0004 and so on", "ZIP");
    assertRefused("ply\nformat ascii 1.0\n", "PLY");
    assertRefused("hello, this is no print file", "28");
    assertRefused("hello, this is no print file\n".repeat(9), "261");
    assertRefused("solid ground\nis nice\n", "line 2", "is");
    assertRefused("# settings\nspeed: 3\n", "line 2", "speed:");
    byte[] gzip = {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0};
    assertThat(refusal(write("a", gzip), false)).hasMessageContaining("gzip");
    byte[] noise = new byte[5000];
    noise[80] = 1;
    assertThat(refusal(write("a", noise), false)).hasMessageContaining("5000 bytes");
    assertThatThrownBy(() -> PrintFile.read(folder, 1, Progress.SILENT))
        .isInstanceOf(java.io.IOException.class);
    assertThatThrownBy(() -> PrintFile.read(folder.resolve("none"), 1, Progress.SILENT))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void filesWithoutFacesAreRefused() throws Exception {
    assertRefused("solid a\nendsolid a\n", "no facet");
    assertRefused("v 0 0 0\nv 1 0 0\nv 0 1 0\n", "3 vertices and no face");
    assertThat(refusal(write("a", new byte[84]), false)).hasMessageContaining("0 facets");
  }

  @ParameterizedTest
  @ValueSource(longs = {0xFFFFFFFFL, 40_000_000L, 0x80000000L})
  void hugeClaimInATinyFileIsRefusedAtOnce(long claim) throws Exception {
    byte[] bytes = new byte[84];
    ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(80, (int) claim);
    Path path = write("a.stl", bytes);
    refusal(path, false); // loads classes
    var threads =
        (com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean();
    long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
    PrintFileException refusal = refusal(path, false);
    long used = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
    assertThat(refusal).hasMessageContainingAll(Long.toString(claim), "84 bytes");
    assertThat(used).as("bytes allocated").isBetween(1L, 1_000_000L);
  }

  @Test
  void coordinatesThatAreNoneAreRefusedWithTheirPlace() throws Exception {
    for (float bad : new float[] {Float.NaN, Float.POSITIVE_INFINITY, -3e38f}) {
      byte[] bytes = PrintBytes.stlBinary(Shapes.sphere(new Vec3(0, 0, 0), 5, 4), "");
      int at = 84 + 50 * 1500 + 12 + 4 * 7;
      ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putFloat(at, bad);
      Path path = write("a.stl", bytes);
      for (boolean quick : new boolean[] {false, true}) {
        PrintFileException refusal = refusal(path, quick);
        assertThat(refusal.where()).isEqualTo("byte " + at);
        assertThat(refusal).hasMessageContaining("facet 1501 ").hasMessageContaining("" + bad);
      }
    }
    for (String bad : new String[] {"1e999", "nan", "NaN", "inf", "-Infinity", "1e13", "1,5"}) {
      String stl =
          PrintBytes.stlAscii(CUBE, "a", "\n").replaceFirst("vertex 10.0", "vertex " + bad);
      assertThat(refusal(write("a", text(stl)), false))
          .message()
          .contains(bad)
          .matches("line \\d+: .*");
      assertRefused("v 0 0 0\nv 0 " + bad + " 0\n", "line 2", bad);
    }
  }

  @Test
  void minusZeroIsZeroAndEqualPointsAreWelded() throws Exception {
    String obj = "v 0 0 0\nv 1 0 0\nv 0 1 0\nv -0.0 0 -0.0\nv 1 -0 0\nv 1 1 0\nv 5 5 5\n";
    PrintFile file = read("a", text(obj + "f 1 2 3\nf 5 6 3\nf 4 1 2\n"));
    assertThat(file.storedVertices()).isEqualTo(6);
    assertThat(file.mesh().vertexCount()).isEqualTo(4);
    assertThat(file.mesh().corners()).containsExactly(0, 1, 2, 1, 3, 2, 0, 0, 1);
    assertThat(file.notes()).containsExactly("1 vertices on no face passed over");
  }

  @Test
  void scaleActsOnLengths() throws Exception {
    PrintFile file =
        PrintFile.read(write("a", PrintBytes.stlBinary(CUBE, "")), 25.4, Progress.SILENT);
    assertThat(Facts.areaMm2(file.mesh())).isCloseTo(600 * 25.4 * 25.4, within(1e-6));
    for (double bad : new double[] {0, -1, Double.NaN, 1e300, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> PrintFile.read(folder, bad, Progress.SILENT))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("" + bad)
          .hasMessageContaining("mm");
    }
  }

  @ParameterizedTest
  @MethodSource("sound")
  void sameFileGivesTheSameBytes(TestMeshes.Entry e) throws Exception {
    assertThat(fingerprint(e.path())).isEqualTo(fingerprint(e.path()));
  }

  @Test
  void quickSumDoesNotDependOnTheNumberOfThreads() throws Exception {
    SurfaceMesh sphere = Shapes.sphere(new Vec3(3, 1, 2), 17, 7);
    Path path = write("a.stl", PrintBytes.stlBinary(sphere, ""));
    double many = PrintFile.quick(path, 1, Progress.SILENT).areaMm2();
    java.util.concurrent.ForkJoinPool one = new java.util.concurrent.ForkJoinPool(1);
    try {
      double single = one.submit(() -> PrintFile.quick(path, 1, Progress.SILENT).areaMm2()).get();
      assertThat(Double.doubleToLongBits(single)).isEqualTo(Double.doubleToLongBits(many));
    } finally {
      one.shutdown();
    }
  }

  private static byte[] fingerprint(Path path) throws Exception {
    SurfaceMesh mesh = PrintFile.read(path, 1, Progress.SILENT).mesh();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (java.io.DataOutputStream data = new java.io.DataOutputStream(out)) {
      for (double p : mesh.positions()) {
        data.writeDouble(p);
      }
      for (int f = 0; f < mesh.faceCount(); f++) {
        data.writeInt(mesh.corner(f, 0));
        data.writeInt(mesh.corner(f, 1));
        data.writeInt(mesh.corner(f, 2));
        data.writeInt(mesh.group(f));
      }
      data.writeDouble(PrintFile.quick(path, 1, Progress.SILENT).areaMm2());
    }
    return out.toByteArray();
  }

  private static void assertCube(PrintFile file, String label) {
    assertThat(file.format().label()).isEqualTo(label);
    assertThat(file.mesh().faceCount()).isEqualTo(12);
    assertThat(file.mesh().vertexCount()).isEqualTo(8);
    assertThat(Facts.areaMm2(file.mesh())).isEqualTo(600);
    assertThat(Facts.volumeMm3(file.mesh())).isCloseTo(1000, within(1e-9));
  }

  private void assertRefused(String content, String... words) throws Exception {
    assertThat(refusal(write("a", text(content)), false)).hasMessageContainingAll(words);
  }

  private static PrintFileException refusal(Path path, boolean quick) {
    return catchThrowableOfType(
        PrintFileException.class,
        () -> {
          if (quick) {
            PrintFile.quick(path, 1, Progress.SILENT);
          } else {
            PrintFile.read(path, 1, Progress.SILENT);
          }
        });
  }

  private PrintFile read(String name, byte[] bytes) throws Exception {
    return PrintFile.read(write(name, bytes), 1, Progress.SILENT);
  }

  private Path write(String name, byte[] bytes) throws Exception {
    return Files.write(folder.resolve(name), bytes);
  }

  private static byte[] text(String s) {
    return s.getBytes(StandardCharsets.UTF_8);
  }
}
