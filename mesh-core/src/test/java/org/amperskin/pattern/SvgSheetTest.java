package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sizes, units and the viewBox: W3C SVG 2 chapter 8, W3C CSS Values and Units 3 section 6.2. */
class SvgSheetTest {
  private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' ";

  @ParameterizedTest
  @CsvSource({
    "50mm, 50",
    "5cm, 50",
    "2in, 50.8",
    "144pt, 50.8",
    "12pc, 50.8",
    "192px, 50.8",
    "200Q, 50",
    "192, 50.8",
    "1e2mm, 100"
  })
  void unitsAreExact(String text, double mm) {
    Artwork art =
        Drawings.read(
            SVG
                + "width='"
                + text
                + "' height='"
                + text
                + "' viewBox='0 0 2 2'><rect width='1'"
                + " height='2'/></svg>");
    assertThat(art.widthMm()).isEqualTo(mm);
    assertThat(art.heightMm()).isEqualTo(mm);
    assertThat(art.opaqueFraction()).isCloseTo(0.5, within(1e-9));
    assertThat(art.edgeLengthMm()).isCloseTo(3 * mm, within(1e-7));
  }

  @Test
  void originIsTheCentreAndYPointsUp() {
    Artwork art =
        Drawings.read(
            SVG
                + "width='40mm' height='20mm' viewBox='0 0 40 20'>"
                + "<rect x='30' width='10' height='5'/></svg>");
    assertThat(art.xy()).containsExactly(10, 5, 20, 5, 20, 10, 10, 10);
    assertThat(art.ringStarts()).containsExactly(0, 4);
    assertThat(art.flatteningMm()).isZero();
  }

  @Test
  void meetKeepsRoundThingsRoundInTheMiddle() {
    Artwork art =
        Drawings.read(
            SVG
                + "width='40mm' height='20mm' viewBox='0 0 10 10'>"
                + "<rect width='10' height='10'/></svg>");
    assertThat(art.xy()).containsExactly(-10, -10, 10, -10, 10, 10, -10, 10);
  }

  @Test
  void noneStretchesAndSliceOverflows() {
    String body = "><rect width='10' height='10'/></svg>";
    String head = SVG + "width='40mm' height='20mm' viewBox='0 0 10 10' preserveAspectRatio=";
    assertThat(Drawings.read(head + "'none'" + body).opaqueAreaMm2()).isCloseTo(800, within(1e-6));
    assertThat(Drawings.read(head + "'xMaxYMax slice'" + body).opaqueAreaMm2())
        .isCloseTo(800, within(1e-6));
    assertThat(Drawings.read(head + "'xMaxYMin meet'" + body).xy())
        .containsExactly(0, -10, 20, -10, 20, 10, 0, 10);
  }

  @Test
  void bareNumbersAreCssPixelsUnlessToldOtherwise() {
    String svg = SVG + "width='96' height='48'><rect width='48' height='48'/></svg>";
    Artwork px = Drawings.read(svg);
    assertThat(px.widthMm()).isEqualTo(25.4);
    assertThat(px.opaqueAreaMm2()).isCloseTo(12.7 * 12.7, within(1e-6));
    assertThat(px.notes()).contains("width 96.0 has no unit: taken as px, 25.4/96 mm each");
    Artwork mm = Drawings.read(svg, ArtworkFile.Options.standard().withUnitlessMm(1));
    assertThat(mm.widthMm()).isEqualTo(96);
    assertThat(mm.opaqueAreaMm2()).isCloseTo(48 * 48, within(1e-6));
    assertThat(mm.notes()).contains("width 96.0 has no unit: taken as 1.0 mm each");
  }

  @Test
  void aMissingSizeComesFromTheViewBoxAndIsTold() {
    Artwork art = Drawings.read(SVG + "viewBox='0 0 96 192'><rect width='96' height='96'/></svg>");
    assertThat(art.heightMm()).isEqualTo(50.8);
    assertThat(art.opaqueFraction()).isCloseTo(0.5, within(1e-9));
    assertThat(String.join(";", art.notes())).contains("no height: the viewBox's 192.0 taken at");
  }

  @Test
  void whatIsSkippedIsNamedWithItsLine() {
    Artwork art =
        Drawings.read(
            Drawings.sheet(
                """
                <!-- words are in another test -->
                <g filter='url(#f)'><image href='a.png'/></g>
                <text display='none'>C</text>
                <rect width='5' height='5' fill='url(#g)'/>
                <rect width='5' height='5' fill='url(#nix) black' mask='url(#m)'/>
                <rect width='5' height='5' fill='blurple'/>
                <use href='#nowhere'/><script/>
                <path marker-end='url(#m)' d='M0 0h1'/>
                <style>g > rect{fill:white} @media print{rect{fill:white}}</style>
                <linearGradient id='g'/><x:layer xmlns:x='urn:editor'/>"""));
    assertThat(art.notes())
        .containsExactlyInAnyOrder(
            "style rule ignored: \"@media print\"",
            "1 filter \"url(#f)\" ignored at line 3",
            "1 <image> of \"a.png\" skipped, no other file is opened at line 3",
            "1 mask \"url(#m)\" ignored at line 6",
            "1 fill by \"url(#nix) black\", not found here, replaced at line 6",
            "1 fill \"blurple\" not understood, not drawn at line 7",
            "1 <use> of \"#nowhere\" skipped at line 8",
            "1 <script> not run at line 8",
            "1 marker-end \"url(#m)\" skipped at line 9");
    assertThat(art.opaqueAreaMm2()).isCloseTo(25, within(1e-7));
  }

  @Test
  void flatteningIsToldAndKept() {
    double r = 40;
    for (double tolerance : new double[] {0.1, 0.01, 0.001}) {
      Artwork art =
          Drawings.read(
              Drawings.sheet("<circle cx='50' cy='50' r='40'/>"),
              ArtworkFile.Options.standard().withFlatteningMm(tolerance));
      assertThat(art.flatteningMm()).isBetween(tolerance / 4, tolerance);
      double worst = 0;
      double[] xy = art.xy();
      for (int p = 0; p < art.edgeCount(); p++) {
        int q = (p + 1) % art.edgeCount();
        worst = Math.max(worst, Math.abs(Math.hypot(xy[2 * p], xy[2 * p + 1]) - r));
        double mx = (xy[2 * p] + xy[2 * q]) / 2;
        double my = (xy[2 * p + 1] + xy[2 * q + 1]) / 2;
        worst = Math.max(worst, Math.abs(Math.hypot(mx, my) - r));
      }
      assertThat(worst).isLessThanOrEqualTo(art.flatteningMm() + 1e-8);
    }
  }

  @Test
  void curvesAndTheirOffsetsStayWithinTheToldDeviation() {
    // a quarter of a circle of radius 30 as cubic departs from the circle by 2.73e-4 r = 0.0082 mm
    String d = "M80 50C80 66.568542494 66.568542494 80 50 80";
    Artwork art =
        Drawings.read(
            Drawings.sheet("<path fill='none' stroke='black' stroke-width='8' d='" + d + "'/>"));
    double[] xy = art.xy();
    double allowed = art.flatteningMm() + 30 * 2.73e-4;
    for (int p = 0; p < art.edgeCount(); p++) {
      double radius = Math.hypot(xy[2 * p], xy[2 * p + 1]);
      assertThat(Math.min(Math.abs(radius - 34), Math.abs(radius - 26))).isLessThan(allowed);
    }
    assertThat(art.flatteningMm()).isLessThanOrEqualTo(0.01);
  }
}
