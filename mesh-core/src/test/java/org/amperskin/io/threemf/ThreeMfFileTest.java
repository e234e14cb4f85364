package org.amperskin.io.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * 3MF by its published text: 3MF Consortium, Core Specification 1.4, Production Extension 1.2,
 * Materials and Properties Extension 1.2.
 */
class ThreeMfFileTest {
  private static final SurfaceMesh BOX = Shapes.box(0, 0, 0, 1, 2, 3);
  private static final String BOX_OBJECT = PackageBytes.object(1, "", BOX);
  private static final String PRODUCTION =
      "xmlns:p='http://schemas.microsoft.com/3dmanufacturing/production/2015/06'";
  private static final String MATERIAL =
      "xmlns:m='http://schemas.microsoft.com/3dmanufacturing/material/2015/02'";
  private static final String BEAMS =
      "xmlns:b='http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02'";
  private static final String SLICE =
      "xmlns:s='http://schemas.microsoft.com/3dmanufacturing/slice/2015/07'";

  @TempDir Path folder;
  private int written;

  @ParameterizedTest
  @CsvSource({"micron,um", "millimeter,mm", "centimeter,cm", "inch,in", "foot,ft", "meter,m"})
  void everyUnitIsReported(String word, String symbol) throws Exception {
    ThreeMfFile.Content read = read(PackageBytes.of(PackageBytes.model(word, BOX)));
    assertThat(read.unit()).isEqualTo(symbol);
    assertThat(Facts.areaMm2(read.mesh().build(1))).isEqualTo(22);
    assertThat(read.notes()).isEmpty();
  }

  @Test
  void fileWithoutUnitIsInMillimetresAndTold() throws Exception {
    String model = PackageBytes.model("millimeter", BOX).replace("unit='millimeter'", "");
    ThreeMfFile.Content read = read(PackageBytes.of(model));
    assertThat(read.unit()).isEqualTo("mm");
    assertThat(read.notes())
        .containsExactly("the file names no unit: millimeter, as its standard says");
  }

  /** The transform's rows act on row vectors: the translation is the fourth row (3.3). */
  @Test
  void transformsActOnRowVectors() throws Exception {
    // x to y, y to z, z to x, then moved
    SurfaceMesh mesh =
        built(BOX_OBJECT, "<item objectid='1' transform='0 1 0 0 0 1 1 0 0 10 20 30'/>");
    assertThat(bounds(mesh)).containsExactly(10, 20, 30, 13, 21, 32);
    assertThat(Facts.volumeMm3(mesh)).isCloseTo(6, within(1e-9));
  }

  @Test
  void componentsAreTransformedBeforeTheirItem() throws Exception {
    String two =
        BOX_OBJECT
            + "<object id='2'><components><component objectid='1' transform='1 0 0 0 1 0 0 0 1 5 0 0'/>"
            + "</components></object>";
    SurfaceMesh mesh = built(two, "<item objectid='2' transform='2 0 0 0 2 0 0 0 2 0 0 0'/>");
    assertThat(bounds(mesh)).containsExactly(10, 0, 0, 12, 4, 6);
    assertThat(Facts.areaMm2(mesh)).isCloseTo(88, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "-1 0 0 0 1 0 0 0 1 0 0 0, 22, 6",
    "-1 0 0 0 -1 0 0 0 1 0 0 0, 22, 6",
    "0 1 0 1 0 0 0 0 1 0 0 0, 22, 6",
    "-2 0 0 0 -3 0 0 0 -4 7 7 7, 216, 144",
    "1 0 0 0.5 1 0 0 0 1 0 0 0, 23.416407864998739, 6"
  })
  void outwardSideStaysWhateverTheTransform(String matrix, double area, double volume)
      throws Exception {
    SurfaceMesh item = built(BOX_OBJECT, "<item objectid='1' transform='" + matrix + "'/>");
    assertThat(Facts.areaMm2(item)).isCloseTo(area, within(1e-9));
    assertThat(Facts.volumeMm3(item)).isCloseTo(volume, within(1e-9));
    String nested =
        BOX_OBJECT
            + "<object id='2'><components><component objectid='1' transform='"
            + matrix
            + "'/></components></object>"
            + "<object id='3'><components><component objectid='2' transform='1 0 0 0 1 0 0 0 -1 0 0 9'/>"
            + "</components></object>";
    SurfaceMesh mirrored = built(nested, "<item objectid='3'/>");
    assertThat(Facts.areaMm2(mirrored)).isCloseTo(area, within(1e-9));
    assertThat(Facts.volumeMm3(mirrored)).isCloseTo(volume, within(1e-9));
    assertThat(Facts.closed(mirrored)).isTrue();
  }

  @Test
  void eachItemAndEachComponentCounts() throws Exception {
    String resources =
        PackageBytes.object(1, "name='leg'", BOX)
            + "<object id='2' name='table'><components><component objectid='1'/>"
            + "<component objectid='1' transform='1 0 0 0 1 0 0 0 1 5 0 0'/></components></object>";
    SurfaceMesh mesh =
        built(
            resources,
            "<item objectid='2'/><item objectid='1' transform='1 0 0 0 1 0 0 0 1 0 9 0'/>"
                + "<item objectid='2' transform='1 0 0 0 1 0 0 0 1 0 20 0'/>");
    assertThat(mesh.faceCount()).isEqualTo(60);
    assertThat(Facts.areaMm2(mesh)).isCloseTo(110, within(1e-9));
    assertThat(mesh.groupNames())
        .containsExactly("leg", "leg (2)", "leg (3)", "leg (4)", "leg (5)");
  }

  @Test
  void coloursAndMaterialsNameGroups() throws Exception {
    String resources =
        "<basematerials id='7'><base name='brass' displaycolor='#FFCC00'/><base name='red'"
            + " displaycolor='#FF0000'/></basematerials>"
            + "<m:colorgroup id='8'><m:color color='#00FF00FF'/><m:color color='#0000FF'/></m:colorgroup>"
            + PackageBytes.object(1, "name='visor' pid='7' pindex='0'", BOX)
                .replaceFirst("v3='1'/>", "v3='1' p1='1'/>")
                .replaceFirst("v3='2'/>", "v3='2' pid='8' p1='1' p2='0'/>")
            + PackageBytes.object(2, "pid='8' pindex='0'", BOX);
    String model =
        PackageBytes.model(
            "millimeter", MATERIAL, resources, "<item objectid='1'/><item objectid='2'/>");
    ThreeMfFile.Content read = read(PackageBytes.of(model));
    SurfaceMesh mesh = read.mesh().build(1);
    assertThat(mesh.groupNames())
        .containsExactly("visor / red", "visor / #0000FF", "visor / brass", "body 2 / #00FF00FF");
    assertThat(mesh.group(0)).isZero();
    assertThat(mesh.group(1)).isEqualTo(1);
    assertThat(mesh.group(2)).isEqualTo(2);
    assertThat(read.notes()).singleElement().asString().contains("gradients");
  }

  @Test
  void partsPointToEachOtherByPath() throws Exception {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put(
        PackageBytes.ROOT,
        text(
            PackageBytes.model(
                "millimeter",
                PRODUCTION + " requiredextensions='p'",
                "<object id='1'><components><component objectid='5' p:path='/3D/Objects/a%20b.model'/>"
                    + "</components></object>",
                "<item objectid='1'/><item objectid='5' p:path='/3d/objects/A B.MODEL'/>")));
    parts.put(
        "3D/Objects/a b.model",
        text(PackageBytes.model("millimeter", "", PackageBytes.object(5, "name='far'", BOX), "")));
    ThreeMfFile.Content read = read(PackageBytes.of(parts));
    assertThat(Facts.areaMm2(read.mesh().build(1))).isEqualTo(44);
    assertThat(read.mesh().build(1).groupNames()).containsExactly("far", "far (2)");
    parts.put(
        "3D/Objects/a b.model",
        text(PackageBytes.model("centimeter", "", PackageBytes.object(5, "", BOX), "")));
    ThreeMfFile.Content scaled = read(PackageBytes.of(parts));
    assertThat(Facts.areaMm2(scaled.mesh().build(1))).isCloseTo(4400, within(1e-9));
    assertThat(scaled.notes()).anyMatch(n -> n.contains("centimeter") && n.contains("millimeter"));
    parts.remove("3D/Objects/a b.model");
    refused(PackageBytes.of(parts), "/3D/3dmodel.model, line", "no part /3D/Objects/a%20b.model");
    parts.put(
        "3D/Objects/a b.model",
        text(
            PackageBytes.model(
                "millimeter",
                PRODUCTION,
                "<object id='5'><components><component objectid='1' p:path='/3D/3dmodel.model'/>"
                    + "</components></object>",
                "")));
    refused(PackageBytes.of(parts), "object 5", "/3D/3dmodel.model", "only the root model part");
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
  void anyEncodingAndAnyPrefix(String name) throws Exception {
    String model =
        PackageBytes.model(
            "inch", "", PackageBytes.object(1, "name='Stück €'", BOX), "<item objectid='1'/>");
    String prefixed =
        model
            .replaceAll("<(/?)(\\w)", "<$1c:$2")
            .replace("xmlns=", "xmlns:c=")
            .replace("<?c:", "<?")
            .replace("'UTF-8'", name.equals("UTF-8") ? "'UTF-8'" : "'UTF-16'");
    byte[] bytes = ("\ufeff" + prefixed).getBytes(Charset.forName(name));
    SurfaceMesh mesh = read(PackageBytes.of(Map.of(PackageBytes.ROOT, bytes))).mesh().build(1);
    assertThat(mesh.groupNames()).containsExactly("Stück €");
    assertThat(Facts.areaMm2(mesh)).isEqualTo(22);
  }

  @Test
  void supportsAreLeftOutAndNamed() throws Exception {
    String resources =
        PackageBytes.object(1, "name='part'", BOX)
            + PackageBytes.object(2, "type='support'", BOX)
            + PackageBytes.object(3, "type='solidsupport' name='tree'", BOX)
            + PackageBytes.object(4, "type='other'", BOX)
            + PackageBytes.object(5, "type='surface'", BOX)
            + PackageBytes.object(6, "name='spare'", BOX)
            + "<object id='7' type='support'><components><component objectid='1'/><component objectid='2'/>"
            + "<component objectid='3'/><component objectid='4'/></components></object>"
            + "<object id='8'/>";
    ThreeMfFile.Content read =
        read(
            PackageBytes.of(
                PackageBytes.model(
                    "millimeter",
                    "",
                    resources,
                    "<item objectid='7'/><item objectid='5' printable='0'/><item objectid='8'/>")));
    assertThat(Facts.areaMm2(read.mesh().build(1))).isEqualTo(44);
    assertThat(read.notes())
        .containsExactly(
            "left out as of type support: object 2",
            "left out as of type solidsupport: object 3 \"tree\"",
            "left out as of type other: object 4",
            "of type surface, read as it is: object 5",
            "without a triangle: object 8",
            "not in the build, left out: object 6 \"spare\"",
            "1 items are marked printable=\"0\", which is not of the standard; they are counted");
  }

  @Test
  void nothingToMeasureIsNeverASilentZero() throws Exception {
    refusedModel(BOX_OBJECT, "", "the build has no item", "1 objects");
    refusedModel("<object id='1'/>", "<item objectid='1'/>", "no triangles in object 1");
    refusedModel(
        PackageBytes.object(1, "type='support'", BOX),
        "<item objectid='1'/>",
        "type support: object 1");
    String lattice =
        "<object id='1' name='web'><mesh><vertices><vertex x='0' y='0' z='0'/><vertex x='9' y='0' z='0'/>"
            + "</vertices><triangles/><b:beamlattice radius='1' minlength='0.1'><b:beams><b:beam v1='0' v2='1'/>"
            + "</b:beams></b:beamlattice></mesh></object>";
    refused(
        PackageBytes.of(PackageBytes.model("millimeter", BEAMS, lattice, "<item objectid='1'/>")),
        "only a beam lattice",
        "object 1 \"web\"");
    ThreeMfFile.Content both =
        read(
            PackageBytes.of(
                PackageBytes.model(
                    "millimeter",
                    BEAMS + " requiredextensions='b'",
                    lattice + PackageBytes.object(2, "", BOX),
                    "<item objectid='1'/><item objectid='2'/>")));
    assertThat(both.notes())
        .containsExactly(
            "beam lattice left out, its beams are missing in the area: object 1 \"web\"");
    String sliced = PackageBytes.object(1, "s:slicestackid='3' s:meshresolution='lowres'", BOX);
    refused(
        PackageBytes.of(PackageBytes.model("millimeter", SLICE, sliced, "<item objectid='1'/>")),
        "object 1",
        "slices",
        "slice/2015/07");
    String displaced =
        "<object id='4'><d:displacementmesh xmlns:d='http://schemas.3mf.io/3dmanufacturing/displacement/2023/10'/>"
            + "</object>";
    refusedModel(
        displaced, "<item objectid='4'/>", "object 4", "displacementmesh", "displacement/2023/10");
  }

  @Test
  void requiredExtensionsAreReadOrRefusedByName() throws Exception {
    String known =
        MATERIAL + " " + PRODUCTION + " " + SLICE + " " + BEAMS + " requiredextensions='m p s b'";
    assertThat(
            read(PackageBytes.of(
                    PackageBytes.model("millimeter", known, BOX_OBJECT, "<item objectid='1'/>")))
                .notes())
        .isEmpty();
    for (String uri :
        List.of(
            "http://schemas.3mf.io/3dmanufacturing/displacement/2023/10",
            "http://schemas.3mf.io/3dmanufacturing/booleanoperations/2023/07",
            "http://example.org/own")) {
      String attributes = "xmlns:q='" + uri + "'";
      refused(
          PackageBytes.of(
              PackageBytes.model(
                  "millimeter",
                  attributes + " requiredextensions='q'",
                  BOX_OBJECT,
                  "<item objectid='1'/>")),
          uri,
          "requires");
      read(
          PackageBytes.of(
              PackageBytes.model("millimeter", attributes, BOX_OBJECT, "<item objectid='1'/>")));
    }
    refused(
        PackageBytes.of(
            PackageBytes.model(
                "millimeter", "requiredextensions='zz'", BOX_OBJECT, "<item objectid='1'/>")),
        "\"zz\"",
        "not declared");
  }

  @Test
  void encryptedPackagesAreRefusedByName() throws Exception {
    String secure = "http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04";
    refused(
        PackageBytes.of(
            PackageBytes.model(
                "millimeter",
                "xmlns:sc='" + secure + "' requiredextensions='sc'",
                BOX_OBJECT,
                "<item objectid='1'/>")),
        "encrypted",
        secure);
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put(
        PackageBytes.ROOT,
        text(
            PackageBytes.model(
                "millimeter", PRODUCTION, "", "<item objectid='1' p:path='/3D/secret.model'/>")));
    parts.put("3D/secret.model", new byte[] {'%', '3', 'M', 'c', 'F', 0, 1, 2, 3});
    parts.put(
        "3D/_rels/3dmodel.model.rels",
        text(
            "<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'>"
                + "<Relationship Target='secret.model' Id='a' Type='http://schemas.openxmlformats.org/"
                + "package/2006/relationships/encryptedfile'/></Relationships>"));
    refused(PackageBytes.of(parts), "/3D/secret.model", "encrypted", "encryptedfile");
  }

  @Test
  void everyRefusalNamesPartLineAndNumber() throws Exception {
    String at = "/3D/3dmodel.model, line ";
    refusedModel(BOX_OBJECT, "<item objectid='7'/>", at, "object 7");
    refusedModel(
        "<object id='2'><components><component objectid='9'/></components></object>",
        "<item objectid='2'/>",
        at + "4",
        "object 9");
    refusedModel(
        "<object id='2'><components><component objectid='3'/></components></object>"
            + "<object id='3'><components><component objectid='2'/></components></object>",
        "<item objectid='2'/>",
        at,
        "object 2 contains itself",
        "object 3");
    refusedModel(
        "<object id='2'><components><component objectid='2'/></components></object>",
        "<item objectid='2'/>",
        at,
        "object 2 contains itself");
    refusedModel(
        BOX_OBJECT.replaceFirst("v1='0'", "v1='8'"),
        "<item objectid='1'/>",
        at + "16",
        "triangle 0",
        "\"8\"",
        "8 vertices");
    refusedModel(BOX_OBJECT.replaceFirst("v1='0'", "v1='-1'"), "<item objectid='1'/>", "\"-1\"");
    refusedModel(
        BOX_OBJECT.replaceFirst("v1='0'", ""), "<item objectid='1'/>", "needs v1, v2 and v3");
    refusedModel(
        BOX_OBJECT.replaceFirst("x='0.0'", "x='nan'"), "<item objectid='1'/>", at + "6", "\"nan\"");
    refusedModel(BOX_OBJECT.replaceFirst("x='0.0'", "x='1e999'"), "<item objectid='1'/>", "1e999");
    refusedModel(
        BOX_OBJECT.replaceFirst("x='0.0'", "x='1e13'"), "<item objectid='1'/>", "1.0E13", "1.0E12");
    refusedModel(BOX_OBJECT.replaceFirst("x='0.0'", "x='0x1p3'"), "<item objectid='1'/>", "0x1p3");
    refusedModel(
        BOX_OBJECT.replaceFirst("x='0.0'", ""), "<item objectid='1'/>", "vertex 0 has no x");
    refusedModel(BOX_OBJECT + BOX_OBJECT, "<item objectid='1'/>", "object 1 a second time");
    refusedModel(BOX_OBJECT.replace("id='1'", "id='0'"), "<item objectid='1'/>", "\"0\" of id");
    refusedModel(BOX_OBJECT.replace("id='1'", ""), "<item objectid='1'/>", "object without id");
    refusedModel(
        BOX_OBJECT.replace("id='1'", "id='1' type='toy'"), "<item objectid='1'/>", "\"toy\"");
    refusedModel(BOX_OBJECT, "<item/>", "item without objectid");
    refusedModel(BOX_OBJECT, "<item objectid='1' transform='1 0 0'/>", "12 numbers, found 3");
    refusedModel(
        BOX_OBJECT, "<item objectid='1' transform='1 0 0 0 1 0 0 0 0 0 0 0'/>", "singular", "0.0");
    refusedModel(
        BOX_OBJECT, "<item objectid='1' transform='1 0 0 2 0 0 0 0 1 0 0 0'/>", "singular");
    refusedModel(
        BOX_OBJECT, "<item objectid='1' transform='1 0 0 0 1 0 0 0 inf 0 0 0'/>", "\"inf\"");
    refused(PackageBytes.of(PackageBytes.model("furlong", BOX)), at + "2", "\"furlong\"");
    refused(PackageBytes.of("<model/>"), at, "no name space");
    refused(PackageBytes.of("<html xmlns='http://www.w3.org/1999/xhtml'/>"), "html", "xhtml");
    refused(PackageBytes.of("nothing"), at + "1", "well-formed");
    refused(PackageBytes.of(PackageBytes.model("inch", BOX) + "<more/>"), at, "well-formed");
  }

  private SurfaceMesh built(String resources, String items) throws Exception {
    return read(PackageBytes.of(PackageBytes.model("millimeter", "", resources, items)))
        .mesh()
        .build(1);
  }

  private void refusedModel(String resources, String items, String... words) throws Exception {
    refused(PackageBytes.of(PackageBytes.model("millimeter", "", resources, items)), words);
  }

  private ThreeMfFile.Content read(byte[] bytes) throws Exception {
    return ThreeMfFile.read(file(bytes), Progress.SILENT);
  }

  private void refused(byte[] bytes, String... words) throws Exception {
    Path file = file(bytes);
    PrintFileException e =
        catchThrowableOfType(
            PrintFileException.class, () -> ThreeMfFile.read(file, Progress.SILENT));
    assertThat(e).as("%s", List.of(words)).isNotNull();
    assertThat(e).message().contains(List.of(words));
  }

  private Path file(byte[] bytes) throws Exception {
    return Files.write(folder.resolve("part" + written++ + ".3mf"), bytes);
  }

  private static byte[] text(String s) {
    return s.getBytes(StandardCharsets.UTF_8);
  }

  private static double[] bounds(SurfaceMesh mesh) {
    double[] b = {1e9, 1e9, 1e9, -1e9, -1e9, -1e9};
    for (int i = 0; i < mesh.positions().length; i++) {
      b[i % 3] = Math.min(b[i % 3], mesh.positions()[i]);
      b[3 + i % 3] = Math.max(b[3 + i % 3], mesh.positions()[i]);
    }
    return b;
  }
}
