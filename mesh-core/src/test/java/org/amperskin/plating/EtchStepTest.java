package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Volume;
import org.junit.jupiter.api.Test;

/** Metal taken off through a mask. */
class EtchStepTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final Recipe TANK = RECIPES.find("copper-etch");
  private static final Recipe BRUSH = RECIPES.find("copper-etch-brush");

  /** 1 dm2 open of 2 dm2, with 4 m of edge between open and covered. */
  private static PlatedSurface lines(double edgeMm) {
    return new PlatedSurface(10_000, 0, 20_000, edgeMm, OptionalDouble.empty(), 0);
  }

  private static EtchStep.Builder tank(PlatedSurface surface, Target target) {
    return EtchStep.of("etch", TANK, surface, target).efficiency(1);
  }

  private static double figure(StepEstimate e, String key) {
    return e.figure(key).orElseThrow().value();
  }

  /**
   * Copper(II) takes 1.1855 g an ampere-hour (IUPAC weights, CODATA Faraday constant): 10 um off 1
   * dm2 are 0.896 g of 8.96 g/cm3 and so 0.7558 A.h.
   */
  @Test
  void chargeIsFaradaysForTheDepth() {
    StepEstimate e =
        tank(PlatedSurface.masked(10_000, 20_000), Target.um(10))
            .metalDensity(new MassDensity(8960))
            .build()
            .estimate();
    assertThat(figure(e, "removedG")).isCloseTo(0.896, within(1e-9));
    assertThat(e.chargeAh().orElseThrow()).isCloseTo(0.7558, within(1e-4));
    assertThat(e.currentA().orElseThrow()).isCloseTo(3, within(1e-12));
    assertThat(e.timeS().orElseThrow()).isCloseTo(3600 * 0.7558 / 3, within(0.1));
    assertThat(e.massG()).as("nothing lands on the part").isEmpty();
  }

  /** Under each edge a quarter circle of the depth's radius goes too, when it eats evenly. */
  @Test
  void undercutTakesAQuarterCircleAlongEachEdge() {
    double depth = 0.05;
    double edge = 4000;
    StepEstimate flat = tank(lines(0), Target.um(50)).build().estimate();
    StepEstimate cut = tank(lines(edge), Target.um(50)).build().estimate();
    double mm3 = Math.PI / 4 * depth * depth * edge;
    double extra = figure(cut, "removedG") - figure(flat, "removedG");
    assertThat(extra).isCloseTo(mm3 * 8.92e-3, within(1e-6));
    assertThat(figure(cut, "undercutUm")).isCloseTo(50, within(1e-9));
    assertThat(figure(cut, "etchedMm2")).isCloseTo(10_000 + edge * 0.05, within(1e-6));
    assertThat(flat.figure("undercutUm")).isEmpty();
  }

  /** Depth asked for and charge asked for are the same question from two sides. */
  @Test
  void depthAndChargeAgree() {
    StepEstimate byDepth = tank(lines(4000), Target.um(80)).build().estimate();
    StepEstimate byCharge =
        tank(lines(4000), Target.ampereHours(byDepth.chargeAh().orElseThrow())).build().estimate();
    assertThat(figure(byCharge, EtchEstimator.DEPTH)).isCloseTo(80, within(1e-9));
    Band band = byCharge.figure(EtchEstimator.DEPTH).orElseThrow().band().orElseThrow();
    assertThat(band.low()).isLessThan(80);
    assertThat(band.high()).isGreaterThan(80);
    assertThat(byDepth.swings()).extracting(Swing::unknown).contains("etch factor");
  }

  /** Metal off part and wire = metal on the cathode less what the anode's charge wasted. */
  @Test
  void metalIsConserved() {
    StepEstimate e =
        EtchStep.of("etch", TANK, lines(4000), Target.um(20)).efficiency(0.9).build().estimate();
    double perAh = TANK.ion().massPerAmpereHour().inGrams();
    double charge = e.chargeAh().orElseThrow();
    assertThat(figure(e, "removedG")).isCloseTo(0.9 * perAh * charge, within(1e-12));
    assertThat(figure(e, "cathodeTakesG")).isCloseTo(perAh * charge, within(1e-12));
    assertThat(e.hydrogenL()).as("the cathode takes copper, no gas").isEmpty();
  }

  @Test
  void halvesAddToTheWhole() {
    StepEstimate whole = tank(lines(4000), Target.um(20)).build().estimate();
    PlatedSurface half = new PlatedSurface(5_000, 0, 10_000, 2000, OptionalDouble.empty(), 0);
    StepEstimate one = tank(half, Target.um(20)).build().estimate();
    assertThat(2 * one.chargeAh().orElseThrow())
        .isCloseTo(whole.chargeAh().orElseThrow(), within(1e-12));
    assertThat(one.timeS().orElseThrow()).isCloseTo(whole.timeS().orElseThrow(), within(1e-9));
  }

  @Test
  void theWireInTheBathIsEatenAndTold() {
    StepEstimate e =
        tank(lines(0), Target.um(50)).wire(Length.ofMm(0.5), Length.ofMm(1000)).build().estimate();
    double area = 10_000 + Math.PI * 0.5 * 1000;
    assertThat(figure(e, "removedG")).isCloseTo(area * 0.05 * 8.92e-3, within(1e-9));
    assertThat(e.currentA().orElseThrow()).isCloseTo(3 * area / 10_000, within(1e-9));
    assertThat(e.warnings()).anyMatch(w -> w.contains("loses 100 um") && w.contains("1.00 mm"));
    String deeper = String.format(java.util.Locale.ROOT, "%.1f um", 50 * area / 10_000);
    assertThat(e.assumptions())
        .as("the wire's share of the charge")
        .anyMatch(a -> a.what().equals("contact wire") && a.value().contains(deeper));
  }

  /** 60 um on a wire of 0.5 mm: 0.62 mm of it are eaten, and its own 0.5 mm not touched. */
  @Test
  void whatWasPlatedOnTheWireGoesFirst() {
    StepEstimate e =
        tank(lines(0), Target.um(50))
            .wire(Length.ofMm(0.5), Length.ofMm(1000), Length.ofUm(60))
            .build()
            .estimate();
    double area = 10_000 + Math.PI * 0.62 * 1000;
    assertThat(figure(e, "removedG")).isCloseTo(area * 0.05 * 8.92e-3, within(1e-9));
    assertThat(e.warnings()).isEmpty();
  }

  @Test
  void bridgesThatAreUnderminedAreTold() {
    StepEstimate fine = tank(lines(200_000), Target.um(30)).build().estimate();
    assertThat(fine.warnings())
        .anyMatch(w -> w.contains("100 um wide on average") && w.contains("25 um"));
    assertThat(tank(lines(200_000), Target.um(20)).build().estimate().warnings()).isEmpty();
  }

  /** Current = density x open fraction x contact, as when plating; the time follows the area. */
  @Test
  void aSwabEtchesWhereItTouches() {
    StepEstimate e =
        EtchStep.of("etch", BRUSH, lines(0), Target.um(5))
            .density(CurrentDensity.ofPerCm2(0.1))
            .swab(Swab.ofContact(400))
            .bath(Volume.ofLitres(5))
            .build()
            .estimate();
    assertThat(e.currentA().orElseThrow()).isCloseTo(0.1 * 4 * 0.5, within(1e-12));
    assertThat(e.dwellS().orElseThrow())
        .isCloseTo(e.timeS().orElseThrow() * 400 / 20_000, within(1e-9));
    assertThat(e.handsS()).isEqualTo(e.timeS());
    assertThat(e.hydrogenL()).isPresent();
    assertThat(e.figure("intoSolutionGPerL")).isEmpty();
  }

  @Test
  void aBathThatHoldsNoMetalKeepsWhatIsTakenOff() {
    Recipe bare = without(TANK, FigureKey.METAL_CONTENT);
    StepEstimate e =
        EtchStep.of("etch", bare, lines(0), Target.um(10))
            .bath(Volume.ofLitres(2))
            .build()
            .estimate();
    assertThat(figure(e, "intoSolutionGPerL")).isCloseTo(figure(e, "removedG") / 2, within(1e-12));
  }

  private static Recipe without(Recipe r, FigureKey key) {
    var figures = new java.util.EnumMap<>(r.figures());
    figures.remove(key);
    return new Recipe(
        r.id(),
        r.name(),
        r.how(),
        r.ion(),
        r.alkaline(),
        r.claim(),
        figures,
        r.efficiencyByDensity(),
        r.anode(),
        r.hazards(),
        r.makeUp(),
        r.cautions(),
        r.notes());
  }

  @Test
  void whatDoesNotFitIsRefused() {
    assertThat(tank(PlatedSurface.masked(0, 100), Target.um(1)).build().estimate().refusal())
        .isPresent();
    EtchStep.Builder coverage = tank(lines(0), Target.coverage(1));
    assertThatThrownBy(coverage::build).hasMessageContaining("depth or a charge");
    assertThatThrownBy(
            () -> EtchStep.of("etch", RECIPES.find("copper-brush"), lines(0), Target.um(1)).build())
        .hasMessageContaining("for brush");
    assertThatThrownBy(() -> without(TANK, FigureKey.ETCH_FACTOR))
        .hasMessageContaining("etch-factor");
  }

  private static final PlatedSurface WHOLE = PlatedSurface.bare(20_000);

  private static Step copper(double um) {
    return TankStep.of("copper", RECIPES.find("copper-acid-decorative"), WHOLE, Target.um(um))
        .build();
  }

  private static Step work(WorkKind kind, PlatedSurface surface) {
    return new WorkStep(kind.key(), "", surface, kind);
  }

  private static List<String> order(Step... steps) {
    return Plan.of(List.of(steps), Workpiece.unknown()).warnings();
  }

  private static Step etch(double um) {
    return tank(lines(4000), Target.um(um)).build();
  }

  @Test
  void theOrderKnowsWhatLiesThere() {
    WorkKind[] open = {WorkKind.EXPOSE, WorkKind.DEVELOP, WorkKind.ACTIVATE};
    Step resist = work(WorkKind.RESIST, WHOLE);
    Step expose = work(open[0], lines(4000));
    Step develop = work(open[1], lines(4000));
    Step activate = work(open[2], lines(4000));
    assertThat(order(copper(60), resist, expose, develop, activate, etch(20))).isEmpty();
    assertThat(order(copper(60), resist, expose, develop, activate, etch(40)))
        .singleElement()
        .satisfies(
            w ->
                assertThat(w)
                    .contains("40.0 um deep", "60.0 um of copper", "at most 30.0 um", "80.0 um"));
    assertThat(order(etch(10))).anyMatch(w -> w.contains("0 um of metal"));
    Step palladium =
        BrushStep.of("barrier", RECIPES.find("palladium-brush"), WHOLE, Target.um(0.3)).build();
    assertThat(order(copper(60), palladium, resist, expose, develop, activate, etch(10)))
        .anyMatch(w -> w.contains("0.300 um of palladium"));
    assertThat(order(copper(60), resist, etch(10)))
        .anyMatch(w -> w.contains("etches a part whose"));
    Step half = work(WorkKind.RESIST, PlatedSurface.bare(12_000));
    assertThat(
            order(
                copper(60),
                half,
                expose,
                develop,
                activate,
                tank(PlatedSurface.masked(3_000, 9_000), Target.um(10)).build()))
        .anyMatch(w -> w.contains("80.0 cm2"));
  }
}
