package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.units.Length;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Time;
import org.junit.jupiter.api.Test;

/** Steps that were broken off, or came out too thin: halves add to the whole (Faraday's law). */
class AlreadyTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final Recipe COPPER = RECIPES.find("copper-acid-decorative");
  private static final PlatedSurface SURFACE = PlatedSurface.bare(20_000);
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static TankStep.Builder copper() {
    return TankStep.of("copper", COPPER, SURFACE, Target.um(60))
        .wire(Length.ofMm(0.5), Length.ofMm(500));
  }

  private static StepEstimate after(Already done) {
    return copper().already(done).build().estimate();
  }

  private static double figure(StepEstimate e, String key) {
    return e.figure(key).orElseThrow().value();
  }

  @Test
  void chargesAddToTheWhole() {
    StepEstimate whole = copper().build().estimate();
    double q = whole.chargeAh().orElseThrow();
    StepEstimate rest = after(Already.charge(0.4 * q));
    assertThat(rest.chargeAh().orElseThrow()).isCloseTo(0.6 * q, within(1e-9));
    assertThat(rest.timeS().orElseThrow())
        .isCloseTo(0.6 * whole.timeS().orElseThrow(), within(1e-6));
    assertThat(rest.massG().orElseThrow())
        .isCloseTo(0.6 * whole.massG().orElseThrow(), within(1e-9));
    assertThat(rest.thicknessUm().orElseThrow()).isCloseTo(60, within(1e-9));
    assertThat(figure(rest, "alreadyUm")).isCloseTo(24, within(1e-9));
    assertThat(figure(rest, "leftUm")).isCloseTo(36, within(1e-9));
    Band band = rest.thicknessBandUm().orElseThrow();
    Band wholeBand = whole.thicknessBandUm().orElseThrow();
    assertThat(band.low()).isCloseTo(wholeBand.low(), within(1e-6));
    Band time = rest.timeBandS().orElseThrow();
    assertThat(rest.timeS().orElseThrow()).isBetween(time.low(), time.high());
  }

  /** What the part gained with its wire, and what a meter reads, stand for the same charge. */
  @Test
  void gainAndReadingStandForTheChargeThatGaveThem() {
    StepEstimate whole = copper().build().estimate();
    double q = whole.chargeAh().orElseThrow();
    double area = 20_000 + Math.PI * 0.5 * 500;
    double gain = 0.4 * whole.massG().orElseThrow() * area / 20_000;
    StepEstimate weighed = after(new Already(NONE, OptionalDouble.of(gain), NONE));
    assertThat(weighed.chargeAh().orElseThrow()).isCloseTo(0.6 * q, within(1e-9));
    StepEstimate read = after(Already.reading(24));
    assertThat(read.chargeAh().orElseThrow()).isCloseTo(0.6 * q, within(1e-9));
  }

  /**
   * 10 A.h that laid down 11.0 g of copper (1.1855 g at 100 %): efficiency 92.8 %, used from now.
   */
  @Test
  void chargeAndGainTellTheBathsEfficiency() {
    Already done = new Already(OptionalDouble.of(10), OptionalDouble.of(11), NONE);
    double eps = 11 / 11.855;
    assertThat(done.efficiency(COPPER.ion()).orElseThrow()).isCloseTo(eps, within(1e-4));
    StepEstimate e =
        TankStep.of("copper", COPPER, SURFACE, Target.um(100)).already(done).build().estimate();
    double perAh = COPPER.ion().massPerAmpereHour().inGrams();
    assertThat(e.massG().orElseThrow() / e.chargeAh().orElseThrow())
        .isCloseTo(11.0 / 10, within(1e-9));
    assertThat(e.massG().orElseThrow() + 11).isCloseTo(20e-3 * 8.96 * 100, within(1e-6));
    assertThat(e.assumptions()).anyMatch(a -> a.value().contains("as weighed on this part"));
    Band time = e.timeBandS().orElseThrow();
    assertThat(e.timeS().orElseThrow())
        .as("the density's typical value is its highest, and still lies in the band")
        .isBetween(time.low(), time.high());
    StepEstimate heavy =
        TankStep.of("copper", COPPER, SURFACE, Target.um(100))
            .already(new Already(OptionalDouble.of(5), OptionalDouble.of(2 * 5 * perAh), NONE))
            .build()
            .estimate();
    assertThat(heavy.warnings()).anyMatch(w -> w.contains("200 %") && w.contains("weigh again"));
  }

  @Test
  void whatIsDoneIsSaidToBeDone() {
    assertThat(after(Already.reading(61)).refusal().orElseThrow()).contains("nothing is left");
    StepEstimate byCharge =
        TankStep.of("c", COPPER, SURFACE, Target.ampereHours(5))
            .already(Already.reading(3))
            .build()
            .estimate();
    assertThat(byCharge.refusal().orElseThrow()).contains("tell the charge");
    assertThatThrownBy(() -> new Already(NONE, NONE, NONE)).hasMessageContaining("nothing is told");
    assertThatThrownBy(() -> new Already(OptionalDouble.of(1), NONE, OptionalDouble.of(1)))
        .hasMessageContaining("one or the other");
  }

  /** The slow start belongs to bare paint: a covered part goes in at full current. */
  @Test
  void aCoveredPartHasNoStartOnPaint() {
    ConductivePaint paint = new ConductivePaint(0.5, OptionalDouble.of(30));
    StepEstimate fresh = copper().paint(paint).build().estimate();
    StepEstimate gone = copper().paint(paint).already(Already.reading(20)).build().estimate();
    assertThat(fresh.ramp()).isNotEmpty();
    assertThat(gone.ramp()).isEmpty();
    StepEstimate soft =
        copper().softStart(new Time(120)).already(Already.reading(20)).build().estimate();
    assertThat(soft.ramp()).isNotEmpty();
  }

  @Test
  void brushHalvesAddToTheWhole() {
    Recipe palladium = RECIPES.find("palladium-brush");
    StepEstimate whole = BrushStep.of("pd", palladium, SURFACE, Target.um(0.5)).build().estimate();
    double q = whole.chargeAh().orElseThrow();
    StepEstimate rest =
        BrushStep.of("pd", palladium, SURFACE, Target.um(0.5))
            .already(Already.charge(0.4 * q))
            .build()
            .estimate();
    assertThat(rest.chargeAh().orElseThrow()).isCloseTo(0.6 * q, within(1e-12));
    assertThat(rest.massG().orElseThrow())
        .isCloseTo(0.6 * whole.massG().orElseThrow(), within(1e-12));
    assertThat(rest.solutionL().orElseThrow())
        .isCloseTo(0.6 * whole.solutionL().orElseThrow(), within(1e-12));
    assertThat(rest.thicknessUm().orElseThrow()).isCloseTo(0.5, within(1e-12));
    StepEstimate read =
        BrushStep.of("pd", palladium, SURFACE, Target.um(0.5))
            .already(Already.reading(0.2))
            .build()
            .estimate();
    assertThat(read.chargeAh().orElseThrow()).isCloseTo(0.6 * q, within(1e-12));
    StepEstimate coverage =
        BrushStep.of(
                "cr", RECIPES.find("chromium-brush-dark-trivalent"), SURFACE, Target.coverage(0.4))
            .already(Already.charge(0.2))
            .build()
            .estimate();
    assertThat(coverage.chargeAh().orElseThrow()).isCloseTo(0.4 * 2 - 0.2, within(1e-12));
  }

  /** A layer that the plan did not plate may be told, so that an etch knows how deep it may go. */
  @Test
  void anEtchKnowsTheLayerThatIsThere() {
    Recipe etch = RECIPES.find("copper-etch");
    Step shallow = EtchStep.of("off", etch, SURFACE, Target.um(30)).layer(Length.ofUm(60)).build();
    Step deep = EtchStep.of("off", etch, SURFACE, Target.um(50)).layer(Length.ofUm(60)).build();
    assertThat(Plan.of(List.of(shallow), Workpiece.unknown()).warnings()).isEmpty();
    assertThat(Plan.of(List.of(deep), Workpiece.unknown()).warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("50.0 um deep into 60.0 um"));
  }

  /** 5 A.h of an etch with edges; by meter, scales and lens it is the same rest. */
  @Test
  void anEtchGoesOnFromWhatWasDone() {
    Recipe etch = RECIPES.find("copper-etch");
    PlatedSurface lines = new PlatedSurface(10_000, 0, 20_000, 4000, NONE, 0);
    StepEstimate whole = EtchStep.of("off", etch, lines, Target.um(50)).build().estimate();
    double q = whole.chargeAh().orElseThrow();
    StepEstimate part =
        EtchStep.of("off", etch, lines, Target.ampereHours(0.4 * q)).build().estimate();
    double reached = figure(part, EtchEstimator.DEPTH);
    assertThat(reached).as("deeper than 40 %: the undercut comes late").isGreaterThan(0.4 * 50);
    OptionalDouble loss = OptionalDouble.of(figure(part, "removedG"));
    for (Already done :
        List.of(Already.charge(0.4 * q), Already.reading(reached), new Already(NONE, loss, NONE))) {
      StepEstimate rest =
          EtchStep.of("off", etch, lines, Target.um(50)).already(done).build().estimate();
      assertThat(rest.chargeAh().orElseThrow()).as("%s", done).isCloseTo(0.6 * q, within(1e-9));
      assertThat(rest.timeS().orElseThrow())
          .isCloseTo(0.6 * whole.timeS().orElseThrow(), within(1e-6));
      assertThat(figure(rest, "removedG") + figure(part, "removedG"))
          .isCloseTo(figure(whole, "removedG"), within(1e-9));
      assertThat(figure(rest, "alreadyUm")).isCloseTo(reached, within(1e-9));
      assertThat(figure(rest, EtchEstimator.DEPTH)).isCloseTo(50, within(1e-12));
      Band time = rest.timeBandS().orElseThrow();
      assertThat(rest.timeS().orElseThrow()).isBetween(time.low(), time.high());
    }
    StepEstimate over =
        EtchStep.of("off", etch, lines, Target.um(50))
            .already(Already.reading(51))
            .build()
            .estimate();
    assertThat(over.refusal().orElseThrow()).contains("nothing is left to take off");
  }

  /** 1 A.h took 1.0 g of copper where it could take 1.1855 g: 84.4 %, used from now. */
  @Test
  void chargeAndLossTellAnEtchsEfficiency() {
    Already done = new Already(OptionalDouble.of(1), OptionalDouble.of(1), NONE);
    StepEstimate e =
        EtchStep.of("off", RECIPES.find("copper-etch-brush"), SURFACE, Target.um(30))
            .already(done)
            .build()
            .estimate();
    assertThat(figure(e, "removedG") / e.chargeAh().orElseThrow()).isCloseTo(1.0, within(1e-9));
    assertThat(e.assumptions())
        .anyMatch(a -> a.what().equals("anode efficiency") && a.value().startsWith("84.4 %"));
  }

  /** 60 % of the mean where it is thinnest: all of the charge over 0.6, less what has passed. */
  @Test
  void theThinnestPlaceCountsWhatWasDone() {
    PlatedSurface uneven =
        new PlatedSurface(20_000, 0, 20_000, 0, NONE, false, 0, OptionalDouble.of(0.6));
    StepEstimate whole = TankStep.of("c", COPPER, uneven, Target.um(60)).build().estimate();
    double q = whole.chargeAh().orElseThrow();
    StepEstimate rest =
        TankStep.of("c", COPPER, uneven, Target.um(60))
            .already(Already.charge(0.4 * q))
            .build()
            .estimate();
    assertThat(figure(rest, "timeForMinimumS"))
        .isCloseTo(
            (1 / 0.6 - 0.4) * whole.timeS().orElseThrow(), within(1e-6 * figure(rest, "leftUm")));
  }

  @Test
  void valuesOfOnesOwnAreSaidToBe() {
    StepEstimate tank =
        copper()
            .efficiency(0.9)
            .conductivity(30)
            .metalDensity(new MassDensity(8900))
            .build()
            .estimate();
    assertThat(tank.assumptions())
        .extracting(Assumption::what)
        .contains(
            "own cathode efficiency", "own conductivity of the bath", "own density of the deposit");
    StepEstimate brush =
        BrushStep.of("pd", RECIPES.find("palladium-brush"), SURFACE, Target.um(0.5))
            .factor(0.1)
            .build()
            .estimate();
    assertThat(brush.assumptions()).anyMatch(a -> a.what().equals("own ampere-hour factor"));
  }

  /** What is bought for the rest is what the rest takes, in the tank and under the swab. */
  @Test
  void materialsAreThoseOfTheRest() {
    Recipe nickel = RECIPES.find("nickel-brush-high-speed");
    double q =
        BrushStep.of("ni", nickel, SURFACE, Target.um(10))
            .build()
            .estimate()
            .chargeAh()
            .getAsDouble();
    Step brush =
        BrushStep.of("ni", nickel, SURFACE, Target.um(10)).already(Already.charge(0.4 * q)).build();
    Step tank = copper().already(Already.reading(24)).build();
    Plan plan = Plan.of(List.of(tank, brush), Workpiece.unknown());
    assertThat(amount(plan, "solution"))
        .isCloseTo(plan.steps().get(1).solutionL().orElseThrow(), within(1e-9));
    assertThat(amount(plan, "copper anode"))
        .isCloseTo(figure(plan.steps().get(0), TankBalance.ANODE), within(1e-6));
    assertThat(plan.platingTime().typical()).isCloseTo(plan.timeS(), within(1e-6));
  }

  private static double amount(Plan plan, String name) {
    return plan.materials().stream()
        .filter(m -> m.name().endsWith(name))
        .findFirst()
        .orElseThrow()
        .amount();
  }
}
