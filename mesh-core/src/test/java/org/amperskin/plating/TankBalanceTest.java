package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.Volume;
import org.junit.jupiter.api.Test;

/** What a tank step takes from anode, bath and bench. */
class TankBalanceTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final PlatedSurface TWO_DM2 = PlatedSurface.bare(20_000);

  private static StepEstimate told(
      Recipe recipe, double chargeAh, double efficiency, double volts, double bathL) {
    EstimateBuilder out = new EstimateBuilder("cu", "", How.TANK, TWO_DM2, Optional.of(recipe));
    new TankBalance(out, recipe).tell(chargeAh, efficiency, volts, 2, 1.5, bathL);
    return out.build();
  }

  private static double figure(StepEstimate e, String key) {
    return e.figures().stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow().value();
  }

  private static boolean has(StepEstimate e, String key) {
    return e.figures().stream().anyMatch(f -> f.key().equals(key));
  }

  @Test
  void anodeMetalIsDepositAndBathChangeAndSludge() {
    Recipe recipe = RECIPES.find("copper-acid-high-throw");
    for (double efficiency : new double[] {0.9, 0.97, 1}) {
      StepEstimate e =
          TankStep.of("cu", recipe, TWO_DM2, Target.um(60))
              .efficiency(efficiency)
              .bath(new Volume(0.008))
              .wire(Length.ofMm(0.5), Length.ofMm(800))
              .build()
              .estimate();
      double wireShare = Math.PI * 0.5 * 800 / (20_000 + Math.PI * 0.5 * 800);
      double landed = e.massG().getAsDouble() / (1 - wireShare);
      assertThat(landed + 8 * figure(e, "bathGainGPerL"))
          .as("efficiency %s", efficiency)
          .isCloseTo(figure(e, "anodeG") / 1.02, within(1e-9 * landed));
    }
  }

  /** Bath warm-up by hand: 3 A x 2 V x 3 h = 65 kJ in 5 L of water are 3.1 K. */
  @Test
  void voltsTimesChargeWarmTheBath() {
    StepEstimate e = told(RECIPES.find("copper-acid-high-throw"), 9, 1, 2, 5);
    assertThat(figure(e, "warmsK")).isCloseTo(3.1, within(0.01));
  }

  /** By Faraday's law an ampere-hour takes 1.1855 g of copper and leaves 1.830 g of acid. */
  @Test
  void anInsolubleAnodeDrainsTheBathAndSoursIt() {
    Recipe soluble = RECIPES.find("copper-acid-high-throw");
    Recipe recipe =
        new Recipe(
            soluble.id(),
            soluble.name(),
            soluble.how(),
            soluble.ion(),
            soluble.alkaline(),
            soluble.claim(),
            soluble.figures(),
            soluble.efficiencyByDensity(),
            Optional.of(new Anode("oxide on titanium", false, Mark.COMMON, "test")),
            soluble.hazards(),
            soluble.makeUp(),
            soluble.cautions(),
            soluble.notes());
    StepEstimate e = told(recipe, 1, 1, 2, 1);
    assertThat(figure(e, "bathLossGPerL")).isCloseTo(1.1855, within(1e-3));
    assertThat(figure(e, "acidGainGPerL")).isCloseTo(1.830, within(1e-3));
    // half of 0.45642 L of hydrogen an ampere-hour at 25 C
    assertThat(figure(e, "oxygenL")).isCloseTo(0.45642 / 2, within(1e-4));
    assertThat(has(e, "anodeG")).isFalse();
    // the bath's copper falls by 1.1855 g/L a part, from its typical to its least content
    Figure copper = recipe.needed(FigureKey.METAL_CONTENT);
    assertThat(figure(e, "bathLastsParts"))
        .isCloseTo((copper.typical() - copper.low()) / 1.1855, within(0.01));
    StepEstimate rises = told(soluble, 1, 0.9, 2, 1);
    assertThat(figure(rises, "bathLastsParts"))
        .isCloseTo((copper.high() - copper.typical()) / 0.11855, within(0.1));
  }

  /** i = n F D c / delta: 0.8 M, 6e-10 m2/s, 75 um are 12.3 A/dm2; 150 um 6.2, 30 um 31. */
  @Test
  void diffusionLimitsTheDensity() {
    StepEstimate e = told(RECIPES.find("copper-acid-decorative"), 1, 1, 2, 1);
    StepFigure limit =
        e.figures().stream().filter(f -> f.key().equals("limitingADm2")).findFirst().orElseThrow();
    double molPerL = 51 / 63.546;
    assertThat(limit.value()).isCloseTo(12.3 * molPerL / 0.8, within(0.1));
    assertThat(limit.band().get().low()).isCloseTo(6.2 * molPerL / 0.8, within(0.05));
    assertThat(limit.band().get().high()).isCloseTo(31 * molPerL / 0.8, within(0.3));
  }

  @Test
  void densitiesNearTheLimitAreWarnedOf() {
    TankStep.Builder step =
        TankStep.of("cu", RECIPES.find("copper-acid-high-throw"), TWO_DM2, Target.um(20));
    assertThat(step.density(CurrentDensity.ofPerDm2(1.5)).build().estimate().warnings())
        .noneMatch(w -> w.contains("diffusion"));
    assertThat(step.density(CurrentDensity.ofPerDm2(3)).build().estimate().warnings())
        .anyMatch(w -> w.contains("0.4 of the 4.13 A/dm2"));
  }

  /** Half a charge moves half the metal: two halves add up to the whole. */
  @Test
  void halvesAddUp() {
    Recipe recipe = RECIPES.find("copper-acid-high-throw");
    StepEstimate whole = TankStep.of("a", recipe, TWO_DM2, Target.um(40)).build().estimate();
    StepEstimate half = TankStep.of("a", recipe, TWO_DM2, Target.um(20)).build().estimate();
    assertThat(2 * half.chargeAh().getAsDouble())
        .isCloseTo(whole.chargeAh().getAsDouble(), within(1e-9));
    assertThat(2 * half.timeS().getAsDouble()).isCloseTo(whole.timeS().getAsDouble(), within(1e-6));
    for (String key : new String[] {"anodeG", "additiveMl"}) {
      assertThat(2 * figure(half, key)).as(key).isCloseTo(figure(whole, key), within(1e-9));
    }
  }
}
