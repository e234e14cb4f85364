package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.amperskin.units.Charge;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Time;
import org.amperskin.units.Volume;
import org.apache.commons.math3.distribution.TriangularDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TankStepTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final Recipe NICKEL = RECIPES.find("nickel-watts");
  private static final Recipe COPPER = RECIPES.find("copper-acid-decorative");

  private static TankStep.Builder nickel(double areaMm2, double um) {
    return TankStep.of("nickel", NICKEL, PlatedSurface.bare(areaMm2), Target.um(um))
        .density(CurrentDensity.ofPerDm2(2))
        .efficiency(0.95)
        .metalDensity(MassDensity.ofGramsPerCm3(8.90));
  }

  private static TankStep.Builder copper(double um) {
    return TankStep.of("copper", COPPER, PlatedSurface.bare(20000), Target.um(um))
        .density(CurrentDensity.ofPerDm2(2));
  }

  private static double integral(StepEstimate e) {
    List<RampPoint> ramp = e.ramp();
    double sum = 0;
    for (int i = 0; i < ramp.size(); i++) {
      double end = i + 1 < ramp.size() ? ramp.get(i + 1).atS() : e.timeS().getAsDouble();
      sum += ramp.get(i).currentA() * (end - ramp.get(i).atS());
    }
    return sum / 3600;
  }

  /**
   * By hand, from Faraday's law (Chang, General Chemistry, ch. 19): a 20 mm cube with its top
   * stopped off has 5 x 4 cm2 = 0.2 dm2; 10 um of 8.90 g/cm3 weigh 0.1780 g; at 95 % they take
   * 616.0 C, at 2 A/dm2 = 0.400 A 1540 s.
   */
  @Test
  void cubeWithItsTopStoppedOff() {
    StepEstimate e =
        TankStep.of("nickel", NICKEL, PlatedSurface.masked(2000, 2400), Target.um(10))
            .density(CurrentDensity.ofPerDm2(2))
            .build()
            .estimate();
    assertThat(e.openAreaMm2() / 1e4).isCloseTo(0.2000, within(1e-12));
    assertThat(e.currentA().orElseThrow()).isCloseTo(0.400, within(1e-9));
    assertThat(e.timeS().orElseThrow()).isCloseTo(1540, within(1.0));
    assertThat(e.chargeAh().orElseThrow() * 3600).isCloseTo(616.0, within(0.1));
    assertThat(e.massG().orElseThrow()).isCloseTo(0.1780, within(1e-4));
    assertThat(e.thicknessUm().orElseThrow()).isCloseTo(10, within(1e-9));
    assertThat(e.openFraction()).isCloseTo(5 / 6.0, within(1e-12));
    assertThat(e.densityADm2().orElseThrow()).isCloseTo(2, within(1e-12));
    assertThat(e.warnings()).isEmpty();
    assertThat(e.ramp()).isEmpty();
    assertThat(e.refused()).isFalse();
  }

  /** Common practice: 1 A/dm2 of copper grows 13.2 um/h; 100 um at 2 A/dm2 take 3.78 h. */
  @Test
  void copperRuleOfThumbHolds() {
    StepEstimate e = copper(100).efficiency(1).build().estimate();
    assertThat(e.rateUmPerH().orElseThrow() / 2).isCloseTo(13.2, within(0.1));
    assertThat(e.timeS().orElseThrow() / 3600).isCloseTo(3.78, within(0.01));
  }

  /** Acid copper data sheet (scribd 516067457): 1.0 um/min at 4.5 A/dm2; Faraday gives 0.992. */
  @Test
  void copperDataSheetRateHolds() {
    StepEstimate e =
        copper(10).efficiency(1).density(CurrentDensity.ofPerDm2(4.5)).build().estimate();
    assertThat(e.rateUmPerH().orElseThrow() / 60).isCloseTo(0.992, within(0.001));
  }

  @Test
  void aGivenChargeIsTheSameQuestionBackwards() {
    StepEstimate thick = nickel(2000, 10).build().estimate();
    StepEstimate passed =
        TankStep.of(
                "nickel",
                NICKEL,
                PlatedSurface.bare(2000),
                new Target.Passed(Charge.ofAmpereHours(thick.chargeAh().orElseThrow())))
            .density(CurrentDensity.ofPerDm2(2))
            .efficiency(0.95)
            .metalDensity(MassDensity.ofGramsPerCm3(8.90))
            .build()
            .estimate();
    assertThat(passed.thicknessUm().orElseThrow()).isCloseTo(10, within(1e-9));
    assertThat(passed.massG().orElseThrow()).isCloseTo(thick.massG().orElseThrow(), within(1e-12));
    assertThat(passed.timeS().orElseThrow()).isCloseTo(thick.timeS().orElseThrow(), within(1e-9));
    assertThat(passed.timeBandS()).as("current and charge are settings").isEmpty();
  }

  @Test
  void chargeIsProportionalToThicknessAndHalvesAddUp() {
    double ten = nickel(2000, 10).build().estimate().chargeAh().orElseThrow();
    double forty = nickel(2000, 40).build().estimate().chargeAh().orElseThrow();
    double half = nickel(1000, 10).build().estimate().chargeAh().orElseThrow();
    assertThat(forty).isCloseTo(4 * ten, within(1e-12));
    assertThat(2 * half).isCloseTo(ten, within(1e-12));
  }

  @Test
  void inATankTheTimeDoesNotDependOnTheArea() {
    double small = nickel(100, 10).build().estimate().timeS().orElseThrow();
    double large = nickel(90000, 10).build().estimate().timeS().orElseThrow();
    assertThat(small).isCloseTo(large, within(1e-9));
  }

  /**
   * 100 mm of 1 mm wire is pi x 100 mm2: it takes its share of current, not of the part's metal.
   */
  @Test
  void submergedWireTakesCurrentButNotThePartsMetal() {
    StepEstimate bare = nickel(2000, 10).build().estimate();
    StepEstimate wired = nickel(2000, 10).wire(Length.ofMm(1), Length.ofMm(100)).build().estimate();
    double share = (2000 + 100 * Math.PI) / 2000;
    assertThat(wired.currentA().orElseThrow())
        .isCloseTo(bare.currentA().orElseThrow() * share, within(1e-12));
    assertThat(wired.chargeAh().orElseThrow())
        .isCloseTo(bare.chargeAh().orElseThrow() * share, within(1e-12));
    assertThat(wired.massG().orElseThrow()).isCloseTo(bare.massG().orElseThrow(), within(1e-12));
    assertThat(wired.timeS().orElseThrow()).isCloseTo(bare.timeS().orElseThrow(), within(1e-9));
  }

  /** Resistance per metre of copper wire, from IEC 60028 annealed copper (1.724e-8 ohm.m). */
  @ParameterizedTest
  @CsvSource({"0.10,2.195", "0.15,0.976", "0.20,0.549", "0.30,0.244", "0.50,0.088", "1.0,0.022"})
  void wireResistancePerMetre(double mm, double ohm) {
    double value = new ContactWire(Length.ofMm(mm), new Length(1)).resistanceOhm();
    assertThat(value).isCloseTo(ohm, within(0.001));
  }

  @Test
  void aThinWireIsWarnedOf() {
    StepEstimate e = copper(10).wire(Length.ofMm(0.2), Length.ofMm(200)).build().estimate();
    // 4.03 A through 0.2 m of 0.549 ohm/m
    assertThat(e.warnings()).anyMatch(w -> w.contains("up to 442 mV are lost"));
    StepEstimate thick = copper(10).wire(Length.ofMm(1), Length.ofMm(200)).build().estimate();
    assertThat(thick.warnings()).noneMatch(w -> w.contains("are lost along"));
  }

  /**
   * Safety data sheets: hydrogen burns from 4 % in air. 1 A all into hydrogen brings a closed 10 L
   * box there in 53 min, so 0.88 A.h give 0.4 L.
   */
  @Test
  void hydrogenIsToldWithTheAirItSpoils() {
    StepEstimate e =
        TankStep.of("n", NICKEL, PlatedSurface.bare(20000), Target.ampereHours(53 / 60.0 / 0.05))
            .efficiency(0.95)
            .build()
            .estimate();
    assertThat(e.hydrogenL().orElseThrow()).isCloseTo(0.4, within(0.005));
    assertThat(e.notes())
        .extracting(Note::text)
        .anyMatch(t -> t.contains("to make 10 L of still air burn"));
  }

  /**
   * By hand: 2 A/dm2 over 0.1 m of 20 S/m lose 1.0 V; with 0.1 V at the electrodes and leads 1.1.
   */
  @Test
  void voltageIsEstimatedFromTheCell() {
    StepEstimate e = copper(10).conductivity(20).gap(Length.ofMm(100)).build().estimate();
    assertThat(e.currentA().orElseThrow()).isCloseTo(4, within(1e-12));
    assertThat(e.voltageV().orElseThrow()).isCloseTo(1.1 + 4 * 0.01, within(1e-9));
    assertThat(e.voltageWindowV()).contains(new Window(1, 4));
  }

  @Test
  void anodeAreaAndTankLoad() {
    StepEstimate e = copper(10).bath(Volume.ofLitres(8)).build().estimate();
    assertThat(e.anodeAreaMm2().orElseThrow()).isCloseTo(40000, within(1e-6));
    assertThat(e.tankLoadDm2PerL().orElseThrow()).isCloseTo(0.25, within(1e-12));
    assertThat(e.tankCurrentAPerL().orElseThrow()).isCloseTo(0.5, within(1e-12));
    assertThat(e.warnings()).isEmpty();
    StepEstimate small = copper(10).bath(Volume.ofLitres(1)).build().estimate();
    assertThat(small.warnings())
        .singleElement()
        .asString()
        .contains("1.00 L is small for 2.00 dm2 and 4.00 A")
        .contains("at least 4.00 L");
  }

  @ParameterizedTest
  @CsvSource({"0.2,below,1.00 A/dm2,2.00 A", "12,above,6.00 A/dm2,12.0 A"})
  void densityOutsideTheWindowIsWarnedOfWithTheRemedy(
      double density, String side, String end, String current) {
    StepEstimate e = copper(10).density(CurrentDensity.ofPerDm2(density)).build().estimate();
    assertThat(e.warnings().get(0)).contains(side, end, "set " + current);
    assertThat(e.densityWindowADm2()).contains(new Window(1, 6));
  }

  @Test
  void anodeDensityOutsideItsWindowIsWarnedOf() {
    StepEstimate low = copper(10).density(CurrentDensity.ofPerDm2(0.5)).build().estimate();
    assertThat(low.warnings())
        .anyMatch(
            w -> w.contains("anode current density 0.500 A/dm2") && w.contains("of 1.00 dm2"));
    StepEstimate fits = copper(10).density(CurrentDensity.ofPerDm2(1.5)).build().estimate();
    assertThat(fits.warnings()).as("the anode is chosen to run at 1 A/dm2").isEmpty();
    assertThat(fits.anodeAreaMm2().orElseThrow()).isCloseTo(30000, within(1e-6));
  }

  /** Only the efficiency spreads, so the band is that of 1/efficiency in closed form. */
  @Test
  void timeBandIsThatOfTheEfficiency() {
    StepEstimate e =
        TankStep.of("nickel", NICKEL, PlatedSurface.bare(2000), Target.um(10))
            .metalDensity(MassDensity.ofGramsPerCm3(8.90))
            .build()
            .estimate();
    var closed = new TriangularDistribution(0.93, 0.95, 0.97);
    double time = e.timeS().orElseThrow();
    Band band = e.timeBandS().orElseThrow();
    double fast = time * 0.95 / closed.inverseCumulativeProbability(0.9);
    double slow = time * 0.95 / closed.inverseCumulativeProbability(0.1);
    assertThat(band.low()).isCloseTo(fast, within(time * 1e-4));
    assertThat(band.high()).isCloseTo(slow, within(time * 1e-4));
    Band mass = e.massBandG().orElseThrow();
    assertThat(mass.high() / e.massG().orElseThrow())
        .isCloseTo(closed.inverseCumulativeProbability(0.9) / 0.95, within(1e-4));
  }

  @Test
  void currentHasOnlyTheBandOfTheArea() {
    assertThat(copper(10).build().estimate().currentBandA()).isEmpty();
    PlatedSurface loose = new PlatedSurface(20000, 200, 20000, 0, OptionalDouble.empty(), 0);
    StepEstimate e =
        TankStep.of("copper", COPPER, loose, Target.um(10))
            .density(CurrentDensity.ofPerDm2(2))
            .build()
            .estimate();
    Window band = e.currentBandA().orElseThrow();
    assertThat(band.low()).isCloseTo(3.96, within(1e-9));
    assertThat(band.high()).isCloseTo(4.04, within(1e-9));
  }

  @Test
  void theSameQuestionGivesTheSameAnswerToTheLastBit() {
    assertThat(copper(30).build().estimate()).isEqualTo(copper(30).build().estimate());
  }

  @Test
  void everyDefaultIsToldWithItsSource() {
    StepEstimate e =
        TankStep.of("copper", COPPER, PlatedSurface.bare(2000), Target.um(10)).build().estimate();
    assertThat(e.assumptions())
        .extracting(Assumption::what)
        .contains(
            "current density",
            "cathode efficiency",
            "density of the deposit",
            "conductivity of the bath",
            "clearance to the anode",
            "bath temperature");
    assertThat(e.assumptions()).allSatisfy(a -> assertThat(a.source()).isNotBlank());
    assertThat(nickel(2000, 10).build().estimate().assumptions())
        .extracting(Assumption::what)
        .doesNotContain("current density", "cathode efficiency", "density of the deposit");
  }

  @Test
  void softStartIsPaidForInTime() {
    StepEstimate plain = copper(10).build().estimate();
    StepEstimate soft = copper(10).softStart(Time.ofMinutes(3)).build().estimate();
    assertThat(soft.chargeAh()).isEqualTo(plain.chargeAh());
    assertThat(soft.timeS().orElseThrow() - plain.timeS().orElseThrow())
        .as("half of the three minutes")
        .isCloseTo(90, within(1e-6));
    assertThat(soft.rampExtraS().orElseThrow()).isCloseTo(90, within(1e-6));
    assertThat(integral(soft)).isCloseTo(soft.chargeAh().orElseThrow(), within(1e-12));
    assertThat(soft.ramp()).hasSize(4);
  }

  @Test
  void paintIsStartedLowAndTheMinutesAreCounted() {
    StepEstimate e =
        copper(50).paint(new ConductivePaint(0.3, OptionalDouble.of(30))).build().estimate();
    assertThat(e.ramp().get(0).currentA()).isCloseTo(0.3 * 2, within(1e-12));
    assertThat(e.ramp().get(1)).isEqualTo(new RampPoint(600, 2));
    assertThat(e.ramp().get(2)).isEqualTo(new RampPoint(1200, 4));
    assertThat(integral(e)).isCloseTo(e.chargeAh().orElseThrow(), within(1e-12));
    // 10 min at 0.3 and 10 min at 1 A/dm2 give 0.65 of 10 min at 2: 20 - 6.5 = 13.5 min more
    assertThat(e.rampExtraS().orElseThrow()).isCloseTo(13.5 * 60, within(1e-6));
    assertThat(e.notes()).extracting(Note::text).anyMatch(t -> t.contains("before the part goes"));
  }

  @Test
  void aThinFilmIsDoneBeforeTheStartIsOver() {
    StepEstimate e =
        copper(0.1).paint(new ConductivePaint(0.3, OptionalDouble.of(30))).build().estimate();
    assertThat(e.ramp()).hasSize(1);
    assertThat(e.timeS().orElseThrow())
        .isCloseTo(e.chargeAh().orElseThrow() * 3600 / 0.6, within(1e-9));
  }

  /**
   * Terminal effect on a strip with linear kinetics (Tobias and Wijsman, J. Electrochem. Soc. 100
   * (1953) 459): near over far is cosh(lambda); 50 mm, 50 mm of 20 S/m, copper kinetics at 1 A/dm2.
   */
  @ParameterizedTest
  @CsvSource({"0.05,1.02", "0.3,1.13", "0.5,1.22", "2,1.98", "5,4.0", "50,341"})
  void nearOverFarOnPaint(double ohm, double printed) {
    double cell =
        PaintStart.areaResistance(
            Length.ofMm(50), 20, Constant.TAFEL_CU.si(), CurrentDensity.ofPerDm2(1));
    assertThat(cell).isCloseTo(2.94e-3, within(1e-5));
    PaintStart start =
        new PaintStart(new ConductivePaint(ohm, OptionalDouble.of(50)), cell, 1.72e-8);
    double unit = printed >= 100 ? 1 : printed >= 4 ? 0.1 : 0.01;
    assertThat(start.nearOverFar(Length.ofMm(50))).isCloseTo(printed, within(unit * 1.5));
  }

  /** The same theory: contacts within 0.44 sqrt(rho_a/R_s) keep near over far at 1.1. */
  @ParameterizedTest
  @CsvSource({"0.05,107", "0.3,44", "0.5,34", "2,17", "5,11", "50,3.4"})
  void contactReach(double ohm, double mm) {
    PaintStart start =
        new PaintStart(new ConductivePaint(ohm, OptionalDouble.empty()), 2.9e-3, 1.72e-8);
    assertThat(start.evenReach().inMm()).isCloseTo(mm, within(mm > 10 ? 1.0 : 0.1));
    assertThat(start.nearOverFar(start.evenReach())).isCloseTo(1.1, within(1e-9));
  }

  /** Copper whose sheet resistance equals that of 0.5 ohm/sq paint is 0.034 um thick. */
  @Test
  void copperSoonCarriesTheCurrentItself() {
    double cell = 2.94e-3;
    double ohm = 0.5;
    double farM = Math.sqrt(0.2 * cell * 2 / ohm);
    PaintStart start =
        new PaintStart(new ConductivePaint(ohm, OptionalDouble.of(farM * 1000)), cell, 1.72e-8);
    // R_s has to be halved here: as much copper as carries like the paint
    assertThat(start.coveringThickness(new Length(farM)).inUm()).isCloseTo(0.034, within(0.001));
  }

  @Test
  void graphiteIsWarnedOf() {
    StepEstimate e =
        copper(50).paint(new ConductivePaint(50, OptionalDouble.of(50))).build().estimate();
    assertThat(e.warnings()).anyMatch(w -> w.contains("50.0 mm from a contact"));
    assertThat(e.ramp().get(0).currentA()).as("0.5 A/dm2 on poor paint").isCloseTo(1, within(1e-9));
    StepEstimate unknown =
        copper(50).paint(new ConductivePaint(50, OptionalDouble.empty())).build().estimate();
    assertThat(unknown.warnings()).anyMatch(w -> w.contains("distance to the nearest contact not"));
  }

  @Test
  void growthIsCountedOnlyWhereItMattersAndNothingIsMasked() {
    OptionalDouble curvature = OptionalDouble.of(30 * Math.PI);
    PlatedSurface cube = new PlatedSurface(600, 0, 600, 0, curvature, 1000);
    PlatedSurface masked = new PlatedSurface(500, 0, 600, 0, curvature, 1000);
    StepEstimate thick = TankStep.of("copper", COPPER, cube, Target.um(100)).build().estimate();
    assertThat(thick.massG().orElseThrow()).isCloseTo(60.94667e-3 * 8.96, within(1e-6));
    assertThat(thick.thicknessBandUm().orElseThrow().low()).isLessThan(100);
    assertThat(thick.thicknessBandUm().orElseThrow().high()).isGreaterThan(99);
    StepEstimate thin = TankStep.of("copper", COPPER, cube, Target.um(10)).build().estimate();
    assertThat(thin.massG().orElseThrow()).isCloseTo(6e-3 * 8.96, within(1e-9));
    StepEstimate part = TankStep.of("copper", COPPER, masked, Target.um(100)).build().estimate();
    assertThat(part.massG().orElseThrow()).isCloseTo(50e-3 * 8.96, within(1e-9));
  }

  /** Steiner's formula holds for convex bodies; elsewhere the layer is flat, and that is told. */
  @Test
  void aPartWithHollowsIsPlatedFlatAndSaysSo() {
    OptionalDouble curvature = OptionalDouble.of(30 * Math.PI);
    OptionalDouble none = OptionalDouble.empty();
    PlatedSurface step = new PlatedSurface(600, 0, 600, 0, curvature, false, 1000, none);
    StepEstimate thick = TankStep.of("copper", COPPER, step, Target.um(100)).build().estimate();
    assertThat(thick.massG().orElseThrow()).isCloseTo(60e-3 * 8.96, within(1e-9));
    assertThat(thick.assumptions())
        .anyMatch(a -> a.what().contains("growing edges") && a.value().contains("1.6 %"));
    StepEstimate thin = TankStep.of("copper", COPPER, step, Target.um(10)).build().estimate();
    assertThat(thin.assumptions()).noneMatch(a -> a.what().contains("growing edges"));
  }

  /** A thinnest place with 60 % of the mean needs the charge over 0.6; the start is passed once. */
  @Test
  void theThinnestPlaceIsToldWithTheTimeThatItNeeds() {
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble share = OptionalDouble.of(0.6);
    PlatedSurface uneven = new PlatedSurface(20000, 0, 20000, 0, none, false, 0, share);
    TankStep.Builder step =
        TankStep.of("copper", COPPER, uneven, Target.um(60)).softStart(new Time(300));
    StepEstimate e = step.build().estimate();
    assertThat(e.figure("thinnestUm").orElseThrow().value()).isCloseTo(36, within(1e-9));
    StepEstimate all =
        TankStep.of("copper", COPPER, uneven, Target.um(100))
            .softStart(new Time(300))
            .build()
            .estimate();
    assertThat(e.figure("timeForMinimumS").orElseThrow().value())
        .isCloseTo(all.timeS().orElseThrow(), within(1e-6));
    assertThat(copper(60).build().estimate().figure("thinnestUm")).isEmpty();
  }

  @Test
  void aLayerTooThickForTheGrowthFormulaIsToldAndTakenFlat() {
    OptionalDouble hollow = OptionalDouble.of(-4000);
    PlatedSurface tube = new PlatedSurface(600, 0, 600, 0, hollow, 1000);
    StepEstimate e = TankStep.of("copper", COPPER, tube, Target.um(100)).build().estimate();
    assertThat(e.warnings()).anyMatch(w -> w.contains("100 um is thick against the detail"));
    assertThat(e.massG().orElseThrow()).isCloseTo(60e-3 * 8.96, within(1e-9));
  }

  @Test
  void aBathTooColdOrTooWarmForItsRecipeIsWarnedOf() {
    StepEstimate cold = copper(10).temperature(273.15 + 12).build().estimate();
    assertThat(cold.warnings())
        .singleElement()
        .asString()
        .contains("bath temperature 12.0 C", "25 C (20 to 32)");
    assertThat(copper(10).temperature(273.15 + 30).build().estimate().warnings()).isEmpty();
  }

  @Test
  void anEstimateWithoutCautionsCannotBeBuilt() {
    EstimateBuilder bare =
        new EstimateBuilder(
            "x", "", How.PREPARE, PlatedSurface.bare(1), java.util.Optional.empty());
    assertThatThrownBy(bare::build).hasMessageContaining("step x has no cautions");
    bare.cautions.addAll(Caution.of(List.of()));
    assertThat(bare.build().cautions()).extracting(Caution::hazard).containsExactly("local rules");
    bare.refuse("because").massG(1);
    assertThatThrownBy(bare::build).hasMessageContaining("refused and yet has figures");
  }

  /** Laws over many parts: charge is linear in area and thickness; the ramp only shifts time. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void lawsHoldForAnyPart(long seed) {
    Random random = new Random(seed);
    double area = 50 + 50000 * random.nextDouble();
    double um = 0.5 + 200 * random.nextDouble();
    double minutes = 1 + 4 * random.nextDouble();
    String again = "seed " + seed;
    StepEstimate e = nickel(area, um).build().estimate();
    StepEstimate twice = nickel(2 * area, um).build().estimate();
    StepEstimate soft = nickel(area, um).softStart(Time.ofMinutes(minutes)).build().estimate();
    double ah = e.chargeAh().orElseThrow();
    assertThat(twice.chargeAh().orElseThrow()).as(again).isCloseTo(2 * ah, within(ah * 1e-12));
    assertThat(ah * 1.0950 * 0.95)
        .as(again + ": mass by the printed equivalent")
        .isCloseTo(e.massG().orElseThrow(), within(e.massG().orElseThrow() * 1e-4));
    assertThat(e.timeS().orElseThrow() / 3600 * e.rateUmPerH().orElseThrow())
        .as(again)
        .isCloseTo(um, within(um * 1e-9));
    assertThat(integral(soft)).as(again).isCloseTo(ah, within(ah * 1e-9));
    assertThat(soft.timeS().orElseThrow())
        .as(again)
        .isCloseTo(e.timeS().orElseThrow() + soft.rampExtraS().orElseThrow(), within(1e-6));
  }

  @Test
  void whatMakesNoSenseIsRefused() {
    StepEstimate nothing =
        TankStep.of("copper", COPPER, PlatedSurface.masked(0, 600), Target.um(10))
            .region("pattern")
            .build()
            .estimate();
    assertThat(nothing.refusal().orElseThrow()).contains("'pattern'", "0 mm2");
    assertThat(nothing.massG()).isEmpty();
    assertThat(nothing.currentA()).isEmpty();
    assertThat(nothing.cautions()).isNotEmpty();
    assertThatThrownBy(() -> Target.um(0)).hasMessageContaining("target thickness (0.0 m)");
    assertThatThrownBy(() -> Target.ampereHours(-1)).hasMessageContaining("-3600.0 C");
    assertThatThrownBy(() -> Target.coverage(Double.NaN)).hasMessageContaining("coverage (NaN");
    assertThatThrownBy(() -> copper(1).efficiency(1.2)).hasMessageContaining("1.2");
    assertThatThrownBy(() -> copper(1).bath(Volume.ofLitres(0))).hasMessageContaining("bath");
    assertThatThrownBy(() -> copper(1).density(CurrentDensity.ofPerDm2(-2)).build())
        .hasMessageContaining("current density (-200.0 A/m2)");
    assertThatThrownBy(() -> copper(1).softStart(new Time(-1))).hasMessageContaining("-1.0 s");
    assertThatThrownBy(() -> copper(1).wire(Length.ofMm(0), Length.ofMm(5)))
        .hasMessageContaining("wire diameter");
    assertThatThrownBy(() -> new ConductivePaint(0, OptionalDouble.empty()))
        .hasMessageContaining("sheet resistance (0.0 ohm/sq)");
    assertThatThrownBy(
            () ->
                TankStep.of("x", RECIPES.find("copper-brush"), PlatedSurface.bare(1), Target.um(1))
                    .build())
        .hasMessageContaining("copper-brush is for brush, not for tank");
  }

  @Test
  void surfacesThatContradictThemselvesAreRefused() {
    assertThatThrownBy(() -> PlatedSurface.masked(700, 600))
        .hasMessageContaining("open area (700.0 mm2) exceeds the traversed area (600.0 mm2)");
    assertThatThrownBy(() -> PlatedSurface.bare(-1)).hasMessageContaining("-1.0 mm2");
    assertThatThrownBy(() -> PlatedSurface.bare(Double.NaN)).hasMessageContaining("NaN mm2");
    var nan = new PlatedSurface(1, 0, 1, 0, OptionalDouble.of(Double.NaN), 0);
    assertThat(nan.meanCurvatureIntegralMm()).isEmpty();
  }

  @Test
  void schedulesThatGoBackInTimeAreRefused() {
    assertThatThrownBy(() -> new CurrentSchedule(List.of(new RampPoint(5, 1))))
        .hasMessageContaining("begin at 0 s");
    assertThatThrownBy(() -> new CurrentSchedule(List.of(new RampPoint(0, 1), new RampPoint(0, 2))))
        .hasMessageContaining("back in time");
    CurrentSchedule soft = CurrentSchedule.soft(2, new Time(300));
    for (double charge : new double[] {1, 100, 299.5, 300, 301, 5000}) {
      assertThat(soft.chargeAt(soft.timeFor(new Charge(charge))).coulombs())
          .isCloseTo(charge, within(1e-9));
    }
  }
}
