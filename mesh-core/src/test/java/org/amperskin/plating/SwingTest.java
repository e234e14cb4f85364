package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.amperskin.units.MassDensity;
import org.junit.jupiter.api.Test;

/** How far unknowns move results. */
class SwingTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();

  private static Unknown unknown(String name, double low, double typical, double high) {
    return new Unknown(name, new Spread.Triangle(low, typical, high), "measure it");
  }

  /**
   * A symmetric triangle from 0 to 2 has its tenth percentile at sqrt(0.2) and its ninetieth at 2 -
   * sqrt(0.2): integrate x up to 0.1.
   */
  @Test
  void endsArePercentilesOfTheTriangle() {
    List<Swing> swings =
        Unknown.swings(
            "time",
            "s",
            x -> 3 * x[0] + x[1],
            List.of(unknown("a", 0, 1, 2), unknown("b", 5, 5, 5)));
    assertThat(swings).hasSize(1);
    Swing a = swings.get(0);
    assertThat(a.typical()).isEqualTo(8);
    assertThat(a.atLow()).isCloseTo(5 + 3 * Math.sqrt(0.2), within(1e-12));
    assertThat(a.atHigh()).isCloseTo(5 + 3 * (2 - Math.sqrt(0.2)), within(1e-12));
    assertThat(a.share()).isCloseTo(3 * (2 - 2 * Math.sqrt(0.2)) / 8, within(1e-12));
  }

  /** Of independent unknowns in a sum, the band is wider than any swing, and below their sum. */
  @Test
  void theBandHoldsTheSwings() {
    Unknown a = unknown("a", 0, 1, 2);
    Unknown b = unknown("b", 0, 1, 2);
    Band band = Spread.of(x -> x[0] + x[1], Unknown.ranges(List.of(a, b)));
    List<Swing> swings = Unknown.swings("metal", "g", x -> x[0] + x[1], List.of(a, b));
    double one = swings.get(0).atHigh() - swings.get(0).atLow();
    assertThat(band.high() - band.low()).isGreaterThan(one).isLessThan(2 * one);
    // variances of a sum add: about the square root of two
    assertThat((band.high() - band.low()) / one).isCloseTo(Math.sqrt(2), within(0.06));
  }

  @Test
  void whatWasChosenIsNoUnknownAndWhatIsKnownSwingsNothing() {
    StepEstimate told =
        TankStep.of(
                "cu",
                RECIPES.find("copper-acid-high-throw"),
                PlatedSurface.bare(10_000),
                Target.um(20))
            .efficiency(0.98)
            .metalDensity(MassDensity.ofGramsPerCm3(8.9))
            .build()
            .estimate();
    assertThat(told.swings()).isEmpty();
    StepEstimate untold =
        TankStep.of(
                "cu",
                RECIPES.find("copper-acid-high-throw"),
                PlatedSurface.bare(10_000),
                Target.um(20))
            .build()
            .estimate();
    assertThat(untold.swings())
        .extracting(Swing::unknown)
        .containsOnly("cathode efficiency", "density of the deposit");
    Swing time =
        untold.swings().stream()
            .filter(s -> s.result().equals("time") && s.unknown().equals("cathode efficiency"))
            .findFirst()
            .orElseThrow();
    assertThat(time.atLow()).isGreaterThan(time.atHigh());
    assertThat(time.typical()).isCloseTo(untold.timeS().getAsDouble(), within(1e-6));
    assertThat(untold.timeBandS().get().high()).isGreaterThan(time.typical());
  }
}
