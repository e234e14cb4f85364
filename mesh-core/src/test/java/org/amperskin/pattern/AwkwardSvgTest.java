package org.amperskin.pattern;

import static java.lang.Math.PI;
import static java.lang.Math.asin;
import static java.lang.Math.sqrt;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Drawings as real programs write them, each with an area worked out by hand; the arithmetic stands
 * in the file. The two with text have none and are held to a general-purpose renderer, see {@link
 * RendererAgreesTest}. All are invented, for a small theatre workshop.
 */
class AwkwardSvgTest {
  static final Path FOLDER = Path.of("src/test/resources/org/amperskin/pattern/awkward");
  private static final double PX = 25.4 / 96;
  private static final double ROUND = 2e-4; // curves are flattened to 0.01 mm and keep their area

  /** Area in mm2 and allowed relative error. */
  record Expected(double areaMm2, double relative) {}

  private static Expected exact(double areaMm2) {
    return new Expected(areaMm2, 1e-8);
  }

  private static Expected curved(double areaMm2) {
    return new Expected(areaMm2, ROUND);
  }

  static final Map<String, Expected> BY_HAND =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("01-editor-layers", exact(1800 - 90)),
              Map.entry("02-old-doctype", new Expected(175, 4e-6)),
              Map.entry("03-cad-lines", curved((24_000 * PI + 326_000) * 0.0254 * 0.0254)),
              Map.entry("04-browser-chart", exact(7400 * PX * PX)),
              Map.entry("05-symbols", curved(80 * PI + 20)),
              Map.entry("06-use-chain", exact(150)),
              Map.entry(
                  "07-clip-box-units", curved(425 * PI - 2 * (5 * sqrt(200) + 225 * asin(1 / 3.)))),
              Map.entry("08-clip-nested", curved(1600 + 50 * PI)),
              Map.entry("09-clip-use-transform", exact(800)),
              Map.entry("10-mask-plain", curved(2200 - 100 * PI)),
              Map.entry("11-mask-box-alpha", exact(800)),
              Map.entry("12-fill-rules", exact(1600 + 1000 + 300)),
              Map.entry("13-caps-joins", curved(732 + 5 * PI + 160 - 3 * sqrt(3))),
              Map.entry("14-dashes", curved(60 * PI + 80)),
              Map.entry("15-non-scaling-stroke", exact(60 * 2 * PX)),
              Map.entry("18-style-rules", exact(600)),
              Map.entry("19-inheritance", exact(200)),
              Map.entry("20-half-opaque", exact(700)),
              Map.entry("21-units", exact(180)),
              Map.entry("22-viewports", exact(150 + 50 + 4)),
              Map.entry("23-embedded-png", exact(200 + 2600 + 50)),
              Map.entry("24-embedded-jpeg", exact(300)),
              Map.entry("25-pattern-dots", curved(68 * PI)),
              Map.entry("26-pattern-box", exact(480)),
              Map.entry("27-gradients", exact(800)),
              Map.entry("28-told", exact(460)),
              Map.entry("29-switch", exact(100)),
              Map.entry("30-transform-origin", exact(600)),
              Map.entry("31-compact-path", curved(100 * PI + 400 / 3.)),
              Map.entry("32-skewed-stroke", curved(240 + 60 * PI)),
              Map.entry("33-paint-order", curved(4000 + 16 * PI)),
              Map.entry("34-odd-but-legal", curved(800 - (4 - PI) * 25))));

  private static final List<String> TEXTS = List.of("16-text", "17-text-places");

  static Stream<String> names() {
    return BY_HAND.keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("names")
  void areaIsAsWorkedOutByHand(String name) throws Exception {
    Expected expected = BY_HAND.get(name);
    Artwork art = ArtworkFile.read(FOLDER.resolve(name + ".svg"));
    assertThat(art.opaqueAreaMm2())
        .as("%s: %s", name, art.notes())
        .isCloseTo(expected.areaMm2, within(1e-7 + expected.relative * expected.areaMm2));
    assertThat(Drawings.geometry(art).isValid()).isTrue();
  }

  @Test
  void everyFileIsHeldToSomething() throws IOException {
    TreeSet<String> held = new TreeSet<>(BY_HAND.keySet());
    held.addAll(TEXTS);
    TreeSet<String> found = new TreeSet<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      files.forEach(p -> found.add(p.getFileName().toString().replace(".svg", "")));
    }
    assertThat(found).isEqualTo(held);
    assertThat(held).hasSize(34);
  }

  @Test
  void whatIsSkippedIsNamedWithElementLineAndId() throws Exception {
    assertThat(notes("28-told"))
        .contains(
            "1 marker-end \"url(#arrow)\" skipped at line 5 (#arrowed)",
            "1 filter \"url(#blur)\" ignored at line 6 (#soft)",
            "1 <animate> not run at line 6",
            "1 <textPath> within <text> skipped at line 7 (#along)",
            "1 <script> not run at line 8 (#code)",
            "1 <flowRoot> skipped at line 8 (#flow)",
            "1 <animateMotion> not run at line 8");
    assertThat(notes("23-embedded-png"))
        .contains(
            "1 <image> of 8 x 8 pixels, 10 dpi here, read by the threshold at line 8 (#chequer)",
            "1 <image> of \"../pictures/poster.png\" skipped, no other file is opened at line 10"
                + " (#lost)");
    assertThat(notes("27-gradients"))
        .contains(
            "1 fill by gradient \"#fade\" with dark and light stops skipped at line 10 (#dawn)",
            "1 fill by gradient \"#again\" drawn as one tone, all its stops are dark at line 9");
    assertThat(notes("25-pattern-dots"))
        .contains("1 pattern \"#dots\" laid in tiles of 10.0 x 10.0 at line 8");
    assertThat(notes("20-half-opaque").get(0))
        .isEqualTo("6 half-opaque paint judged by the threshold at lines 5 (#thin), 6, 7, 8");
    assertThat(notes("18-style-rules"))
        .contains("style rule ignored: \"@media print\"", "style selector ignored: \"rect:hover\"");
    assertThat(notes("29-switch")).contains("1 <switch> drawn as its <g> at line 3 (#sw)");
    assertThat(notes("15-non-scaling-stroke"))
        .contains("1 non-scaling stroke drawn in px of the sheet at line 4 (#hair)");
  }

  private static List<String> notes(String name) throws Exception {
    return ArtworkFile.read(FOLDER.resolve(name + ".svg")).notes();
  }
}
