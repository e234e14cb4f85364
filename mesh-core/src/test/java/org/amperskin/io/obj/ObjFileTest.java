package org.amperskin.io.obj;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.junit.jupiter.api.Test;

/** Statements of an OBJ file, each with a surface counted by hand. */
class ObjFileTest {
  private static final String SQUARE = "v 0 0 0\nv 2 0 0\nv 2 2 0\nv 0 2 0\n";

  @Test
  void cornersMayNameTextureAndNormal() throws Exception {
    for (String f :
        new String[] {
          "1 2 3 4",
          "1/1 2/2 3/3 4/4",
          "1//1 2//1 3//1 4//1",
          "1/1/1 2/2/1 3/3/1 4/4/1",
          "1/ 2/ 3/ 4/",
          "+1 +2 +3 +4"
        }) {
      assertThat(area(SQUARE + "vt 0 0\nvn 0 0 1\nf " + f + "\n")).as(f).isEqualTo(4);
    }
  }

  @Test
  void negativeIndicesCountBackFromTheLastVertexRead() throws Exception {
    assertThat(area(SQUARE + "f -4 -3 -2 -1\nv 9 9 9\nv 0 0 9\n")).isEqualTo(4);
    assertThat(area(SQUARE + "v 9 9 9\nf -5 -4 -3 -2\n")).isEqualTo(4);
    assertThat(refusal(SQUARE + "f -5 -4 -3\n"))
        .hasMessageStartingWith("line 5")
        .hasMessageContaining("-5 of 4");
  }

  @Test
  void indexZeroForwardAndOutOfRangeAreRefusedWithTheirLine() {
    assertThat(refusal(SQUARE + "\n\nf 0 1 2\n"))
        .hasMessageStartingWith("line 7")
        .hasMessageContaining("index 0");
    assertThat(refusal("v 0 0 0\nv 1 0 0\nf 1 2 3\nv 0 1 0\n"))
        .hasMessageStartingWith("line 3")
        .hasMessageContaining("index 3 of 2");
    assertThat(refusal(SQUARE + "f 1 2 4294967297\n")).hasMessageContaining("4294967297");
    assertThat(refusal(SQUARE + "f 1 2 99999999999999999999\n"))
        .hasMessageContaining("99999999999999999999");
    assertThat(refusal(SQUARE + "f 1 2 -9223372036854775808\n")).hasMessageStartingWith("line 5");
    assertThat(refusal(SQUARE + "f 1 2 x\n")).hasMessageContaining("\"x\"");
    assertThat(refusal(SQUARE + "f 1 2 3.0\n")).hasMessageContaining("\"3.0\"");
    assertThat(refusal(SQUARE + "f 1 2\n")).hasMessageContaining("found 2");
    assertThat(refusal(SQUARE + "f\n")).hasMessageContaining("found 0");
  }

  @Test
  void anythingAfterZIsPassedOver() throws Exception {
    String coloured = "v 0 0 0 1 0 0\nv 2 0 0 0.5 0.5 1 1\nv 2 2 0 1.0\nv 0 2 0 # a corner\n";
    assertThat(area(coloured + "f 1 2 3 4\n")).isEqualTo(4);
    assertThat(refusal("v 0 0\n"))
        .hasMessageContaining("expected z")
        .hasMessageStartingWith("line 1");
  }

  @Test
  void commentsMayStandAloneOrAfterAFace() throws Exception {
    assertThat(area("#\n# f 1 2 9\n" + SQUARE + "  # more\nf 1 2 3 4 # the square\n#"))
        .isEqualTo(4);
  }

  @Test
  void backslashInACommentDoesNotSwallowTheNextLine() throws Exception {
    assertThat(area("# C:\\models\\\n" + SQUARE + "f 1 2 3 4\n")).isEqualTo(4);
    assertThat(area("# C:\\models\\\r\n" + SQUARE + "f 1 2 3 4\n")).isEqualTo(4);
  }

  @Test
  void backslashContinuesALineAndLinesAreStillCounted() throws Exception {
    for (String end : new String[] {"\n", "\r\n", "\r"}) {
      String split =
          "v 0 0 \\\n0\nv 2 0 0\nv 2 2 0\nv 0 2 0\nf 1 2\\\n3 \\\n  4\n".replace("\n", end);
      assertThat(area(split)).isEqualTo(4);
      assertThat(refusal(split + "f 1 2 7" + end)).hasMessageStartingWith("line 9");
    }
  }

  @Test
  void groupsAndObjectsNameTheFacesAfterThem() throws Exception {
    SurfaceMesh mesh =
        read(
            SQUARE
                + "f 1 2 3\no shell\nf 1 3 4\ng left  wing\nf 1 2 4\ng unused\no shell\nf 2 3 4\ng\nf 3 4 1\n");
    assertThat(mesh.groupNames()).containsExactly("", "shell", "left  wing");
    assertThat(groups(mesh)).containsExactly(0, 1, 2, 1, 0);
    assertThat(read(SQUARE + "f 1 2 3\ng\nf 1 2 4\n").groupNames()).isEmpty();
    assertThat(read(SQUARE + "f 1 2 3\n").group(0)).isEqualTo(-1);
    assertThat(read("g a\ng b\n" + SQUARE + "f 1 2 3\n").groupNames()).containsExactly("b");
  }

  @Test
  void freeFormPartsAreLeftOutAndTold() throws Exception {
    ObjFile.Content content =
        content(SQUARE + "f 1 2 3 4\ncstype bezier\ndeg 3\ncurv 0 1 1 2 3 4\nend\n");
    assertThat(content.notes()).singleElement().asString().contains("line 6");
    assertThat(content.storedVertices()).isEqualTo(4);
  }

  @Test
  void unknownStatementsAreRefused() {
    assertThat(refusal(SQUARE + "face 1 2 3\n"))
        .hasMessageContaining("\"face\"")
        .hasMessageStartingWith("line 5");
    assertThat(refusal(SQUARE + "f 1 2 3\nxf 1 2 3\n")).hasMessageContaining("\"xf\"");
  }

  @Test
  void veryLongLinesAreRead() throws Exception {
    StringBuilder s = new StringBuilder();
    int n = 20_000;
    for (int i = 0; i < n; i++) {
      double a = 2 * Math.PI * i / n;
      s.append("v ").append(Math.cos(a)).append(' ').append(Math.sin(a)).append(" 0\n");
    }
    s.append("f");
    for (int i = 1; i <= n; i++) {
      s.append(' ').append(i);
    }
    // Area of the regular polygon, n/2 sin(2 pi / n).
    assertThat(area(s.toString())).isCloseTo(n / 2.0 * Math.sin(2 * Math.PI / n), within(1e-9));
  }

  private static int[] groups(SurfaceMesh mesh) {
    return java.util.stream.IntStream.range(0, mesh.faceCount()).map(mesh::group).toArray();
  }

  private static double area(String text) throws Exception {
    return Facts.areaMm2(read(text));
  }

  private static SurfaceMesh read(String text) throws Exception {
    return content(text).mesh().build(1);
  }

  private static ObjFile.Content content(String text) throws Exception {
    return ObjFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static PrintFileException refusal(String text) {
    return catchThrowableOfType(PrintFileException.class, () -> content(text));
  }
}
