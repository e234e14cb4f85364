package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Widths of lines and spaces against closed forms. */
class LineWidthsTest {
  private static Artwork rings(double w, double h, double[]... rings) {
    int[] starts = new int[rings.length + 1];
    List<Double> all = new ArrayList<>();
    for (int r = 0; r < rings.length; r++) {
      for (double v : rings[r]) {
        all.add(v);
      }
      starts[r + 1] = all.size() / 2;
    }
    double[] xy = all.stream().mapToDouble(v -> v).toArray();
    return Artwork.of(w, h, xy, starts, 0, List.of());
  }

  private static double[] box(double x0, double y0, double x1, double y1) {
    return new double[] {x0, y0, x1, y0, x1, y1, x0, y1};
  }

  private static double[] circle(double x, double y, double radius, int corners, boolean hole) {
    double[] ring = new double[2 * corners];
    for (int i = 0; i < corners; i++) {
      double a = (hole ? -1 : 1) * 2 * Math.PI * i / corners;
      ring[2 * i] = x + radius * Math.cos(a);
      ring[2 * i + 1] = y + radius * Math.sin(a);
    }
    return ring;
  }

  private static double largest(LineWidths w, boolean line) {
    double most = Double.NaN;
    for (int i = 0; i < w.count(); i++) {
      double here = line ? w.lineMm(i) : w.spaceMm(i);
      most = here > most || Double.isNaN(most) ? here : most;
    }
    return most;
  }

  @ParameterizedTest
  @CsvSource({"0.3, 0.7", "2, 1", "0.05, 4"})
  void stripesAreAsWideAsDrawnWhereverTheyRun(double line, double space) {
    double[] at = {-3, -3 + line + space, -3 + 2 * (line + space)};
    Artwork art =
        rings(
            40,
            40,
            box(at[0], -15, at[0] + line, 15),
            box(at[1], -15, at[1] + line, 15),
            box(at[2], -15, at[2] + line, 15));
    LineWidths w = LineWidths.of(art, 0.3, 25);
    assertThat(w.smallestLineMm()).isCloseTo(line, within(1e-12));
    assertThat(w.smallestSpaceMm()).isCloseTo(space, within(1e-12));
    assertThat(largest(w, false)).isCloseTo(space, within(1e-12));
    double length = 0;
    for (int i = 0; i < w.count(); i++) {
      length += w.lengthMm(i);
      assertThat(w.lengthMm(i)).isLessThanOrEqualTo(0.3 + 1e-12);
    }
    assertThat(length).isCloseTo(art.edgeLengthMm(), within(1e-9));
  }

  @Test
  void stripesThatMeetAtTheTilesBordersAreMeasuredAcrossThem() {
    Artwork tile = rings(4, 4, box(-2, -2, -1.6, 2), box(1.7, -2, 2, 2));
    LineWidths w = LineWidths.of(Sheets.repeated(tile, 5, 3));
    // 0.3 + 0.4 mm meet; at the sheet's own border there is nothing to measure.
    assertThat(w.smallestLineMm()).isCloseTo(0.7, within(1e-3));
    assertThat(w.smallestSpaceMm()).isCloseTo(3.3, within(1e-3));
  }

  @ParameterizedTest
  @ValueSource(ints = {60, 61, 500})
  void ringsAndTheirBoresHaveTheirRadii(int corners) {
    Artwork art = rings(30, 30, circle(1, 2, 5, corners, false), circle(1, 2, 4.4, corners, true));
    LineWidths w = LineWidths.of(art);
    double flat = 5 * (1 - Math.cos(Math.PI / corners));
    assertThat(w.smallestLineMm()).isCloseTo(0.6, within(flat + 1e-9));
    assertThat(largest(w, true)).isCloseTo(0.6, within(0.02 + flat));
    assertThat(w.smallestSpaceMm()).isCloseTo(8.8, within(3 * flat + 1e-9));
  }

  // A ray square to one side of a wedge of angle a, at d from its tip, is d tan a long.
  @ParameterizedTest
  @ValueSource(doubles = {5, 10, 20})
  void sharpWedgesNarrowToTheirTips(double degrees) {
    double a = Math.toRadians(degrees);
    double[] wedge = {-10, 0, 10, 0, 10, 20 * Math.tan(a)};
    LineWidths w = LineWidths.of(rings(40, 60, wedge), 0.1, 25);
    int below = 0;
    for (int i = 0; i < w.count(); i++) {
      if (w.y(i) == 0 && w.x(i) < 0) {
        below++;
        double d = w.x(i) + 10;
        assertThat(w.lineMm(i)).as("at %s mm", d).isCloseTo(d * Math.tan(a), within(1e-9));
        assertThat(w.normalX(i)).isZero();
        assertThat(w.normalY(i)).isEqualTo(-1);
      }
    }
    assertThat(below).isEqualTo(100);
  }

  @Test
  void cornersAndBluntTipsDoNotCountAsNarrow() {
    double[] diamond = {-5, 0, 0, -5, 5, 0, 0, 5};
    assertThat(LineWidths.of(rings(20, 20, diamond), 0.01, 25).smallestLineMm())
        .isCloseTo(Math.sqrt(50), within(1e-9));
    // An L: its inner corner and its ends are no narrower than its arms.
    double[] angle = {0, 0, 6, 0, 6, 1, 1, 1, 1, 6, 0, 6};
    assertThat(LineWidths.of(rings(20, 20, angle), 0.01, 25).smallestLineMm())
        .isCloseTo(1, within(1e-9));
  }

  // The circle inscribed in an equilateral triangle of side s is s / sqrt 3 wide.
  @Test
  void trianglesAreAsWideAsTheirInscribedCircle() {
    double[] triangle = {0, 0, 2, 0, 1, Math.sqrt(3)};
    double[] hole = {-5, 0, -4, Math.sqrt(3), -3, 0};
    Artwork art = rings(20, 20, box(-8, -8, 0 - 0.5, 8), hole, triangle);
    LineWidths w = LineWidths.of(art);
    double across = 2 / Math.sqrt(3);
    boolean line = false;
    boolean space = false;
    for (int i = 0; i < w.count(); i++) {
      line |= w.ring(i) == 2 && Math.abs(w.lineMm(i) - across) < 1e-12;
      space |= w.ring(i) == 1 && Math.abs(w.spaceMm(i) - across) < 1e-12;
    }
    assertThat(line).isTrue();
    assertThat(space).isTrue();
  }

  @Test
  void gridOfDotsHasItsDiametersAndGaps() {
    double[][] dots = new double[49][];
    for (int i = 0; i < 49; i++) {
      dots[i] = circle(3 * (i % 7 - 3), 3 * (i / 7 - 3), 0.5, 90, false);
    }
    LineWidths w = LineWidths.of(rings(30, 30, dots));
    assertThat(w.smallestLineMm()).isCloseTo(1, within(2e-3));
    assertThat(largest(w, true)).isCloseTo(1, within(2e-3));
    assertThat(w.smallestSpaceMm()).isCloseTo(2, within(5e-3));
  }

  @Test
  void nothingWiderThanTheReachIsLookedFor() {
    Artwork art = rings(40, 40, box(-10, -10, 10, 10));
    assertThat(LineWidths.of(art, 1, 19).smallestLineMm()).isNaN();
    assertThat(LineWidths.of(art, 1, 21).smallestLineMm()).isCloseTo(20, within(1e-12));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LineWidths.of(art, 0, 21))
        .withMessageContaining("0.0 mm");
  }
}
