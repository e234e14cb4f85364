package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Sums over steps with what is not known of them. */
class TotalTest {
  private static Unknown unknown(String name) {
    return new Unknown(name, new Spread.Triangle(0, 1, 2), "measure " + name);
  }

  private static Uncertain one(String step, Unknown u) {
    return new Uncertain(step, "metal", "g", false, x -> x[0], List.of(u));
  }

  private static double width(Total total) {
    Band band = total.band().orElseThrow();
    return band.high() - band.low();
  }

  /** Triangle from 0 over 1 to 2: F(x) = x^2/2 below 1, so a tenth lies below sqrt(0.2). */
  @Test
  void aSingleTriangleHasItsOwnPercentiles() {
    Band band = Total.of("t", "g", 1, List.of(one("a", unknown("u")))).band().orElseThrow();
    assertThat(band.low()).isCloseTo(Math.sqrt(0.2), within(2e-3));
    assertThat(band.high()).isCloseTo(2 - Math.sqrt(0.2), within(2e-3));
  }

  /** What two steps share does not average out; what they do not share does. */
  @Test
  void sharedUnknownsAddAndOthersAverage() {
    double single = width(Total.of("t", "g", 1, List.of(one("a", unknown("u")))));
    Total shared = Total.of("t", "g", 1, List.of(one("a", unknown("u")), one("b", unknown("u"))));
    assertThat(width(shared)).isCloseTo(2 * single, within(1e-9));
    assertThat(shared.swings())
        .singleElement()
        .satisfies(s -> assertThat(s.unknown()).isEqualTo("u, a, b"));
  }

  /**
   * Twelve independent triangles of variance 1/6 add to a near-normal sum of deviation sqrt 2: its
   * tenth and ninetieth percentile lie 2 x 1.28155 x sqrt 2 apart (tables of the normal law).
   */
  @Test
  void manyIndependentOnesComeNearTheNormalLaw() {
    List<Uncertain> twelve = new ArrayList<>();
    for (int k = 0; k < 12; k++) {
      twelve.add(one("s" + k, unknown("u" + k)));
    }
    Total total = Total.of("t", "g", 1, twelve);
    double normal = 2 * 1.28155 * Math.sqrt(2);
    assertThat(width(total)).isCloseTo(normal, within(0.015 * normal));
    assertThat(total.typical()).isCloseTo(12, within(1e-12));
    assertThat(total.swings()).hasSize(12);
  }

  @Test
  void theSameQuestionGivesTheSameBytes() {
    Total a = Total.of("t", "g", 3, List.of(one("a", unknown("u")), one("b", unknown("v"))));
    Total b = Total.of("t", "g", 3, List.of(one("a", unknown("u")), one("b", unknown("v"))));
    assertThat(a.band()).isEqualTo(b.band());
  }

  @Test
  void whatIsKnownHasNoBandAndSwingsNothing() {
    Total known = Total.known("t", "g", 5);
    assertThat(known.band()).isEmpty();
    assertThat(known.swings()).isEmpty();
    Total money = Total.sum("cost", "crowns", Map.of(known, 2.0, Total.known("u", "L", 1), 30.0));
    assertThat(money.typical()).isCloseTo(40, within(1e-12));
  }

  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();

  private static StepEstimate copper(PlatedSurface surface) {
    return TankStep.of("c", RECIPES.find("copper-acid-decorative"), surface, Target.um(30))
        .build()
        .estimate();
  }

  /** A plan's band of one step is that step's; the anode's amount is that of the step's figure. */
  @Test
  void aPlanOfOneStepAgreesWithTheStep() {
    PlatedSurface surface = PlatedSurface.bare(20_000);
    Plan plan =
        Plan.of(
            List.of(
                TankStep.of("c", RECIPES.find("copper-acid-decorative"), surface, Target.um(30))
                    .build()),
            Workpiece.unknown());
    StepEstimate step = copper(surface);
    Band told = step.timeBandS().orElseThrow();
    Band whole = plan.platingTime().band().orElseThrow();
    double width = told.high() - told.low();
    assertThat(whole.low()).isCloseTo(told.low(), within(0.02 * width));
    assertThat(whole.high()).isCloseTo(told.high(), within(0.02 * width));
    assertThat(plan.platingTime().typical()).isCloseTo(plan.timeS(), within(1e-9 * plan.timeS()));
    Material anode =
        plan.materials().stream().filter(m -> m.name().equals("copper anode")).findFirst().get();
    double figure = step.figure(TankBalance.ANODE).orElseThrow().value();
    assertThat(anode.amount()).isCloseTo(figure, within(1e-9 * figure));
    assertThat(anode.band().orElseThrow().high()).isGreaterThan(figure);
  }

  /** The same bath twice: its efficiency is one unknown and moves both layers together. */
  @Test
  void oneBathUsedTwiceHasOneEfficiency() {
    PlatedSurface surface = PlatedSurface.bare(20_000);
    Step one =
        TankStep.of("one", RECIPES.find("copper-acid-decorative"), surface, Target.um(30)).build();
    Step two =
        TankStep.of("two", RECIPES.find("copper-acid-decorative"), surface, Target.um(30)).build();
    Plan single = Plan.of(List.of(one), Workpiece.unknown());
    Plan twice = Plan.of(List.of(one, two), Workpiece.unknown());
    assertThat(width(twice.platingTime())).isCloseTo(2 * width(single.platingTime()), within(1e-6));
    assertThat(twice.platingTime().swings())
        .anyMatch(s -> s.unknown().equals("cathode efficiency, one, two"));
  }

  /** Brush solution: charge over maximum use, and both are uncertain. */
  @Test
  void brushSolutionSpreadsByFactorAreaAndUse() {
    Step brush =
        BrushStep.of(
                "ni",
                RECIPES.find("nickel-brush-high-speed"),
                PlatedSurface.bare(20_000),
                Target.um(10))
            .build();
    Plan plan = Plan.of(List.of(brush), Workpiece.unknown());
    Material solution =
        plan.materials().stream().filter(m -> m.name().endsWith("solution")).findFirst().get();
    assertThat(solution.amount())
        .isCloseTo(plan.steps().get(0).solutionL().orElseThrow(), within(1e-12));
    Band band = solution.band().orElseThrow();
    assertThat(solution.amount()).isBetween(band.low(), band.high());
    assertThat(solution.total().swings()).extracting(Swing::kind).contains("ampere-hour factor");
  }
}
