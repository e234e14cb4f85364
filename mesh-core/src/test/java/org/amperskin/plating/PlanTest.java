package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The order of steps; rules are common practice of the trade unless a source is named. */
class PlanTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final PlatedSurface WHOLE = PlatedSurface.bare(20000);
  private static final PlatedSurface PATTERN = PlatedSurface.masked(5000, 20000);

  private static Step tank(String recipe, double um) {
    return TankStep.of(recipe, RECIPES.find(recipe), WHOLE, Target.um(um)).build();
  }

  private static Step brush(String recipe, double um) {
    return BrushStep.of(recipe, RECIPES.find(recipe), PATTERN, Target.um(um)).build();
  }

  private static Step work(WorkKind kind) {
    return new WorkStep(kind.key(), "", WHOLE, kind);
  }

  private static Plan plan(Step... steps) {
    return Plan.of(List.of(steps), Workpiece.unknown());
  }

  @Test
  void aSoundOrderHasNoWarnings() {
    Plan plan =
        Plan.of(
            List.of(
                work(WorkKind.PAINT),
                tank("copper-acid-decorative", 60),
                brush("palladium-brush", 0.5),
                work(WorkKind.RESIST),
                work(WorkKind.EXPOSE),
                work(WorkKind.DEVELOP),
                work(WorkKind.ACTIVATE),
                brush("chromium-brush-dark-hexavalent", 0.3)),
            new Workpiece(PrintMaterial.find("pla"), OptionalDouble.of(8)));
    assertThat(plan.warnings()).isEmpty();
    assertThat(plan.steps()).hasSize(8);
    assertThat(plan.steps()).allSatisfy(s -> assertThat(s.cautions()).isNotEmpty());
    assertThat(plan.chargeAh())
        .isCloseTo(
            plan.steps().stream().mapToDouble(s -> s.chargeAh().orElse(0)).sum(), within(1e-12));
    assertThat(plan.timeS()).isPositive();
  }

  /** Steps through resist that was laid on, lit, developed and activated. */
  private static Step[] opened(Step... then) {
    List<Step> steps = new ArrayList<>();
    for (WorkKind kind :
        List.of(WorkKind.RESIST, WorkKind.EXPOSE, WorkKind.DEVELOP, WorkKind.ACTIVATE)) {
      steps.add(work(kind));
    }
    steps.addAll(List.of(then));
    return steps.toArray(Step[]::new);
  }

  private static Plan plan(Step first, Step[] more) {
    List<Step> steps = new ArrayList<>(List.of(first));
    steps.addAll(List.of(more));
    return Plan.of(steps, Workpiece.unknown());
  }

  private static String onlyWarning(Step... steps) {
    assertThat(Plan.of(List.of(steps), Workpiece.unknown()).warnings()).hasSize(1);
    return Plan.of(List.of(steps), Workpiece.unknown()).warnings().get(0);
  }

  @Test
  void openingsThatAreNotReadyAreWarnedOf() {
    Step palladium = brush("palladium-brush", 0.3);
    assertThat(onlyWarning(work(WorkKind.EXPOSE))).contains("0 um of resist");
    assertThat(onlyWarning(work(WorkKind.RESIST), work(WorkKind.DEVELOP))).contains("0 s of light");
    assertThat(onlyWarning(work(WorkKind.RESIST), work(WorkKind.EXPOSE), palladium))
        .contains("resist is not open");
    assertThat(
            onlyWarning(
                work(WorkKind.RESIST), work(WorkKind.EXPOSE), work(WorkKind.DEVELOP), palladium))
        .contains("dip 30 s in dilute acid", "scum");
  }

  @Test
  void barePaintIsNotSoakedWithoutCurrent() {
    assertThat(onlyWarning(work(WorkKind.PAINT), work(WorkKind.RINSE)))
        .contains("wets bare conductive paint", "current on");
    Step copper = tank("copper-acid-decorative", 60);
    assertThat(plan(work(WorkKind.PAINT), copper, work(WorkKind.RINSE)).warnings()).isEmpty();
  }

  @Test
  void solventOnAPrintItDissolvesIsWarnedOf() {
    for (String name : List.of("ABS", "PLA")) {
      Plan plan =
          Plan.of(
              List.of(work(WorkKind.STRIP)),
              new Workpiece(PrintMaterial.find(name), OptionalDouble.empty()));
      assertThat(plan.warnings()).hasSize(name.equals("ABS") ? 1 : 0);
    }
  }

  @Test
  void chromiumStraightOnCopperIsWarnedOf() {
    Plan plan =
        plan(tank("copper-acid-decorative", 60), brush("chromium-brush-dark-hexavalent", 0.3));
    assertThat(plan.warnings()).singleElement().asString().contains("straight on copper");
    Plan barrier =
        plan(
            tank("copper-acid-decorative", 60),
            tank("nickel-sulfamate", 5),
            brush("chromium-brush-dark-hexavalent", 0.3));
    assertThat(barrier.warnings()).isEmpty();
  }

  /** Palladium takes up hydrogen and cracks (Metal Powder Report, Specialty Metals Plating I). */
  @Test
  void hydrogenOnPalladiumIsWarnedOf() {
    Step chromium = brush("chromium-brush-dark-hexavalent", 0.3);
    assertThat(plan(brush("palladium-brush", 0.5), chromium).warnings()).isEmpty();
    assertThat(plan(brush("palladium-brush", 1.2), chromium).warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("1.20 um of palladium", "0.1-0.5 um"));
    assertThat(plan(brush("palladium-brush", 0.3), work(WorkKind.ELECTROCLEAN)).warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("hydrogen on palladium", "at 0 A"));
    assertThat(plan(work(WorkKind.ELECTROCLEAN), brush("palladium-brush", 0.3)).warnings())
        .isEmpty();
  }

  /** Common practice: esters are split by alkali. */
  @Test
  void alkaliOnPolyesterAtPinholesIsWarnedOf() {
    for (String name : List.of("PLA", "PETG", "ABS")) {
      Workpiece piece = new Workpiece(PrintMaterial.find(name), OptionalDouble.empty());
      Plan plan = Plan.of(List.of(work(WorkKind.CLEAN)), piece);
      boolean eaten = !name.equals("ABS");
      assertThat(plan.warnings().stream().anyMatch(w -> w.contains("at pinholes it eats")))
          .as(name)
          .isEqualTo(eaten);
    }
  }

  @Test
  void alkalineWorkOverResistIsWarnedOf() {
    assertThat(plan(work(WorkKind.RESIST), work(WorkKind.ELECTROCLEAN)).warnings())
        .singleElement()
        .asString()
        .contains("'electroclean'", "alkaline");
    assertThat(plan(work(WorkKind.ELECTROCLEAN), work(WorkKind.RESIST)).warnings()).isEmpty();
    assertThat(
            plan(work(WorkKind.RESIST), work(WorkKind.STRIP), work(WorkKind.ELECTROCLEAN))
                .warnings())
        .isEmpty();
    Recipe copper = RECIPES.find("copper-brush");
    Recipe alkaline =
        new Recipe(
            "copper-brush-alkaline",
            "Alkaline copper",
            copper.how(),
            copper.ion(),
            true,
            copper.claim(),
            copper.figures(),
            copper.efficiencyByDensity(),
            copper.anode(),
            copper.hazards(),
            copper.makeUp(),
            copper.cautions(),
            copper.notes());
    Step step = BrushStep.of("cu", alkaline, PATTERN, Target.um(1)).build();
    assertThat(plan(opened(step)).warnings())
        .singleElement()
        .asString()
        .contains("copper-brush-alkaline");
  }

  @Test
  void solventAfterChromicAcidIsWarnedOfAtThatStep() {
    Step chromium = brush("chromium-brush-dark-hexavalent", 0.3);
    Plan plan = plan(tank("nickel-sulfamate", 5), opened(chromium, work(WorkKind.STRIP)));
    assertThat(plan.warnings()).singleElement().asString().contains("chromic acid");
    assertThat(plan.steps().get(6).cautions())
        .extracting(Caution::hazard)
        .contains("solvent near chromic acid", "solvents and aerosols", "local rules");
    Plan rinsed =
        plan(
            tank("nickel-sulfamate", 5),
            opened(chromium, work(WorkKind.RINSE), work(WorkKind.DRY), work(WorkKind.STRIP)));
    assertThat(rinsed.warnings()).isEmpty();
    assertThat(rinsed.steps().get(8).cautions())
        .extracting(Caution::hazard)
        .contains("solvent near chromic acid");
    Plan wet =
        plan(
            tank("nickel-sulfamate", 5),
            opened(chromium, work(WorkKind.RINSE), work(WorkKind.STRIP)));
    assertThat(wet.warnings()).singleElement().asString().contains("and dry first");
  }

  @Test
  void brushingOnBarePaintIsWarnedOf() {
    assertThat(plan(work(WorkKind.PAINT), brush("copper-brush", 5)).warnings())
        .singleElement()
        .asString()
        .contains("MIL-STD-2197A(SH) 4.5.5", "plate copper");
  }

  /** Glass transition of PLA 59.1 C (filamentspecs.com); 20 C under is a rule of thumb. */
  @Test
  void warmBathsAreWarnedOf() {
    Plan watts =
        Plan.of(
            List.of(tank("nickel-watts", 5)),
            new Workpiece(PrintMaterial.find("PLA"), OptionalDouble.empty()));
    assertThat(watts.warnings())
        .singleElement()
        .asString()
        .contains("PLA at 50.0 C", "below 39.1 C", "begins at 40.0 C");
    Plan petg =
        Plan.of(
            List.of(tank("nickel-watts", 5)),
            new Workpiece(PrintMaterial.find("petg"), OptionalDouble.empty()));
    assertThat(petg.warnings()).isEmpty();
    Step hot =
        TankStep.of("hot", RECIPES.find("nickel-watts"), WHOLE, Target.um(5))
            .temperature(273.15 + 60)
            .build();
    assertThat(
            Plan.of(List.of(hot), new Workpiece(PrintMaterial.find("petg"), OptionalDouble.empty()))
                .warnings())
        .singleElement()
        .asString()
        .contains("run it between 40.0 and 57.4 C");
  }

  @Test
  void metalThickerThanTheResistIsWarnedOf() {
    List<Step> steps = List.of(opened(brush("copper-brush", 12)));
    assertThat(Plan.of(steps, new Workpiece(Optional.empty(), OptionalDouble.of(8))).warnings())
        .singleElement()
        .asString()
        .contains("12.0 um through a resist of 8.00 um", "wider by about 8.00 um");
    assertThat(Plan.of(steps, new Workpiece(Optional.empty(), OptionalDouble.of(15))).warnings())
        .isEmpty();
    assertThatThrownBy(() -> Plan.of(steps, new Workpiece(Optional.empty(), OptionalDouble.of(0))))
        .hasMessageContaining("resist thickness (0.0 um)");
  }

  /** A copper anode loses 1.186 g/A.h and a little to sludge (about 2 %). */
  @Test
  void materialsAddUp() {
    Plan plan =
        plan(
            tank("copper-acid-decorative", 20),
            tank("copper-acid-high-throw", 40),
            brush("palladium-brush", 0.5));
    double copper =
        plan.steps().get(0).massG().orElseThrow() + plan.steps().get(1).massG().orElseThrow();
    assertThat(copper).isCloseTo(0.6 * 2 * 8.96, within(1e-9));
    assertThat(plan.materials())
        .filteredOn(m -> m.name().equals("copper deposited"))
        .singleElement()
        .satisfies(m -> assertThat(m.amount()).isCloseTo(copper, within(1e-9)));
    double tankAh =
        plan.steps().get(0).chargeAh().orElseThrow() + plan.steps().get(1).chargeAh().orElseThrow();
    assertThat(plan.materials())
        .filteredOn(m -> m.name().equals("copper anode"))
        .singleElement()
        .satisfies(m -> assertThat(m.amount()).isCloseTo(tankAh * 1.186 * 1.02, within(0.01)));
    assertThat(plan.materials()).extracting(Material::name).contains("Palladium, brush solution");
  }

  @Test
  void aRefusedStepAddsNothing() {
    Step dark =
        BrushStep.of("dark", RECIPES.find("chromium-brush-dark-trivalent"), PATTERN, Target.um(0.3))
            .build();
    Plan plan = plan(dark);
    assertThat(plan.steps().get(0).refused()).isTrue();
    assertThat(plan.materials()).isEmpty();
    assertThat(plan.chargeAh()).isZero();
  }

  @ParameterizedTest
  @EnumSource(WorkKind.class)
  void everyKindOfWorkCarriesCautionsAndNoCurrent(WorkKind kind) {
    StepEstimate e = work(kind).estimate();
    assertThat(e.cautions()).extracting(Caution::hazard).contains("waste", "local rules");
    assertThat(e.currentA()).isEmpty();
    assertThat(e.how()).isIn(Set.of(How.PREPARE, How.ETCH));
    assertThat(WorkKind.find(kind.key())).contains(kind);
  }
}
