package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class TextOutlineTest {
  private static final String TEXT = "<text id='t' x='50' y='50' font-size='20' ";

  @Test
  void aMachineWithoutFontsGivesAWarningInsteadOfAnException() throws Exception {
    SvgFonts none =
        new SvgFonts(
            (name, style) -> {
              throw new InternalError("fontconfig head is null");
            });
    Artwork art =
        SvgReader.read(
            Drawings.sheet("<rect width='10' height='10'/>" + TEXT + ">A</text>")
                .getBytes(StandardCharsets.UTF_8),
            Path.of("t.svg"),
            ArtworkFile.Options.standard(),
            none);
    assertThat(art.opaqueAreaMm2()).isCloseTo(100, within(1e-6));
    assertThat(art.notes())
        .containsExactly(
            "1 <text> skipped, no fonts can be read here: InternalError at line 2 (#t)");
  }

  @Test
  void theFontThatStandsInIsNamed() {
    Artwork art = Drawings.read(Drawings.sheet(TEXT + "font-family='Kein Satz'>A</text>"));
    assertThat(art.notes()).hasSize(1);
    assertThat(art.notes().get(0))
        .matches(
            "1 <text> in font \"Kein Satz\", which is not here: drawn in \".+\" at line 2 \\(#t\\)"
                + "|1 <text> skipped, no fonts .*");
  }

  /** Middle and end move the same outline by half of its advance and by all of it. */
  @Test
  void anchorsMoveByTheAdvance() {
    double[] start = box("text-anchor='start'>Tor</text>");
    double[] middle = box("text-anchor='middle'>Tor</text>");
    double[] end = box("text-anchor='end'>Tor</text>");
    assertThat(middle[0] - end[0]).isCloseTo(start[0] - middle[0], within(1e-6));
    assertThat(start[0] - end[0]).isGreaterThan(20);
    assertThat(start[1]).isCloseTo(end[1], within(1e-9));
  }

  /** Twice the size is four times the area; a scale does the same. */
  @Test
  void areaGrowsWithTheSquareOfTheSize() {
    double small = area("<text y='20' font-size='10'>Rost</text>");
    double large = area("<text y='40' font-size='20'>Rost</text>");
    double scaled = area("<text y='20' transform='scale(2)' font-size='10'>Rost</text>");
    assertThat(small).isGreaterThan(20);
    assertThat(large).isCloseTo(4 * small, within(1e-3 * large));
    assertThat(scaled).isCloseTo(large, within(1e-4 * large));
  }

  /** White space collapses to one space, letters keep it only when told to. */
  @Test
  void whiteSpaceCollapses() {
    double[] plain = box(">a b</text>");
    double[] wide = box(">\n  a \n\t b  </text>");
    double[] kept = box("xml:space='preserve'>a   b</text>");
    assertThat(wide).containsExactly(plain, within(1e-9));
    assertThat(kept[2]).isGreaterThan(plain[2] + 5);
  }

  /** Em counts in the element's own font size. */
  @Test
  void emIsTheFontSize() {
    assertThat(
            area(
                "<g font-size='10'><rect width='2em' height='1em'/><g font-size='2em'>"
                    + "<rect y='20' width='1em' height='1ex'/></g></g>"
                    + "<rect y='50' width='1rem' height='1rem' style='font:bold 3px/2 serif'/>"))
        .isCloseTo(20 * 10 + 20 * 10 + 16 * 16, within(1e-6));
  }

  private static double area(String body) {
    return Drawings.read(Drawings.sheet(body)).opaqueAreaMm2();
  }

  private static double[] box(String rest) {
    double[] xy = Drawings.read(Drawings.sheet(TEXT + rest)).xy();
    double[] box = {1e9, 1e9, -1e9, -1e9};
    for (int k = 0; k < xy.length; k++) {
      box[k % 2] = Math.min(box[k % 2], xy[k]);
      box[k % 2 + 2] = Math.max(box[k % 2 + 2], xy[k]);
    }
    return box;
  }
}
