package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.amperskin.units.CurrentDensity;
import org.amperskin.yaml.YamlFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Efficiency as a function of density. */
class EfficiencyCurveTest {
  private static final Recipe CHROMIUM =
      RecipeLibrary.standard().find("chromium-hexavalent-decorative");
  private static final EfficiencyCurve CURVE =
      new EfficiencyCurve(
          List.of(
              new EfficiencyCurve.Point(100, 0.1),
              new EfficiencyCurve.Point(200, 0.2),
              new EfficiencyCurve.Point(400, 0.3)),
          Mark.COMMON,
          "test");

  private static StepEstimate chromium(double aPerDm2) {
    return TankStep.of("chromium", CHROMIUM, PlatedSurface.bare(10_000), Target.um(0.5))
        .density(CurrentDensity.ofPerDm2(aPerDm2))
        .build()
        .estimate();
  }

  @ParameterizedTest
  @CsvSource({"100,0.1", "150,0.15", "300,0.25", "400,0.3", "50,0.1", "900,0.3"})
  void linesBetweenPointsAndTheEndsBeyond(double density, double efficiency) {
    assertThat(CURVE.at(density)).isCloseTo(efficiency, within(1e-12));
  }

  /**
   * Chromium's efficiency rises with density, so metal per charge does: the reason why it spreads
   * worse than its current (Farber and Blum, NBS J. Res. 4 (1930) 27). Faraday's law holds at each.
   */
  @ParameterizedTest
  @CsvSource({"10,0.12", "15,0.15", "20,0.17"})
  void metalPerChargeFollowsTheCurve(double aPerDm2, double efficiency) {
    StepEstimate e = chromium(aPerDm2);
    double perAh = CHROMIUM.ion().massPerAmpereHour().inGrams();
    assertThat(e.massG().orElseThrow() / e.chargeAh().orElseThrow() / perAh)
        .isCloseTo(efficiency, within(1e-12));
    assertThat(e.assumptions())
        .anyMatch(a -> a.what().startsWith("cathode efficiency at ") && a.mark() == Mark.MEMORY);
    Band time = e.timeBandS().orElseThrow();
    assertThat(e.timeS().orElseThrow()).isBetween(time.low(), time.high());
    assertThat(e.warnings()).isEmpty();
  }

  @Test
  void beyondThePointsItIsToldAndAGivenEfficiencyGoesFirst() {
    assertThat(chromium(45).warnings()).anyMatch(w -> w.contains("known from 10.0 A/dm2 to 30.0"));
    StepEstimate own =
        TankStep.of("chromium", CHROMIUM, PlatedSurface.bare(10_000), Target.um(0.5))
            .density(CurrentDensity.ofPerDm2(10))
            .efficiency(0.2)
            .build()
            .estimate();
    double perAh = CHROMIUM.ion().massPerAmpereHour().inGrams();
    assertThat(own.massG().orElseThrow())
        .isCloseTo(0.2 * perAh * own.chargeAh().orElseThrow(), within(1e-12));
  }

  private static void faulty(String curve, String told) throws Exception {
    String text =
        new String(
            RecipeLibrary.class.getResourceAsStream("recipes/nickel-watts.yaml").readAllBytes(),
            java.nio.charset.StandardCharsets.UTF_8);
    assertThatThrownBy(
            () -> RecipeReader.read(text + "\nefficiency-by-density: " + curve + "\n", "mine.yaml"))
        .isInstanceOf(YamlFault.class)
        .hasMessageStartingWith("mine.yaml:")
        .hasMessageContaining(told);
  }

  @Test
  void aBrokenCurveIsToldWithItsPlace() throws Exception {
    String end = ", mark: C, source: mine}";
    String two = "{density: 2 A/dm2, efficiency: 95 %}";
    faulty("{points: [" + two + "]" + end, "at least 2");
    faulty("{points: [" + two + ", " + two + "]" + end, "2.00 A/dm2 does not rise");
    faulty("{points: [" + two + ", {density: 4 A/dm2, efficiency: 130 %}]" + end, "up to 1");
    faulty("{points: [" + two + ", {density: 4 V, efficiency: 90 %}]" + end, "A/dm2");
    faulty("{points: [" + two + ", {density: 4 A/dm2}]" + end, "efficiency");
    faulty("{points: [" + two + ", {density: 4 A/dm2, efficiency: 90 %}], mark: C}", "source");
  }
}
