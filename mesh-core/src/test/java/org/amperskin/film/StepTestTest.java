package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.region.MaskKind;
import org.junit.jupiter.api.Test;

/** Strips to find an exposure by trial. */
class StepTestTest {
  private static final List<Double> TIMES = List.of(10.0, 14.1, 20.0);

  private static StepTest strips(double finestMm) {
    return new StepTest("cells", TIMES, finestMm, MaskKind.POSITIVE_RESIST);
  }

  /** Rings of the black by strip, each {@code minX, minY, maxX, maxY} from the strip's left end. */
  private static List<List<double[]>> boxes(StepTest test) {
    FilmLayout layout = test.layout();
    List<List<double[]>> byStrip = new ArrayList<>();
    TIMES.forEach(t -> byStrip.add(new ArrayList<>()));
    double left = layout.outline().extent().minX();
    for (double[] ring : layout.black().rings()) {
      Extent e = Outline.of(List.of(ring)).extent();
      int strip = (int) ((e.minX() - left) / StepTest.STRIP_MM);
      double x = left + strip * StepTest.STRIP_MM;
      byStrip.get(strip).add(new double[] {e.minX() - x, e.minY(), e.maxX() - x, e.maxY()});
    }
    return byStrip;
  }

  @Test
  void aStripCarriesAsManyDotsAsItsNumber() {
    List<List<double[]>> strips = boxes(strips(0.4));
    for (int k = 0; k < strips.size(); k++) {
      double top = strips.get(k).stream().mapToDouble(b -> b[3]).max().orElseThrow();
      assertThat(strips.get(k).stream().filter(b -> b[3] > top - 1e-9)).hasSize(k + 1);
    }
  }

  @Test
  void barsAreAsWideAsToldAndAlternateEvenly() {
    StepTest test = strips(0.4);
    assertThat(test.barsMm()).containsExactly(0.2, 0.4 * 0.7, 0.4, 0.4 * 1.4, 0.8);
    for (List<double[]> strip : boxes(test)) {
      for (double w : test.barsMm()) {
        List<double[]> bars = strip.stream().filter(b -> Math.abs(b[2] - b[0] - w) < 1e-9).toList();
        // 12 mm between the sides hold n bars and n - 1 gaps: (2 n - 1) w <= 12
        assertThat(bars).hasSize((int) Math.floor((12 / w + 1) / 2));
        for (int b = 1; b < bars.size(); b++) {
          assertThat(bars.get(b)[0] - bars.get(b - 1)[2]).isCloseTo(w, within(1e-9));
        }
      }
    }
  }

  @Test
  void everyStripHasTheSameFieldsInTheSamePlaces() {
    List<List<double[]>> strips = boxes(strips(0.4));
    List<double[]> fields =
        strips.stream()
            .map(s -> s.stream().filter(b -> b[2] - b[0] > 2).findFirst().orElseThrow())
            .toList();
    for (double[] field : fields) {
      assertThat(field).containsExactly(fields.get(0), within(1e-9));
      assertThat((field[2] - field[0]) * (field[3] - field[1])).isCloseTo(108, within(1e-9));
    }
    // the clear field above it is as high
    double lowestBar =
        strips.get(0).stream()
            .filter(b -> b[2] - b[0] < 2)
            .mapToDouble(b -> b[1])
            .min()
            .orElseThrow();
    assertThat(lowestBar - fields.get(0)[3]).isCloseTo(9 + 1.5, within(1e-9));
  }

  @Test
  void coarseLinesAreNotDrawnCoarser() {
    assertThat(strips(3).barsMm()).isEqualTo(strips(0.5).barsMm());
  }

  @Test
  void itsMethodTellsWhenToCoverWhichStripAndHowToReadIt() {
    assertThat(strips(0.4).method())
        .contains("1 at 10 s, 2 at 14 s, 3 at 20 s", "free of resist", "half as long again");
    StepTest negative = new StepTest("cells", TIMES, 0.4, MaskKind.NEGATIVE_RESIST);
    assertThat(negative.method()).contains("keep all their resist").doesNotContain("free of");
  }

  @Test
  void refusesTimesThatDoNotRiseAndStopOffs() {
    assertThatThrownBy(
            () -> new StepTest("cells", List.of(10.0, 10.0), 0.4, MaskKind.POSITIVE_RESIST))
        .hasMessageContaining("[10.0, 10.0] s do not rise");
    assertThatThrownBy(() -> new StepTest("tape", TIMES, 0.4, MaskKind.STOP_OFF))
        .hasMessageContaining("tape is a stop-off");
    assertThatThrownBy(() -> strips(0)).hasMessageContaining("0.0 mm");
  }
}
