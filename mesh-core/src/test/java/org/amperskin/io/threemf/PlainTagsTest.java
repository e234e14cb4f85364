package org.amperskin.io.threemf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import org.amperskin.io.common.PrintFileException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The quick way through plain lists against the XML reader: UTF-16 text is read by that alone. */
class PlainTagsTest {
  private static final int MUTATIONS = 800;

  private static String model(String mesh) {
    return "<model unit='millimeter' xmlns='"
        + Namespaces.CORE
        + "' xmlns:c='"
        + Namespaces.CORE
        + "' xmlns:o='urn:other'>\n<resources>\n<object id='1'><mesh>\n"
        + mesh
        + "</mesh></object>\n</resources>\n<build><item objectid='1'/></build></model>\n";
  }

  private static final String VERTICES =
      """
      <vertices>
        <vertex x="0" y="-0.0" z="1.25"/>
        <vertex  y="1e-3" x=".5" z='-12345678901234567890.125' />
      <vertex x="3." y="+4" z="0.1"/><vertex x="9007199254740993" y="1E5" z="7"/>
      </vertices>
      """;
  private static final String TRIANGLES =
      """
      <triangles>
        <triangle v1="0" v2="1" v3="2"/>
        <triangle v1="0" v2="2" v3="3" pid="5" p1="0"/>
      <triangle v3="1" v2="2" v1="3" pid="5" p1="1" p2="2" p3="0" />
      </triangles>
      """;

  private static final List<String> MESHES =
      List.of(
          VERTICES + TRIANGLES,
          (VERTICES + TRIANGLES).replace("\n", "\r\n"),
          (VERTICES + TRIANGLES).replace("\n", "\r"),
          (VERTICES + TRIANGLES).replace("\n", ""),
          "<!-- <vertices> -->" + VERTICES + TRIANGLES,
          VERTICES.replace("<vertices>", "<vertices><!-- <vertices> <vertex x='8'/> -->")
              + TRIANGLES,
          VERTICES.replace("<vertices>", "<vertices><![CDATA[<vertices><vertex x=\"1\"/>]]>")
              + TRIANGLES,
          VERTICES.replace("<vertices>", "<vertices o:a='>' >") + TRIANGLES,
          VERTICES.replace("<vertices>", "<vertices xmlns='urn:other'>") + TRIANGLES,
          "<o:extra><vertices><vertex x='1'/></vertices></o:extra>" + VERTICES + TRIANGLES,
          "<extra xmlns='urn:other'><vertices><vertex x='1'/></vertices></extra>"
              + VERTICES
              + TRIANGLES,
          "<vertices/><vertex x='1' y='2' z='3'/>" + VERTICES + TRIANGLES,
          "<vertices />" + VERTICES + "<triangles/><triangle v1='0' v2='1' v3='2'/>" + TRIANGLES,
          VERTICES + VERTICES + TRIANGLES + TRIANGLES,
          (VERTICES + TRIANGLES).replace("</", "</c:").replaceAll("<(?=[vt])", "<c:"),
          VERTICES.replace("/>\n<vertex", "></vertex>\n<vertex") + TRIANGLES,
          VERTICES + TRIANGLES.replace("<triangles>", "<triangles> some words "),
          VERTICES + TRIANGLES.replace("v1=\"3\"", "v1=\"4\""),
          VERTICES.replace("7", "nan") + TRIANGLES,
          VERTICES.replace(" z='", " z='&#49;") + TRIANGLES,
          VERTICES.replace("x=\"0\"", "x=\"0\" x=\"1\"") + TRIANGLES,
          VERTICES.replace("x=\"0\"", "x=\"0\" o:x=\"1\"") + TRIANGLES,
          VERTICES.replace("x=\"0\"", "x=\"0\" note=\"" + "long ".repeat(200) + "\"") + TRIANGLES);

  private static GuardedStream stream(InputStream in) {
    return new GuardedStream(in, "part", new ZipEntry("part"), Limits.USUAL, 0);
  }

  /** All that was read, or the fault with its line. */
  private static String outcome(InputStream in) {
    try {
      ModelPart part = ModelReader.read("part", stream(in), true);
      StringBuilder all = new StringBuilder();
      for (ModelObject o : part.objects.values()) {
        all.append(o.title())
            .append(Arrays.toString(o.xyz))
            .append(Arrays.toString(o.corners))
            .append(Arrays.toString(o.properties))
            .append(o.part.gradients);
      }
      return all + " " + part.items;
    } catch (PrintFileException e) {
      return "refused: " + e.getMessage() + " " + e.where();
    }
  }

  private static String outcome(String text, Charset charset) {
    return outcome(new ByteArrayInputStream(text.getBytes(charset)));
  }

  private static void agrees(String text, String what) {
    assertThat(outcome(text, StandardCharsets.UTF_8))
        .as(what)
        .isEqualTo(outcome('\ufeff' + text, StandardCharsets.UTF_16LE));
  }

  @Test
  void bothWaysReadTheSame() {
    for (int i = 0; i < MESHES.size(); i++) {
      agrees(model(MESHES.get(i)), "mesh " + i + ": " + MESHES.get(i));
    }
    assertThat(outcome(model(MESHES.get(0)), StandardCharsets.UTF_8))
        .contains("[0, 1, 2, 0, 2, 3, 3, 2, 1]")
        .contains("9.007199254740992E15")
        .contains("true");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2})
  void mutatedTextReadsTheSame(long seed) {
    Random random = new Random(seed);
    String alphabet = "<>/=\"' \n\r019.-+eExyzvt:&;!-[]abc";
    int refused = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      StringBuilder text =
          new StringBuilder(model(MESHES.get(i % 2 == 0 ? 0 : random.nextInt(MESHES.size()))));
      int from = text.indexOf("<mesh>");
      int changes = 1 + random.nextInt(2);
      for (int k = 0; k < changes; k++) {
        int at = from + random.nextInt(text.length() - from);
        char c = alphabet.charAt(random.nextInt(alphabet.length()));
        switch (random.nextInt(3)) {
          case 0 -> text.setCharAt(at, c);
          case 1 -> text.insert(at, c);
          default -> text.deleteCharAt(at);
        }
      }
      agrees(text.toString(), "seed " + seed + ", mutation " + i + ": " + text);
      refused += outcome(text.toString(), StandardCharsets.UTF_8).startsWith("refused") ? 1 : 0;
    }
    assertThat(refused).isBetween(MUTATIONS / 4, MUTATIONS * 9 / 10);
  }

  @Test
  void longListsOverManyBuffersReadTheSameInReadsOfAnySize() {
    Random random = new Random(7);
    StringBuilder mesh = new StringBuilder("<vertices>\n");
    int n = 6000;
    for (int i = 0; i < n; i++) {
      mesh.append(
          String.format(
              java.util.Locale.ROOT,
              "  <vertex x=\"%s\" y=\"%.6f\" z=\"%d\" />%s",
              random.nextGaussian(),
              1000 * random.nextDouble(),
              random.nextInt(),
              i % 3 == 0 ? "" : "\n"));
    }
    mesh.append("</vertices>\n<triangles>\n");
    for (int i = 0; i < 2 * n; i++) {
      mesh.append(
          "<triangle v1='%d' v2='%d' v3='%d'/>\n"
              .formatted(random.nextInt(n), random.nextInt(n), random.nextInt(n)));
    }
    String text = model(mesh + "</triangles>\n");
    agrees(text, "long lists");
    agrees(text.replace("</triangles>", "<triangle v1='0'/></triangles>"), "fault at the end");
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    String whole = outcome(new ByteArrayInputStream(bytes));
    for (int most : new int[] {1, 7, 513}) {
      InputStream slow =
          new FilterInputStream(new ByteArrayInputStream(bytes)) {
            @Override
            public int read(byte[] to, int off, int len) throws IOException {
              return super.read(to, off, Math.min(len, most));
            }
          };
      assertThat(outcome(slow).equals(whole)).as("at most %d bytes a read", most).isTrue();
    }
  }

  @Test
  void plainListsTakeTheQuickWayAndOthersDoNot() throws Exception {
    assertThat(quick(MESHES.get(0))).isTrue();
    assertThat(quick(MESHES.get(1))).isTrue();
    assertThat(quick(MESHES.get(4))).as("a list in a comment").isFalse();
    assertThat(quick(MESHES.get(5))).as("a list in a comment in a list").isTrue();
    assertThat(quick(MESHES.get(14))).as("a prefix").isFalse();
    assertThat(quick("<vertices o:a='>' >" + VERTICES.substring(10) + TRIANGLES)).isFalse();
  }

  /** Whether the first list of the mesh can be taken from its bytes. */
  private static boolean quick(String mesh) throws PrintFileException {
    byte[] bytes = model(mesh).getBytes(StandardCharsets.UTF_8);
    XmlCursor x = new XmlCursor("part", stream(new ByteArrayInputStream(bytes)));
    x.root();
    while (!x.isCore("vertices")) {
      assertThat(x.child(x.depth())).isTrue();
    }
    return x.plainTags("vertex").isPresent();
  }

  @Test
  void numbersAreTheNearestDoubles() throws Exception {
    Random random = new Random(3);
    List<String> words =
        IntStream.range(0, 20_000).mapToObj(i -> number(random)).distinct().toList();
    for (String word : words) {
      PausingReader in =
          new PausingReader(
              new ByteArrayInputStream(("<a x='" + word + "'/>").getBytes(StandardCharsets.UTF_8)));
      PlainTags tags = new PlainTags(in, "a");
      assertThat(tags.next()).as(word).isTrue();
      double expected = Numbers.real(word);
      assertThat(Double.doubleToLongBits(tags.real(0)))
          .as(word)
          .isEqualTo(Double.doubleToLongBits(expected));
    }
  }

  private static String number(Random random) {
    return switch (random.nextInt(6)) {
      case 0 -> Double.toString(random.nextGaussian());
      case 1 -> Float.toString((float) random.nextGaussian());
      case 2 -> String.format(java.util.Locale.ROOT, "%.6f", 200 * random.nextGaussian());
      case 3 -> Long.toString(random.nextLong());
      case 4 ->
          Double.toString(Double.longBitsToDouble(random.nextLong()))
              .replaceAll("[A-D,F-Za-z]+", "0");
      default ->
          random
              .ints(1 + random.nextInt(8), 0, 15)
              .mapToObj(i -> "0123456789.-+eE".substring(i, i + 1))
              .reduce("", String::concat);
    };
  }
}
