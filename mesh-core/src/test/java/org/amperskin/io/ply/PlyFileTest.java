package org.amperskin.io.ply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.amperskin.geom.Vec3;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PrintBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** PLY as its description allows it (G. Turk, The PLY Polygon File Format, 1994, from memory). */
class PlyFileTest {
  private static final SurfaceMesh BOX = Shapes.box(0, 0, 0, 1, 2, 3);
  private static final String CUBE_CORNERS =
      "0 0 0\n1 0 0\n1 1 0\n0 1 0\n0 0 1\n1 0 1\n1 1 1\n0 1 1\n";
  private static final String CUBE_SIDES =
      "4 0 3 2 1\n4 4 5 6 7\n4 0 1 5 4\n4 1 2 6 5\n4 2 3 7 6\n4 3 0 4 7\n";
  private static final String XYZ = "property float x\nproperty float y\nproperty float z\n";
  private static final String INDICES = "property list uchar int vertex_indices\n";

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void anyLineEnd(String end) throws Exception {
    SurfaceMesh mesh = mesh(PrintBytes.plyAscii(BOX, end));
    assertThat(Facts.areaMm2(mesh)).isEqualTo(22);
    assertThat(Facts.volumeMm3(mesh)).isCloseTo(6, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void bothByteOrdersKeepEveryBit(boolean bigEndian) throws Exception {
    SurfaceMesh sphere = Shapes.sphere(new Vec3(0.1, -7.3, 1e-9), 5.77, 4);
    SurfaceMesh mesh = mesh(PrintBytes.plyBinary(sphere, bigEndian));
    assertThat(mesh.faceCount()).isEqualTo(sphere.faceCount());
    assertThat(Facts.areaMm2(mesh)).isEqualTo(Facts.areaMm2(sphere));
    assertThat(Facts.closed(mesh)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void binaryBodyBeginsRightAfterTheHeadersLineEnd(String end) throws Exception {
    byte[] sound = PrintBytes.plyBinary(BOX, false);
    String all = new String(sound, StandardCharsets.ISO_8859_1);
    int body = all.indexOf("end_header\n") + 11;
    byte[] file =
        (all.substring(0, body).replace("\n", end) + all.substring(body))
            .getBytes(StandardCharsets.ISO_8859_1);
    assertThat(Facts.areaMm2(mesh(file))).isEqualTo(22);
  }

  @ParameterizedTest
  @CsvSource({
    "char, uchar, 1", "int8, uint8, 1", "short, ushort, 2", "int16, uint16, 2",
    "int, uint, 4", "int32, uint32, 4", "float, int, 4", "float32, int32, 4",
    "double, uint, 8", "float64, uint32, 8"
  })
  void everyTypeUnderBothNames(String coordinate, String index, int bytes) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DataOutputStream data = new DataOutputStream(out);
    String head =
        "ply\nformat binary_big_endian 1.0\nelement vertex 3\n"
            + XYZ.replace("float", coordinate)
            + "element face 1\nproperty list "
            + index
            + " "
            + index
            + " vertex_index\nend_header\n";
    data.writeBytes(head);
    int[] points = {-100, 0, 7, 20, 0, 7, -100, 50, 7}; // legs 120 and 50
    for (int p : points) {
      number(data, coordinate, bytes, p);
    }
    int size =
        index.contains("8") || index.equals("uchar") ? 1 : index.matches(".*(short|16)") ? 2 : 4;
    for (int i : new int[] {3, 0, 1, 2}) {
      number(data, index, size, i);
    }
    assertThat(Facts.areaMm2(mesh(out.toByteArray()))).isEqualTo(3000);
    String text =
        head.replace("binary_big_endian", "ascii") + "-100 0 7\n20 0 7\n-100 50 7\n3 0 1 2\n";
    assertThat(Facts.areaMm2(mesh(text))).isEqualTo(3000);
  }

  private static void number(DataOutputStream out, String type, int bytes, int value)
      throws IOException {
    if (type.startsWith("double") || type.equals("float64")) {
      out.writeDouble(value);
    } else if (type.startsWith("float")) {
      out.writeFloat(value);
    } else if (bytes == 1) {
      out.writeByte(value);
    } else if (bytes == 2) {
      out.writeShort(value);
    } else {
      out.writeInt(value);
    }
  }

  @Test
  void propertiesInAnyOrderAndUnknownOnesBetween() throws Exception {
    String text =
        "ply\nformat ascii 1.0\ncomment colours and all\nobj_info of no use\n"
            + "element camera 1\nproperty float focus\nproperty list uchar short hours\n"
            + "element vertex 3\nproperty uchar red\nproperty double z\nproperty float ny\n"
            + "property int x\nproperty list int float weights\nproperty float y\n"
            + "element face 1\nproperty uchar mark\nproperty list uchar int vertex_index\n"
            + "property list uchar float texcoord\nelement edge 2\nproperty int a\nproperty int b\n"
            + "end_header\n"
            + "nan 3 1 2 3\n255 5 nan 0 2 .5 .5 0\n1 5 0 4 0 0\n2 5 0 0 1 9 3\n"
            + "7 3 0 1 2 2 0.5 0.5\n0 1\n1 2\n";
    PlyFile.Content read = read(text.getBytes(StandardCharsets.US_ASCII));
    SurfaceMesh mesh = read.mesh().build(1);
    assertThat(Facts.areaMm2(mesh)).isEqualTo(6);
    assertThat(mesh.z(0)).isEqualTo(5);
    assertThat(read.notes()).containsExactly("passed over: 1 camera, 2 edge");
    assertThat(read.storedVertices()).isEqualTo(3);
  }

  @Test
  void unknownElementsOfABinaryFileArePassedOverBySize() throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DataOutputStream data = new DataOutputStream(out);
    data.writeBytes(
        "ply\nformat binary_big_endian 1.0\nelement edge 2\nproperty int a\nproperty short b\n"
            + "element group 2\nproperty list ushort double weights\nproperty uchar mark\n"
            + "element vertex 3\n"
            + XYZ
            + "element face 1\nproperty uchar red\n"
            + INDICES
            + "end_header\n");
    data.write(new byte[12]);
    data.writeShort(2);
    data.write(new byte[17]);
    data.writeShort(0);
    data.write(1);
    for (int p : new int[] {0, 0, 0, 6, 0, 0, 0, 4, 0}) {
      data.writeFloat(p);
    }
    data.write(9);
    data.write(3);
    for (int i = 0; i < 3; i++) {
      data.writeInt(i);
    }
    assertThat(Facts.areaMm2(mesh(out.toByteArray()))).isEqualTo(12);
  }

  @Test
  void facesAndStripsMayComeBeforeTheVertices() throws Exception {
    String faces = "element face 6\n" + INDICES;
    String vertices = "element vertex 8\n" + XYZ;
    SurfaceMesh first = mesh(head(faces + vertices) + CUBE_SIDES + CUBE_CORNERS);
    SurfaceMesh second = mesh(head(vertices + faces) + CUBE_CORNERS + CUBE_SIDES);
    assertThat(Facts.areaMm2(first)).isEqualTo(6);
    assertThat(Facts.volumeMm3(first)).isCloseTo(1, within(1e-12));
    assertThat(first.positions()).isEqualTo(second.positions());
    assertThat(first.corners()).isEqualTo(second.corners());
    SurfaceMesh strip =
        mesh(
            head("element tristrips 1\n" + INDICES + "element vertex 4\n" + XYZ)
                + "4 0 1 2 3\n0 0 0\n1 0 0\n0 1 0\n1 1 0\n");
    assertThat(Facts.areaMm2(strip)).isEqualTo(1);
  }

  @Test
  void stripsTurnEverySecondFaceAndBeginAnewAtMinusOne() throws Exception {
    // Two strips around a tetrahedron give its four faces, all outward.
    String text =
        head(
                "element vertex 4\n"
                    + XYZ
                    + "element tristrips 1\nproperty list int int vertex_indices\n")
            + "0 0 0\n1 0 0\n0 1 0\n0 0 1\n9 0 1 3 2 -1 1 0 2 3\n";
    SurfaceMesh mesh = mesh(text);
    assertThat(mesh.faceCount()).isEqualTo(4);
    assertThat(Facts.areaMm2(mesh)).isCloseTo(1.5 + Math.sqrt(3) / 2, within(1e-12));
    assertThat(Facts.closed(mesh)).isTrue();
    assertThat(Facts.volumeMm3(mesh)).isCloseTo(1.0 / 6, within(1e-12));
    // A strip folded with a repeated corner: flat faces only join.
    String folded =
        head("element vertex 4\n" + XYZ + "element tristrips 1\n" + INDICES)
            + "0 0 0\n1 0 0\n0 1 0\n1 1 0\n6 0 1 2 2 3 1\n";
    assertThat(mesh(folded).faceCount()).isEqualTo(2);
  }

  @Test
  void stripOfAClosedBoxEnclosesItsVolume() throws Exception {
    // A well-known strip of 14 corners around a cube.
    String text =
        head("element vertex 8\n" + XYZ + "element tristrips 1\n" + INDICES)
            + "0 1 1\n1 1 1\n0 0 1\n1 0 1\n0 1 0\n1 1 0\n0 0 0\n1 0 0\n"
            + "14 0 1 2 3 7 1 5 4 7 6 2 4 0 1\n";
    SurfaceMesh mesh = mesh(text);
    assertThat(Facts.areaMm2(mesh)).isEqualTo(6);
    assertThat(Facts.closed(mesh)).isTrue();
    assertThat(Math.abs(Facts.volumeMm3(mesh))).isCloseTo(1, within(1e-12));
  }

  @Test
  void concavePolygonsHaveTheirOwnArea() throws Exception {
    // An arrow: a square of 4 less a notch of 1, by the shoelace formula.
    String text =
        head("element vertex 5\n" + XYZ + "element face 1\n" + INDICES)
            + "0 0 0\n2 0 0\n1 1 0\n2 2 0\n0 2 0\n5 0 1 2 3 4\n";
    assertThat(Facts.areaMm2(mesh(text))).isCloseTo(3, within(1e-12));
  }

  @Test
  void facesOfTwoCornersAreLeftOutAndTold() throws Exception {
    PlyFile.Content read =
        read(
            (head("element vertex 3\n" + XYZ + "element face 3\n" + INDICES)
                    + "0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n2 0 1\n0\n")
                .getBytes(StandardCharsets.US_ASCII));
    assertThat(read.notes()).containsExactly("2 faces of fewer than 3 corners left out");
    assertThat(read.mesh().faceCount()).isEqualTo(1);
  }

  @Test
  void linesMayBeWrappedButNotTooLong() throws Exception {
    String head = head("element vertex 3\n" + XYZ + "element face 1\n" + INDICES);
    assertThat(Facts.areaMm2(mesh(head + "0 0\n0\n\n1 0 0\n0 1 0\n3 0\n1 2"))).isEqualTo(0.5);
    refused(head + "0 0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n", "line 10", "vertex 1 of 3", "more", "0");
    refused(head + "0 0 0\n1 0\n0 1 0\n3 0 1 2\n", "line 12", "vertex 2 of 3", "more", "\"1\"");
  }

  @Test
  void freeTextBeforeTheElementsIsPassedOverAndTold() throws Exception {
    PlyFile.Content read =
        read(
            PrintBytes.plyAscii(BOX, "\n")
                .replace("comment made", "Made by hand")
                .getBytes(StandardCharsets.US_ASCII));
    assertThat(Facts.areaMm2(read.mesh().build(1))).isEqualTo(22);
    assertThat(read.notes())
        .containsExactly("line 3 of the header is not PLY's, passed over: Made by hand for a test");
  }

  @Test
  void everyRefusalNamesItsPlaceAndNumbers() {
    String vertices = "element vertex 3\n" + XYZ;
    String corners = "0 0 0\n1 0 0\n0 1 0\n";
    String head = head(vertices + "element face 1\n" + INDICES);
    refused(head + corners + "3 0 1 3\n", "line 13", "face 1 of 1", "3 of 3 vertices");
    refused(head + corners + "3 0 1 -1\n", "line 13", "-1 of 3 vertices");
    refused(head + corners + "3 0 1 1.5\n", "line 13", "1.5");
    refused(head + corners + "-3 0 1 2\n", "line 13", "length -3");
    refused(head + corners + "3 0 1\n", "line 13", "the file ends inside face 1 of 1");
    refused(head + "0 0 0\n1 nan 0\n0 1 0\n3 0 1 2\n", "line 11", "\"nan\"");
    refused(head + "0 0 0\n1 NaN 0\n0 1 0\n3 0 1 2\n", "line 11", "y is NaN");
    refused(head + "0 0 0\n1 1e13 0\n0 1 0\n3 0 1 2\n", "line 11", "1.0E13", "1.0E12");
    refused(head + "0 0 0\n1 O 0\n0 1 0\n3 0 1 2\n", "line 11", "\"O\"");
    refused(head("element vertex 3\nproperty float x\nproperty float y\n"), "line 3", "number z");
    refused(
        head(vertices + "element face 1\nproperty int v\n") + corners + "1\n", "vertex_indices");
    refused(head(vertices) + corners, "3 vertices and 0 faces", "nothing to measure");
    refused(head(vertices + "element vertex 2\n"), "line 7", "a second time", "line 3");
    refused(head("property float x\n"), "line 3", "before any element");
    refused(head("element vertex three\n"), "line 3", "three");
    refused(head("element vertex -3\n"), "line 3", "-3");
    refused(head("element vertex 3\nproperty real x\n"), "line 4", "real", "uchar");
    refused(head("element vertex 3\nproperty list float int x\n"), "line 4", "whole number");
    refused(head(vertices + "elemental 3\n"), "line 7", "elemental 3");
    refused(head("elmnt vertex 3\n" + XYZ), "line 4", "before any element");
    refused("ply\nformat ascii 2.0\nend_header\n", "line 2", "2.0");
    refused("ply\nelement vertex 0\nend_header\n", "line 3", "format");
    refused("ply\nformat ascii 1.0\n", "line 3", "inside the PLY header");
    refused("polygon\n", "line 1", "polygon");
  }

  @Test
  void binaryRefusalsNameTheByte() {
    byte[] sound = PrintBytes.plyBinary(BOX, false);
    int body = new String(sound, StandardCharsets.ISO_8859_1).indexOf("end_header\n") + 11;
    byte[] index = sound.clone();
    index[body + 8 * 24 + 13 + 1] = 8;
    assertThat(refusal(index).where()).isEqualTo("byte " + (body + 8 * 24 + 13 + 5));
    assertThat(refusal(index)).hasMessageContaining("face 2 of 12: vertex index 8 of 8");
    byte[] nan = sound.clone();
    java.util.Arrays.fill(nan, body + 24 + 8, body + 24 + 16, (byte) 0xff);
    assertThat(refusal(nan).where()).isEqualTo("byte " + (body + 40));
    assertThat(refusal(nan)).hasMessageContaining("vertex 2 of 8: y is NaN");
    byte[] cut = java.util.Arrays.copyOf(sound, body + 50);
    assertThat(refusal(cut).where()).isEqualTo("byte " + (body + 50));
    assertThat(refusal(cut)).hasMessageContaining("inside vertex 3");
  }

  @ParameterizedTest
  @CsvSource({
    "ascii, vertex 4000000000",
    "ascii, vertex 2000000000",
    "binary_little_endian, vertex 4000000000",
    "binary_big_endian, vertex 999999999999999999",
    "binary_big_endian, edge 999999999999999999"
  })
  void hugeClaimsInATinyFileAreRefusedAtOnce(String format, String claim) {
    String text =
        "ply\nformat " + format + " 1.0\nelement " + claim + "\n" + XYZ + "end_header\n0 0 0\n";
    long start = System.nanoTime();
    PrintFileException e = refusal(text.getBytes(StandardCharsets.US_ASCII));
    assertThat(System.nanoTime() - start).isLessThan(1_000_000_000L);
    assertThat(e).hasMessageContaining(claim.split(" ")[1]);
  }

  @Test
  void hugeListInATinyFileIsRefusedAtOnce() {
    String head =
        head(
            "element vertex 3\n" + XYZ + "element face 1\nproperty list uint int vertex_indices\n");
    refused(head + "0 0 0\n1 0 0\n0 1 0\n4294967295 0 1 2\n", "line 13", "4294967295", "room for");
  }

  private static String head(String elements) {
    return "ply\nformat ascii 1.0\n" + elements + "end_header\n";
  }

  private static SurfaceMesh mesh(String text) throws Exception {
    return mesh(text.getBytes(StandardCharsets.US_ASCII));
  }

  private static SurfaceMesh mesh(byte[] bytes) throws Exception {
    return read(bytes).mesh().build(1);
  }

  private static PlyFile.Content read(byte[] bytes) throws IOException, PrintFileException {
    return PlyFile.read(new ByteArrayInputStream(bytes), bytes.length);
  }

  private static void refused(String text, String... words) {
    assertThat(refusal(text.getBytes(StandardCharsets.US_ASCII)))
        .message()
        .contains(List.of(words));
  }

  private static PrintFileException refusal(byte[] bytes) {
    PrintFileException e = catchThrowableOfType(PrintFileException.class, () -> read(bytes));
    assertThat(e).as(new String(bytes, StandardCharsets.ISO_8859_1)).isNotNull();
    return e;
  }
}
