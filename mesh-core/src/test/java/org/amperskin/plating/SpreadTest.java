package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.plating.Spread.Triangle;
import org.apache.commons.math3.distribution.TriangularDistribution;
import org.junit.jupiter.api.Test;

/** Percentiles against the closed form of the triangular distribution (Apache Commons Math). */
class SpreadTest {
  @Test
  void oneInputGivesTheClosedFormPercentiles() {
    var closed = new TriangularDistribution(0.93, 0.95, 0.97);
    Band band = Spread.of(x -> x[0], new Triangle(0.93, 0.95, 0.97));
    assertThat(band.low()).isCloseTo(closed.inverseCumulativeProbability(0.1), within(1e-4));
    assertThat(band.high()).isCloseTo(closed.inverseCumulativeProbability(0.9), within(1e-4));
  }

  /**
   * The sum of two triangles over -1..1 is the Irwin-Hall distribution of four uniforms less 2: its
   * upper tail is (y^4 - 4 (y - 1)^4) / 24 with y = 2 - x, so x = 0.7534 at 10 %.
   */
  @Test
  void independentInputsAdd() {
    Triangle t = new Triangle(-1, 0, 1);
    double y = 2 - 0.7534;
    assertThat((Math.pow(y, 4) - 4 * Math.pow(y - 1, 4)) / 24).isCloseTo(0.1, within(1e-4));
    assertThat(Spread.of(x -> x[0] + x[1], t, t).high()).isCloseTo(0.7534, within(0.005));
    Band four = Spread.of(x -> x[0] + x[1] + x[2] + x[3], t, t, t, t);
    // four triangles of variance 1/6 and excess -0.6: Cornish-Fisher gives 1.2924 deviations
    assertThat(four.high()).isCloseTo(1.2924 * Math.sqrt(4 / 6.0), within(0.01));
  }

  @Test
  void anInputWithoutSpreadHasNoBand() {
    Band band = Spread.of(x -> 2 * x[0], new Triangle(3, 3, 3));
    assertThat(band).isEqualTo(new Band(6, 6));
  }

  @Test
  void valuesOutOfOrderAreRefused() {
    assertThatThrownBy(() -> new Triangle(2, 1, 3)).hasMessageContaining("low 2.0, typical 1.0");
    assertThatThrownBy(() -> new Band(2, 1)).hasMessageContaining("2.0 to 1.0");
    assertThatThrownBy(() -> new Window(2, 1)).hasMessageContaining("2.0 to 1.0");
  }
}
