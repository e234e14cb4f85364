package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.units.CurrentDensity;
import org.junit.jupiter.api.Test;

/** Pulses change what the supply gives and leave what lands. */
class PulseTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();

  private static TankStep.Builder copper(double aPerDm2) {
    return TankStep.of(
            "copper",
            RECIPES.find("copper-acid-high-throw"),
            PlatedSurface.bare(10_000),
            Target.um(20))
        .density(CurrentDensity.ofPerDm2(aPerDm2));
  }

  private static double figure(StepEstimate e, String key) {
    return e.figures().stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow().value();
  }

  @Test
  void peakIsMeanOverDutyAndNothingElseMoves() {
    StepEstimate steady = copper(1).build().estimate();
    StepEstimate pulsed = copper(1).pulse(new Pulse(0.009, 0.001)).build().estimate();
    assertThat(figure(pulsed, Pulse.PEAK)).isCloseTo(1 / 0.9, within(1e-12));
    assertThat(figure(pulsed, "peakADm2")).isCloseTo(1 / 0.9, within(1e-12));
    // the square of the effective current, averaged over a period: 0.9 (1/0.9)^2
    assertThat(Math.pow(figure(pulsed, "effectiveA"), 2))
        .isCloseTo(0.9 * Math.pow(1 / 0.9, 2), within(1e-12));
    assertThat(pulsed.currentA()).isEqualTo(steady.currentA());
    assertThat(pulsed.chargeAh()).isEqualTo(steady.chargeAh());
    assertThat(pulsed.timeS()).isEqualTo(steady.timeS());
    assertThat(pulsed.massG()).isEqualTo(steady.massG());
    assertThat(pulsed.warnings()).isEqualTo(steady.warnings());
  }

  @Test
  void aPeakPastWindowAndDiffusionIsToldWithWhatKeepsWithin() {
    StepEstimate pulsed = copper(2).pulse(new Pulse(0.001, 0.004)).build().estimate();
    double high = pulsed.densityWindowADm2().orElseThrow().high();
    double limit = figure(pulsed, "limitingADm2");
    assertThat(10.0).isGreaterThan(Math.max(high, limit));
    assertThat(pulsed.warnings())
        .anySatisfy(w -> assertThat(w).contains("peak of 10.0 A/dm2", "duty of"))
        .anySatisfy(w -> assertThat(w).contains("that diffusion brings"));
    // the duty it names puts the peak onto the window
    StepEstimate within = copper(2).pulse(new Pulse(2 / high, 1 - 2 / high)).build().estimate();
    assertThat(figure(within, "peakADm2")).isCloseTo(high, within(1e-9));
    assertThat(within.warnings()).noneMatch(w -> w.contains("allowed for steady current"));
  }

  @Test
  void pulsesTooShortForTheSurfaceAreTold() {
    assertThat(copper(1).pulse(new Pulse(2e-5, 2e-6)).build().estimate().warnings())
        .anySatisfy(w -> assertThat(w).contains("pulses of 20 us", "100 us"));
    assertThatThrownBy(() -> new Pulse(0, 1)).hasMessageContaining("pulse on");
  }
}
