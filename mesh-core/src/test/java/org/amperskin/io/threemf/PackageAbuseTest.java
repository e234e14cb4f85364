package org.amperskin.io.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Archives and models made to harm: each is refused, with a number, at small cost. */
class PackageAbuseTest {
  private static final SurfaceMesh BOX = Shapes.box(0, 0, 0, 1, 2, 3);
  private static final String MODEL = PackageBytes.model("millimeter", BOX);

  @TempDir Path folder;
  private int written;

  @Test
  void storedDeflatedAndDescriptorEntriesAreRead() throws Exception {
    Map<String, byte[]> parts = PackageBytes.withStart(Map.of(PackageBytes.ROOT, bytes(MODEL)));
    assertThat(area(PackageBytes.zip(parts, true))).isEqualTo(22);
    byte[] streamed = PackageBytes.zip(parts, false);
    // Bit 3 of the first entry's flags: sizes follow the data.
    assertThat(streamed[6] & 8).isEqualTo(8);
    assertThat(area(streamed)).isEqualTo(22);
  }

  @Test
  void zip64DirectoryIsRead() throws Exception {
    byte[] plain = PackageBytes.of(MODEL);
    ByteBuffer in = ByteBuffer.wrap(plain).order(ByteOrder.LITTLE_ENDIAN);
    int end = plain.length - 22;
    assertThat(in.getInt(end)).isEqualTo(0x06054b50);
    long entries = in.getShort(end + 10);
    long size = in.getInt(end + 12);
    long start = in.getInt(end + 16);
    // The record and locator of APPNOTE 6.3.9, 4.3.14 and 4.3.15, and an end with no numbers.
    ByteBuffer out = ByteBuffer.allocate(end + 56 + 20 + 22).order(ByteOrder.LITTLE_ENDIAN);
    out.put(plain, 0, end);
    out.putInt(0x06064b50).putLong(44).putShort((short) 45).putShort((short) 45);
    out.putInt(0).putInt(0).putLong(entries).putLong(entries).putLong(size).putLong(start);
    out.putInt(0x07064b50).putInt(0).putLong(end).putInt(1);
    out.putInt(0x06054b50).putShort((short) 0).putShort((short) 0);
    out.putShort((short) -1).putShort((short) -1).putInt(-1).putInt(-1).putShort((short) 0);
    assertThat(area(out.array())).isEqualTo(22);
  }

  @Test
  void wrongCrcIsToldWithBothNumbers() throws Exception {
    Map<String, byte[]> parts = PackageBytes.withStart(Map.of(PackageBytes.ROOT, bytes(MODEL)));
    byte[] file = PackageBytes.zip(parts, true);
    String text = new String(file, StandardCharsets.ISO_8859_1);
    file[text.indexOf("x='1.0'") + 3] = '7';
    refused(file, "/3D/3dmodel.model", "CRC", "found");
  }

  @Test
  void partsThatUnpackBeyondTheLimitsAreRefused() throws Exception {
    String spaces = MODEL.replace("<resources>", "<resources>" + " ".repeat(20_000_000));
    byte[] bomb = PackageBytes.of(spaces);
    assertThat(bomb.length).isLessThan(100_000);
    long start = System.nanoTime();
    refused(bomb, "/3D/3dmodel.model", "limit of 200 to 1");
    assertThat(System.nanoTime() - start).isLessThan(3_000_000_000L);
    Limits small = new Limits(500, 4L << 30, 200, 20_000, 50, 50);
    assertThat(refusal(PackageBytes.of(MODEL), small)).hasMessageContaining("the limit is 500");
    Limits together = new Limits(1L << 30, 500, 200, 20_000, 50, 50);
    assertThat(refusal(PackageBytes.of(MODEL), together))
        .hasMessageContaining("all parts unpack to more than 500 bytes");
    Limits few = new Limits(1L << 30, 1L << 30, 200, 1, 50, 50);
    assertThat(refusal(PackageBytes.of(MODEL), few)).hasMessageContaining("2 entries, at most 1");
  }

  @Test
  void manyEntriesAreRefused() throws Exception {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    for (int i = 0; i <= 20_000; i++) {
      parts.put("a" + i, new byte[0]);
    }
    refused(PackageBytes.zip(parts, true), "20001 entries", "20000");
  }

  @Test
  void twoPartsOfOneNameAreRefused() throws Exception {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put(PackageBytes.ROOT, bytes(MODEL));
    parts.put("3d/3DModel.model", bytes(MODEL));
    refused(PackageBytes.of(parts), "two parts /3D/3dmodel.model");
  }

  @Test
  void otherArchivesAreNamed() throws Exception {
    refused(
        PackageBytes.zip(Map.of("a.stl", new byte[9]), false), "1 entries", "without a 3D model");
    refused(
        PackageBytes.zip(
            Map.of(
                "_rels/.rels",
                bytes(
                    "<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'/>")),
            false),
        "3dmodel");
  }

  @Test
  void documentTypesAndEntitiesAreRefused() throws Exception {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "9");
    for (String type :
        List.of(
            "<!DOCTYPE model [<!ENTITY x SYSTEM '" + secret.toUri() + "'>]>",
            "<!DOCTYPE model SYSTEM '" + secret.toUri() + "'>",
            "<!DOCTYPE model [<!ENTITY a 'ha'><!ENTITY x '&a;&a;&a;&a;&a;&a;&a;&a;'>]>")) {
      String attacked = MODEL.replace("<model", type + "<model").replaceFirst("x='0.0'", "x='&x;'");
      refused(PackageBytes.of(attacked), "/3D/3dmodel.model, line 2", "document type");
    }
    refused(PackageBytes.of(MODEL.replaceFirst("x='0.0'", "x='&x;'")), "line 6", "well-formed");
    String deep = MODEL.replace("<resources>", "<resources>" + "<a>".repeat(5000));
    refused(PackageBytes.of(deep), "more than 100 deep");
    // The five entities of XML and characters by number are no threat.
    assertThat(area(PackageBytes.of(MODEL.replaceFirst("x='0.0'", "x='&#48;'")))).isEqualTo(22);
  }

  @Test
  void componentsMayBeNestedTenThousandDeep() throws Exception {
    StringBuilder resources = new StringBuilder(PackageBytes.object(1, "", BOX));
    String shift = "<components><component transform='1 0 0 0 1 0 0 0 1 0.5 0 0' objectid='";
    for (int i = 2; i <= 10_000; i++) {
      resources.append("<object id='" + i + "'>" + shift + (i - 1) + "'/></components></object>\n");
    }
    String model =
        PackageBytes.model("millimeter", "", resources.toString(), "<item objectid='10000'/>");
    SurfaceMesh mesh = read(PackageBytes.of(model), Limits.USUAL).mesh().build(1);
    assertThat(Facts.areaMm2(mesh)).isCloseTo(22, within(1e-9));
    assertThat(mesh.x(0)).isCloseTo(0.5 * 9999, within(1e-9));
  }

  @Test
  void objectsMultipliedTwoToTheThirtyAreRefused() throws Exception {
    for (int levels : new int[] {30, 2000}) {
      String model = doubled(PackageBytes.object(1, "", BOX), levels);
      long start = System.nanoTime();
      PrintFileException e = refusal(PackageBytes.of(model), Limits.USUAL);
      assertThat(System.nanoTime() - start).isLessThan(3_000_000_000L);
      assertThat(e)
          .hasMessageContaining(levels == 30 ? "12884901888 and more triangles" : "over 10^18");
      assertThat(e).hasMessageContaining("at most 50000000 in 1000000");
    }
    // Multiplied emptiness costs nothing and is no answer.
    String nothing = doubled("<object id='1'/>", 60);
    assertThat(refusal(PackageBytes.of(nothing), Limits.USUAL))
        .hasMessageContaining("no triangles in object 1");
    String some = doubled(PackageBytes.object(1, "", BOX), 10);
    assertThat(read(PackageBytes.of(some), Limits.USUAL).mesh().faceCount()).isEqualTo(12 * 1024);
  }

  /** Unused vertices are not paid for at each copy. */
  @Test
  void manyVerticesAndFewTrianglesCopiedOftenAreCheap() throws Exception {
    StringBuilder vertices = new StringBuilder();
    for (int i = 0; i < 200_000; i++) {
      vertices.append("<vertex x='").append(i).append("' y='0' z='0'/>");
    }
    String object =
        PackageBytes.object(1, "", BOX).replace("</vertices>", vertices + "</vertices>");
    long start = System.nanoTime();
    SurfaceMesh mesh = read(PackageBytes.of(doubled(object, 13)), Limits.USUAL).mesh().build(1);
    assertThat(mesh.faceCount()).isEqualTo(12 * 8192);
    assertThat(System.nanoTime() - start).isLessThan(5_000_000_000L);
  }

  @Test
  void hugeNumbersAreRefused() throws Exception {
    refused(PackageBytes.of(MODEL.replaceFirst("v1='0'", "v1='99999999999'")), "99999999999");
    refused(PackageBytes.of(MODEL.replace("objectid='1'", "objectid='4294967297'")), "4294967297");
    refused(PackageBytes.of(MODEL.replaceFirst("x='0.0'", "x='" + "9".repeat(400) + "'")), "99999");
    refused(
        PackageBytes.of(
            MODEL.replace(
                "objectid='1'", "objectid='1' transform='1e9 0 0 0 1e9 0 0 0 1e9 1e12 0 0'")),
        "object 1",
        "1.0E12");
    refused(
        PackageBytes.of(
            MODEL.replace(
                "objectid='1'", "objectid='1' transform='1e200 0 0 0 1e200 0 0 0 1e200 0 0 0'")),
        "singular");
  }

  @Test
  void entryThatLiesAboutItsSizeIsRefused() throws Exception {
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.putNextEntry(new ZipEntry("3D/3dmodel.model"));
      zip.write(bytes(MODEL));
      zip.closeEntry();
    }
    byte[] file = out.toByteArray();
    ByteBuffer b = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    int directory = b.getInt(file.length - 22 + 16);
    b.putInt(directory + 24, 17); // the uncompressed size
    refused(file, "17");
  }

  @Test
  void binaryNoiseIsRefusedWithoutAWordOnTheErrorStream() throws Exception {
    java.io.PrintStream before = System.err;
    java.io.ByteArrayOutputStream heard = new java.io.ByteArrayOutputStream();
    System.setErr(new java.io.PrintStream(heard, true, StandardCharsets.UTF_8));
    try {
      for (int b = 0x80; b < 0x100; b += 3) {
        byte[] bad = bytes(MODEL);
        Arrays.fill(bad, 300, 304, (byte) b);
        refused(PackageBytes.of(Map.of(PackageBytes.ROOT, bad)), "neither UTF-8 nor UTF-16");
      }
    } finally {
      System.setErr(before);
    }
    assertThat(heard.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  /** Object 1 and then each object twice the one before. */
  private static String doubled(String object, int levels) {
    StringBuilder resources = new StringBuilder(object);
    for (int i = 2; i <= levels + 1; i++) {
      String c = "<component objectid='" + (i - 1) + "'/>";
      resources.append("<object id='" + i + "'><components>" + c + c + "</components></object>\n");
    }
    String item = "<item objectid='" + (levels + 1) + "'/>";
    return PackageBytes.model("millimeter", "", resources.toString(), item);
  }

  private static byte[] bytes(String s) {
    return s.getBytes(StandardCharsets.UTF_8);
  }

  private double area(byte[] file) throws Exception {
    return Facts.areaMm2(read(file, Limits.USUAL).mesh().build(1));
  }

  private ThreeMfFile.Content read(byte[] file, Limits limits) throws Exception {
    Path path = Files.write(folder.resolve("part" + written++ + ".3mf"), file);
    return ThreeMfFile.read(path, limits, Progress.SILENT);
  }

  private PrintFileException refusal(byte[] file, Limits limits) throws Exception {
    PrintFileException e = catchThrowableOfType(PrintFileException.class, () -> read(file, limits));
    assertThat(e).isNotNull();
    return e;
  }

  private void refused(byte[] file, String... words) throws Exception {
    assertThat(refusal(file, Limits.USUAL)).message().contains(List.of(words));
  }
}
