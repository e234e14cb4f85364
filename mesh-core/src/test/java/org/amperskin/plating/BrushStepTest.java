package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BrushStepTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final Recipe PALLADIUM = RECIPES.find("palladium-brush");
  private static final Recipe HEXAVALENT = RECIPES.find("chromium-brush-dark-hexavalent");
  private static final Recipe TRIVALENT = RECIPES.find("chromium-brush-dark-trivalent");

  private static BrushStep.Builder chromium(PlatedSurface surface, Target target) {
    return BrushStep.of("dark", HEXAVALENT, surface, target)
        .density(CurrentDensity.ofPerCm2(0.5))
        .swab(Swab.ofContact(400));
  }

  private static StepEstimate palladium(double open) {
    return BrushStep.of("palladium", PALLADIUM, PlatedSurface.masked(open, 20000), Target.um(0.5))
        .swab(Swab.ofContact(600))
        .build()
        .estimate();
  }

  /**
   * Surface Finishing Guidebook 2011-12 p. 349: bore 6 in x 2 in, 0.002 in of nickel, 150 A.h/in3,
   * 6 in2 of contact, 5 A/in2, 50 ft/min, 44.5 A.h/L: 37.7 in2, 11.31 A.h, 30 A, 22.6 min, 31.8
   * rpm, 0.255 L (0.2542 exactly).
   */
  @Test
  void guidebookBore() {
    double in2 = Unit.of("in2").toSi(1) * 1e6;
    double area = Math.PI * 6 * 2;
    assertThat(area).isCloseTo(37.7, within(0.1));
    StepEstimate e =
        BrushStep.of(
                "bore",
                RECIPES.find("nickel-brush-high-speed"),
                PlatedSurface.bare(area * in2),
                new Target.Thickness(new Length(Unit.of("in").toSi(0.002))))
            .swab(Swab.ofContact(6 * in2))
            .build()
            .estimate();
    assertThat(e.chargeAh().orElseThrow()).isCloseTo(11.31, within(0.01));
    assertThat(e.currentA().orElseThrow()).isCloseTo(30, within(1e-9));
    assertThat(e.timeS().orElseThrow() / 60)
        .isCloseTo(22.6, within(0.1))
        .isCloseTo(22.62, within(0.01));
    assertThat(e.solutionL().orElseThrow())
        .isCloseTo(0.255, within(0.001))
        .isCloseTo(0.2542, within(1e-4));
    double mPerMin = e.speedMPerMin().orElseThrow();
    assertThat(mPerMin).isCloseTo(15.24, within(1e-9));
    double rpm = 1000 * mPerMin / (Math.PI * 152.4);
    assertThat(rpm).isCloseTo(31.8, within(0.1)).isCloseTo(31.83, within(0.01));
    // each spot lies under 6 in2 of 37.7 for 22.62 min
    assertThat(e.dwellS().orElseThrow()).isCloseTo(22.62 * 60 * 6 / 37.699, within(0.5));
    // 88.8 % is left for nickel: 43.3 g per litre at maximum use
    double metalPerLitre = e.massG().orElseThrow() / e.solutionL().orElseThrow();
    assertThat(metalPerLitre).isCloseTo(43.3, within(0.1));
    assertThat(e.hydrogenL().orElseThrow()).isCloseTo(11.31 * (1 - 0.888) * 0.45642, within(0.01));
  }

  /** ASM Handbook vol. 5, Selective (Brush) Plating, Table 1, in SI and as implied efficiency. */
  @ParameterizedTest
  @CsvSource({
    "copper-brush,0.0793,0.95",
    "nickel-brush-acid,0.287,0.28",
    "palladium-brush,0.116,0.52",
    "chromium-brush-dark-hexavalent,1.22,0.18",
    "nickel-brush-high-speed,0.0915,0.888",
  })
  void factorsAreThoseOfTheHandbook(String id, double printed, double efficiency) {
    Recipe recipe = RECIPES.find(id);
    double factor = Unit.of("A.h/(dm2.um)").fromSi(recipe.needed(FigureKey.FACTOR).typicalSi());
    assertThat(factor).isCloseTo(printed, within(printed * 0.005));
    double implied = recipe.ion().ampereHoursPerDm2Um(recipe.metal().density()) / factor;
    assertThat(implied).isCloseTo(efficiency, within(0.005));
  }

  /**
   * By hand from the ASM factor: 2 dm2 of 0.5 um palladium are 0.120 g and 0.116 A.h; 6 cm2 at 0.1
   * A/cm2 are 0.6 A, so 11.6 min; at 5 g/L and half of it usable 48 mL.
   */
  @Test
  void palladiumBarrier() {
    StepEstimate e = palladium(20000);
    assertThat(e.chargeAh().orElseThrow()).isCloseTo(0.116, within(0.0005));
    assertThat(e.massG().orElseThrow()).isCloseTo(0.120, within(1e-9));
    assertThat(e.currentA().orElseThrow()).isCloseTo(0.6, within(1e-12));
    assertThat(e.timeS().orElseThrow() / 60).isCloseTo(11.6, within(0.1));
    assertThat(e.solutionL().orElseThrow() * 1000).isCloseTo(48, within(0.1));
  }

  /**
   * By hand from the ASM factor: dark chromium on 0.5 dm2, 0.3 um: 0.183 A.h; bare 2 A and 5.5 min
   * (H2 about 68 mL); as 35 % of what the swab crosses 0.70 A and 15.7 min; as 25 % 0.50 A, 22.0
   * min.
   */
  @ParameterizedTest
  @CsvSource({"1,2,5.5,0.1", "0.35,0.70,15.7,0.1", "0.25,0.50,22.0,0.1"})
  void maskedChromium(double f, double amperes, double minutes, double unit) {
    StepEstimate e =
        chromium(PlatedSurface.masked(5000, 5000 / f), Target.um(0.3)).build().estimate();
    assertThat(e.chargeAh().orElseThrow()).isCloseTo(0.183, within(0.001));
    assertThat(e.currentA().orElseThrow()).isCloseTo(amperes, within(0.005));
    assertThat(e.timeS().orElseThrow() / 60).isCloseTo(minutes, within(unit));
    assertThat(e.hydrogenL().orElseThrow() * 1000).isCloseTo(68, within(1.0));
  }

  @Test
  void timeDoesNotFallWithTheOpenFractionButChargeAndCurrentDo() {
    StepEstimate bare = palladium(20000);
    for (double f : new double[] {0.1, 0.35, 0.8}) {
      StepEstimate e = palladium(20000 * f);
      assertThat(e.timeS().orElseThrow()).isCloseTo(bare.timeS().orElseThrow(), within(1e-6));
      assertThat(e.dwellS().orElseThrow()).isCloseTo(bare.dwellS().orElseThrow(), within(1e-6));
      assertThat(e.currentA().orElseThrow())
          .isCloseTo(f * bare.currentA().orElseThrow(), within(1e-9));
      assertThat(e.chargeAh().orElseThrow())
          .isCloseTo(f * bare.chargeAh().orElseThrow(), within(1e-9));
      assertThat(e.massG().orElseThrow()).isCloseTo(f * bare.massG().orElseThrow(), within(1e-9));
      assertThat(e.solutionL().orElseThrow())
          .isCloseTo(f * bare.solutionL().orElseThrow(), within(1e-9));
    }
  }

  @Test
  void aLargerSwabShortensTheTimeAndLeavesTheCharge() {
    StepEstimate small = palladium(7000);
    StepEstimate large =
        BrushStep.of("palladium", PALLADIUM, PlatedSurface.masked(7000, 20000), Target.um(0.5))
            .swab(Swab.ofContact(1200))
            .build()
            .estimate();
    assertThat(large.chargeAh()).isEqualTo(small.chargeAh());
    assertThat(large.timeS().orElseThrow() * 2)
        .isCloseTo(small.timeS().orElseThrow(), within(1e-6));
    assertThat(large.dwellS().orElseThrow()).isCloseTo(small.dwellS().orElseThrow(), within(1e-6));
  }

  /** Passes N = t v w / A. */
  @Test
  void passesFollowSpeedAndWidth() {
    Swab swab =
        new Swab(
            OptionalDouble.of(600),
            OptionalDouble.of(30),
            OptionalDouble.of(6),
            OptionalDouble.empty());
    StepEstimate e =
        BrushStep.of("palladium", PALLADIUM, PlatedSurface.bare(20000), Target.um(0.5))
            .swab(swab)
            .build()
            .estimate();
    double minutes = e.timeS().orElseThrow() / 60;
    assertThat(e.passes().orElseThrow()).isCloseTo(minutes * 6000 * 30 / 20000, within(1e-9));
  }

  @Test
  void trivalentDarkChromiumHasNoFigureWithoutACoupon() {
    for (Target target : new Target[] {Target.um(0.3), Target.ampereHours(0.2)}) {
      StepEstimate e =
          BrushStep.of("dark", TRIVALENT, PlatedSurface.bare(5000), target).build().estimate();
      assertThat(e.refusal().orElseThrow())
          .contains("chromium-brush-dark-trivalent", "A.h/dm2", "coupon")
          .contains(Coupon.procedure().get(0));
      assertThat(e.currentA()).isEmpty();
      assertThat(e.timeS()).isEmpty();
      assertThat(e.massG()).isEmpty();
      assertThat(e.cautions()).extracting(Caution::hazard).contains("trivalent chromium", "waste");
    }
  }

  /** A coupon of 0.4 A.h/dm2 on 0.5 dm2 is 0.2 A.h; 4 cm2 at 0.4 A/cm2 are 1.6 A, so 7.5 min. */
  @Test
  void trivalentDarkChromiumFollowsItsCoupon() {
    StepEstimate e =
        BrushStep.of("dark", TRIVALENT, PlatedSurface.bare(5000), Target.coverage(0.4))
            .swab(Swab.ofContact(400))
            .build()
            .estimate();
    assertThat(e.refused()).isFalse();
    assertThat(e.chargeAh().orElseThrow()).isCloseTo(0.2, within(1e-12));
    assertThat(e.currentA().orElseThrow()).isCloseTo(1.6, within(1e-12));
    assertThat(e.timeS().orElseThrow() / 60).isCloseTo(7.5, within(1e-9));
    assertThat(e.thicknessUm()).isEmpty();
    assertThat(e.massG()).isEmpty();
  }

  @Test
  void hexavalentDarkChromiumIsCappedAndItsBandIsWide() {
    StepEstimate thin = chromium(PlatedSurface.bare(5000), Target.um(0.3)).build().estimate();
    assertThat(thin.thicknessBandUm().orElseThrow().low()).isLessThanOrEqualTo(0.15);
    assertThat(thin.thicknessBandUm().orElseThrow().high())
        .isGreaterThanOrEqualTo(1.5 * thin.thicknessUm().orElseThrow());
    double time = thin.timeS().orElseThrow();
    assertThat(thin.timeBandS().orElseThrow().low()).isLessThanOrEqualTo(0.5 * time);
    assertThat(thin.timeBandS().orElseThrow().high()).isGreaterThanOrEqualTo(1.5 * time);
    double grams = thin.massG().orElseThrow();
    assertThat(thin.massBandG().orElseThrow().low()).isLessThanOrEqualTo(0.5 * grams);
    assertThat(thin.massBandG().orElseThrow().high()).isGreaterThanOrEqualTo(1.5 * grams);
    StepEstimate thick = chromium(PlatedSurface.bare(5000), Target.um(5)).build().estimate();
    assertThat(thick.refusal().orElseThrow())
        .contains("5.00 um", "at most 2 um", "MIL-STD-2197A(SH) 4.5.10.2");
    StepEstimate long_ =
        chromium(PlatedSurface.bare(5000), Target.ampereHours(5)).build().estimate();
    assertThat(long_.thicknessUm()).isEmpty();
    assertThat(long_.massG()).isEmpty();
    assertThat(long_.warnings()).anyMatch(w -> w.contains("8.19 um by the published factor"));
    StepEstimate coupon =
        chromium(PlatedSurface.bare(5000), Target.coverage(0.4)).build().estimate();
    assertThat(coupon.chargeAh().orElseThrow()).isCloseTo(0.2, within(1e-12));
    assertThat(coupon.thicknessUm()).isEmpty();
  }

  @Test
  void hexavalentChromiumAlwaysTellsItsHazards() {
    StepEstimate e = chromium(PlatedSurface.bare(5000), Target.um(0.3)).build().estimate();
    assertThat(e.cautions())
        .extracting(Caution::hazard)
        .contains("hexavalent chromium", "solvent near chromic acid", "hydrogen", "electricity")
        .endsWith("local rules");
    assertThat(e.cautions()).extracting(Caution::text).anyMatch(t -> t.contains("5 ug/m3"));
  }

  /**
   * By hand: 0.78 A/cm2 through 4 mm of wrap of porosity 0.8 in 10 S/m lose 4.4 V, 131 W at 30 A;
   * 0.5 A/cm2 in 40 S/m lose 0.70 V.
   */
  @Test
  void wrapsLoseVoltageAndHeatUp() {
    double nickel = Swab.coverDropV(7800, 0.004, 10, 0.8);
    assertThat(nickel).isCloseTo(4.4, within(0.1));
    assertThat(30 * nickel).isCloseTo(131, within(1.0));
    assertThat(Swab.coverDropV(5000, 0.004, 40, 0.8)).isCloseTo(0.70, within(0.01));
  }

  @Test
  void hotWrapsAreWarnedOf() {
    StepEstimate e =
        BrushStep.of(
                "nickel",
                RECIPES.find("nickel-brush-high-speed"),
                PlatedSurface.bare(24322),
                Target.um(50))
            .swab(Swab.ofContact(3871))
            .build()
            .estimate();
    assertThat(e.warnings()).singleElement().asString().contains("130 W of heat at 30.0 A");
  }

  @Test
  void theFactorOnTheBottleReplacesTheRecipes() {
    StepEstimate e =
        BrushStep.of("palladium", PALLADIUM, PlatedSurface.bare(10000), Target.um(1))
            .factor(0.2)
            .build()
            .estimate();
    assertThat(e.chargeAh().orElseThrow()).isCloseTo(0.2, within(1e-12));
    assertThat(e.assumptions()).extracting(Assumption::what).doesNotContain("ampere-hour factor");
    StepEstimate wrong =
        BrushStep.of("palladium", PALLADIUM, PlatedSurface.bare(10000), Target.um(1))
            .factor(0.03)
            .build()
            .estimate();
    assertThat(wrong.warnings()).anyMatch(w -> w.contains("more than all of the charge"));
  }

  @Test
  void whatMakesNoSenseIsRefused() {
    assertThatThrownBy(() -> Swab.ofContact(0)).hasMessageContaining("0.0 mm2");
    assertThatThrownBy(() -> chromium(PlatedSurface.bare(5000), Target.um(0.3)).factor(0.5).build())
        .hasMessageContaining("give a coverage");
    assertThatThrownBy(
            () ->
                BrushStep.of("x", RECIPES.find("nickel-watts"), PlatedSurface.bare(1), Target.um(1))
                    .build())
        .hasMessageContaining("nickel-watts is for tank, not for brush");
    StepEstimate none = chromium(PlatedSurface.masked(0, 100), Target.um(0.3)).build().estimate();
    assertThat(none.refusal().orElseThrow()).contains("0 mm2");
    StepEstimate small = chromium(PlatedSurface.bare(100), Target.um(0.3)).build().estimate();
    assertThat(small.warnings()).anyMatch(w -> w.contains("only 1.00 cm2 is crossed"));
    assertThat(small.contactAreaMm2().orElseThrow()).isCloseTo(100, within(1e-9));
  }
}
