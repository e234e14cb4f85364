package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.amperskin.units.Area;
import org.amperskin.units.Charge;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Dimension;
import org.amperskin.units.Length;
import org.amperskin.units.Mass;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Quantity;
import org.amperskin.units.Time;
import org.amperskin.units.Unit;
import org.amperskin.units.Volume;

/**
 * Works out a tank step.
 *
 * <p>Current = density x (open area + wire). Charge from Faraday's law for the target, shared
 * between part and wire by area; time from the charge through the current schedule, so a slow start
 * lengthens it. Voltage = i h/kappa + overpotentials + leads, an estimate for diagnosis. Bands by
 * {@link Spread} over efficiency, density of the deposit and area error. Not guaranteed: evenness.
 */
final class TankEstimator {
  private static final Length USUAL_GAP = Length.ofMm(100);
  private static final double LEADS_OHM = 0.01;
  private static final double GROWTH_BEYOND_THE_FORMULA = 0.5;
  private static final double THICK_UM = 100;
  private static final double GROWTH_THAT_MATTERS = 0.005;
  private static final double MOST_WIRE_DROP_V = 0.05;
  private static final double ROOM_K = 298.15;
  private static final Unit LITRE = Unit.of("L");
  private static final Unit DM2_PER_L = Unit.of("dm2/L");
  private static final Unit A_PER_L = Unit.of("A/L");

  private final TankStep step;
  private final Recipe recipe;
  private final PlatedSurface surface;
  private final EstimateBuilder out;

  /** Volume of the layer over that of a flat one. */
  private double growth = 1;

  TankEstimator(TankStep step) {
    this.step = step;
    this.recipe = step.recipe();
    this.surface = step.surface();
    this.out = step.basics().start();
  }

  StepEstimate estimate() {
    Area open = surface.openArea();
    if (open.squareMetres() == 0) {
      return out.refuse(
              "region '" + step.region() + "' has no open area (0 mm2): nothing would be plated")
          .build();
    }
    if (recipe.claim() == Claim.COUPON && !(step.basics().target() instanceof Target.Coverage)) {
      return out.refuse(Coupon.refusal(recipe)).build();
    }
    CurrentDensity density = step.basics().workingDensity(out);
    double total = open.squareMetres() + step.wireArea().squareMetres();
    double current = density.amperesPerSquareMetre() * total;
    step.basics().checkWindow(density, StepBasics.A_PER_DM2, total, out);
    out.densityADm2(density.inPerDm2());
    Window window = recipe.needed(FigureKey.DENSITY).window(StepBasics.A_PER_DM2);
    out.densityWindowADm2(window);
    out.currentA(current);
    step.basics().currentBand(current, out);
    Spread.Triangle rho = step.basics().depositDensity(out);
    Spread.Triangle eps = efficiency(density);
    if (step.basics().target() instanceof Target.Thickness t) {
      growth = growth(open, t.thickness());
    }
    double doneC =
        done().applyAsDouble(new double[] {rho.typical(), eps.typical(), open.squareMetres()});
    double whole = wholeCharge(total, rho, eps);
    if (step.already().isPresent()) {
      Optional<String> end = step.basics().nothingLeft(step.already().get(), doneC, whole);
      if (end.isPresent()) {
        return out.refuse(end.get()).build();
      }
    }
    Charge charge = deposit(open, total, density, rho, eps, whole, doneC);
    double volts = voltage(density, current);
    wire(current);
    anode(total, current);
    Volume bath = bath(total, current);
    temperature();
    new TankBalance(out, recipe)
        .tell(
            charge.inAmpereHours(),
            eps.typical(),
            volts,
            new Area(total).inMm2() / 10_000,
            density.inPerDm2(),
            bath.inLitres());
    out.evenness(new Charge(doneC).inAmpereHours());
    step.pulse().ifPresent(p -> p.tell(out, current, density.inPerDm2(), window));
    return out.build();
  }

  private void temperature() {
    Figure figure = recipe.needed(FigureKey.TEMPERATURE);
    if (!step.temperatureGiven()) {
      out.assume(Assumption.of("bath temperature", figure));
      return;
    }
    if (!new Window(figure.lowSi(), figure.highSi()).contains(step.temperatureK())) {
      out.warn(
          "bath temperature "
              + Quantity.show(step.temperatureK(), Dimension.TEMPERATURE)
              + " lies outside the window of "
              + recipe.name()
              + ", typically "
              + figure.show()
              + ": efficiency and finish are not those of the recipe");
    }
  }

  /** Charge that was passed before (C), by density of the deposit, efficiency and open area. */
  private ToDoubleFunction<double[]> done() {
    double k = recipe.ion().kilogramsPerCoulomb();
    double wire = step.wireArea().squareMetres();
    return x ->
        step.already()
            .map(d -> d.coulombs(x[0] / (x[1] * k), 1 / (x[1] * k), x[2] + wire, growth))
            .orElse(0.0);
  }

  /** The charge of all of the step (C), what was done before included. */
  private double wholeCharge(double total, Spread.Triangle rho, Spread.Triangle eps) {
    Target target = step.basics().target();
    if (target instanceof Target.Thickness t) {
      double k = recipe.ion().kilogramsPerCoulomb();
      return rho.typical() * t.thickness().metres() * growth * total / (eps.typical() * k);
    }
    return target instanceof Target.Passed p
        ? p.charge().coulombs()
        : ((Target.Coverage) target).coulombsPerSquareMetre() * total;
  }

  /** Tells what lands and how long it takes; gives the charge. */
  private Charge deposit(
      Area open,
      double total,
      CurrentDensity density,
      Spread.Triangle rho,
      Spread.Triangle eps,
      double whole,
      double doneC) {
    Ion ion = recipe.ion();
    double k = ion.kilogramsPerCoulomb();
    double partShare = open.squareMetres() / total;
    Charge charge = new Charge(whole - doneC);
    Mass mass = Faraday.mass(new Charge(charge.coulombs() * partShare), ion, eps.typical());
    Target target = step.basics().target();
    if (target instanceof Target.Thickness t) {
      out.thicknessUm(t.thickness().inUm());
    } else if (recipe.claim() == Claim.FARADAY) {
      Mass all = Faraday.mass(new Charge(whole * partShare), ion, eps.typical());
      out.thicknessUm(Faraday.thickness(all, open, new MassDensity(rho.typical())).inUm());
    }
    out.chargeAh(charge.inAmpereHours());
    CurrentSchedule schedule = schedule(density, total, k * eps.typical() / rho.typical());
    Time time = schedule.timeFor(charge);
    out.timeS(time.seconds()).ramp(schedule.until(time));
    out.rampExtraS(time.seconds() - charge.coulombs() / schedule.finalCurrentA());
    if (recipe.claim() == Claim.FARADAY) {
      out.massG(mass.inGrams());
      out.rateUmPerH(
          new Length(
                  k
                      * eps.typical()
                      * density.amperesPerSquareMetre()
                      / rho.typical()
                      * Unit.of("h").toSi(1))
              .inUm());
      bands(rho, eps, charge, schedule);
    }
    step.already().ifPresent(d -> step.basics().tellAlready(d, doneC, charge.coulombs(), out));
    double sideShare = 1 - eps.typical();
    out.hydrogen(Faraday.hydrogen(new Charge(charge.coulombs() * sideShare), ROOM_K));
    return charge;
  }

  private void bands(
      Spread.Triangle rho, Spread.Triangle eps, Charge charge, CurrentSchedule schedule) {
    double k = recipe.ion().kilogramsPerCoulomb();
    double wire = step.wireArea().squareMetres();
    Unknown density = Unknown.depositDensity(rho);
    Unknown current = Unknown.efficiency(eps);
    Unknown open = Unknown.area(surface.openTriangle());
    ToDoubleFunction<double[]> done = done();
    if (step.basics().target() instanceof Target.Thickness t) {
      double thickness = t.thickness().metres() * growth;
      ToDoubleFunction<double[]> needed =
          x -> Math.max(0, x[0] * thickness * (x[2] + wire) / (x[1] * k) - done.applyAsDouble(x));
      out.timeBandS(
          out.band(
              "time",
              "s",
              x -> schedule.timeFor(new Charge(needed.applyAsDouble(x))).seconds(),
              density,
              current,
              open));
      // the anode gives what the needed charge takes
      out.uncertain(
          TankBalance.ANODE,
          "g",
          x -> (1 + TankBalance.SLUDGE) * new Mass(k * needed.applyAsDouble(x)).inGrams(),
          density,
          current,
          open);
    }
    out.massBandG(
        out.band(
            "metal",
            "g",
            x -> new Mass(k * x[0] * charge.coulombs() * x[1] / (x[1] + wire)).inGrams(),
            current,
            open));
    out.thicknessBandUm(
        out.band(
            "thickness",
            "um",
            x -> {
              double all = charge.coulombs() + done.applyAsDouble(x);
              return new Length(k * x[1] * all / (x[0] * (x[2] + wire) * growth)).inUm();
            },
            density,
            current,
            open));
  }

  private Spread.Triangle efficiency(CurrentDensity density) {
    OptionalDouble own = step.efficiency();
    OptionalDouble seen =
        step.already().map(d -> d.efficiency(recipe.ion())).orElse(OptionalDouble.empty());
    if (own.isEmpty() && seen.isPresent()) {
      return step.basics().weighed("cathode efficiency", seen.getAsDouble(), out);
    }
    if (own.isPresent() || recipe.efficiencyByDensity().isEmpty()) {
      return out.ownOr("cathode efficiency", own, recipe.needed(FigureKey.EFFICIENCY));
    }
    double am2 = density.amperesPerSquareMetre();
    Spread.Triangle range = recipe.efficiencyAt(am2);
    EfficiencyCurve curve = recipe.efficiencyByDensity().get();
    out.assume(
        new Assumption(
            "cathode efficiency at "
                + Quantity.plain(density.inPerDm2(), 3)
                + " A/dm2, less while the current comes up",
            Quantity.plain(100 * range.typical(), 3)
                + " % ("
                + Quantity.plain(100 * range.low(), 3)
                + " to "
                + Quantity.plain(100 * range.high(), 3)
                + ")",
            curve.mark(),
            curve.source()));
    if (!curve.covers(am2)) {
      out.warn(
          "the efficiency of "
              + recipe.name()
              + " is known from "
              + curve.range()
              + ", not at "
              + Quantity.plain(density.inPerDm2(), 3)
              + " A/dm2: the nearer end's "
              + Quantity.plain(100 * range.typical(), 3)
              + " % was taken; weigh a coupon plated at that density");
    }
    return range;
  }

  /** Extra metal a convex body takes because it grows; only where nothing is masked. */
  private double growth(Area open, Length thickness) {
    OptionalDouble curvature = surface.meanCurvatureIntegralMm();
    if (surface.openFraction() < 1 - 1e-9) {
      return 1;
    }
    if (curvature.isEmpty()) {
      if (thickness.inUm() >= THICK_UM) {
        out.assume(
            new Assumption(
                "metal for growing edges and curves",
                "left out, a flat layer",
                Mark.COMPUTED,
                "the formula is for one closed body plated all over"));
      }
      return 1;
    }
    double factor = Growth.factor(open, Length.ofMm(curvature.getAsDouble()), thickness);
    if (Math.abs(factor - 1) < GROWTH_THAT_MATTERS) {
      return 1;
    }
    if (!surface.convex()) {
      out.assume(
          new Assumption(
              "metal for growing edges and curves",
              "left out, a flat layer; on a part without hollows it would be "
                  + Quantity.plain(100 * (factor - 1), 2)
                  + " %",
              Mark.COMPUTED,
              "Steiner's formula holds for convex parts alone"));
      return 1;
    }
    if (Math.abs(factor - 1) > GROWTH_BEYOND_THE_FORMULA) {
      out.warn(
          Quantity.show(thickness.metres(), Dimension.LENGTH)
              + " is thick against the detail of this part (edges and curves would change the"
              + " metal by "
              + Quantity.plain(100 * (factor - 1), 3)
              + " %): growth is left out, mass and charge are those of a flat layer");
      return 1;
    }
    out.assume(
        new Assumption(
            "metal for growing edges and curves",
            Quantity.plain(100 * (factor - 1), 3) + " % more than flat",
            Mark.COMPUTED,
            "Steiner's formula, exact for convex parts"));
    return factor;
  }

  private CurrentSchedule schedule(CurrentDensity density, double total, double growthPerAm2) {
    double current = density.amperesPerSquareMetre() * total;
    if (step.paint().isPresent() && step.already().isEmpty()) {
      return onPaint(step.paint().get(), density, total, growthPerAm2);
    }
    if (step.softStart().seconds() > 0) {
      return CurrentSchedule.soft(current, step.softStart());
    }
    out.notes.add(
        new Note(
            "Bring the current up over 1 to 5 min; the time then grows by half of that.",
            Mark.COMMON,
            Assumption.PRACTICE));
    return CurrentSchedule.constant(current);
  }

  private CurrentSchedule onPaint(
      ConductivePaint paint, CurrentDensity density, double total, double growthPerAm2) {
    boolean copper = recipe.metal() == Metal.COPPER;
    if (!copper && recipe.metal() != Metal.NICKEL) {
      out.warn(
          recipe.metal().label()
              + " straight on paint of "
              + Quantity.plain(paint.sheetResistanceOhm(), 3)
              + " ohm/sq is not usual: plate copper first; the start was taken as for nickel");
    }
    Constant tafel = copper ? Constant.TAFEL_CU : Constant.TAFEL_NI;
    Constant resistivity = copper ? Constant.RESISTIVITY_CU : Constant.RESISTIVITY_NI;
    double cell = PaintStart.areaResistance(gap(), conductivity(), tafel.si(), density);
    PaintStart start = new PaintStart(paint, cell, resistivity.si());
    start.warnings(density, growthPerAm2).forEach(out::warn);
    out.assume(
        Assumption.practice(
            "start on paint",
            Quantity.show(
                    start.startDensity(density).amperesPerSquareMetre(), Dimension.CURRENT_DENSITY)
                + " until covered, at least 10 min; then 1 A/dm2 for 10 min"));
    out.assume(
        new Assumption(
            "polarisation of the cell",
            Quantity.show(tafel.si(), Dimension.VOLTAGE) + " Tafel slope",
            tafel.mark(),
            tafel.source()));
    out.notes.add(
        new Note(
            "Switch the current on before the part goes in: acid attacks bare copper flake and"
                + " loosens paint.",
            Mark.COMMON,
            Assumption.PRACTICE));
    return start.schedule(density, total, growthPerAm2);
  }

  private Length gap() {
    return step.gap().orElse(USUAL_GAP);
  }

  private double conductivity() {
    return step.conductivitySPerM().orElse(recipe.needed(FigureKey.CONDUCTIVITY).typicalSi());
  }

  private double voltage(CurrentDensity density, double current) {
    if (step.gap().isEmpty()) {
      out.assume(Assumption.practice("clearance to the anode", "100 mm"));
    }
    out.assume(
        Assumption.ownOr(
            "conductivity of the bath",
            step.conductivitySPerM(),
            recipe.needed(FigureKey.CONDUCTIVITY)));
    Figure over = recipe.needed(FigureKey.OVERPOTENTIAL);
    out.assume(Assumption.of("overpotentials of both electrodes", over));
    out.assume(Assumption.practice("resistance of the leads", "10 mohm"));
    double volts =
        density.amperesPerSquareMetre() * gap().metres() / conductivity()
            + over.typicalSi()
            + current * LEADS_OHM;
    out.voltageV(volts).voltageWindowV(recipe.needed(FigureKey.VOLTAGE).window(Unit.of("V")));
    return volts;
  }

  private void wire(double current) {
    if (step.wire().isEmpty()) {
      return;
    }
    double drop = current * step.wire().get().resistanceOhm();
    if (drop > MOST_WIRE_DROP_V) {
      out.warn(
          "up to "
              + Quantity.show(drop, Dimension.VOLTAGE)
              + " are lost along the contact wire,"
              + " which starves its far end: keep it below "
              + Quantity.show(MOST_WIRE_DROP_V, Dimension.VOLTAGE)
              + " with a thicker wire, a shorter one or a second lead (rule of thumb)");
    }
  }

  private void anode(double total, double current) {
    Figure ratio = recipe.needed(FigureKey.ANODE_RATIO);
    out.assume(Assumption.of("anode area over cathode area", ratio));
    double share = ratio.typicalSi();
    Optional<Figure> density = recipe.figure(FigureKey.ANODE_DENSITY);
    if (density.isPresent()) {
      // within the usual ratios, the one that keeps the anode's own density in its window
      double cathode = current / total;
      share = Math.min(share, Math.max(ratio.lowSi(), cathode / density.get().lowSi()));
      share = Math.max(share, Math.min(ratio.highSi(), cathode / density.get().highSi()));
      out.assume(Assumption.of("anode current density", density.get()));
    }
    Area anode = new Area(total * share);
    out.anodeAreaMm2(anode.inMm2());
    density.ifPresent(figure -> checkAnode(figure, current, anode));
  }

  private void checkAnode(Figure figure, double current, Area anode) {
    double value = StepBasics.A_PER_DM2.fromSi(current / anode.squareMetres());
    Window window = figure.window(StepBasics.A_PER_DM2);
    if (window.contains(value)) {
      return;
    }
    double end = value > window.high() ? window.high() : window.low();
    Area better = new Area(current / StepBasics.A_PER_DM2.toSi(end));
    out.warn(
        "anode current density "
            + Quantity.plain(value, 3)
            + " A/dm2 lies outside "
            + Quantity.plain(window.low(), 3)
            + " to "
            + Quantity.plain(window.high(), 3)
            + " A/dm2: an anode of "
            + Quantity.show(better.squareMetres(), Dimension.AREA)
            + " would run at "
            + Quantity.plain(end, 3)
            + " A/dm2");
  }

  private Volume bath(double total, double current) {
    Figure load = recipe.needed(FigureKey.TANK_LOAD);
    Figure perLitre = recipe.needed(FigureKey.BATH_CURRENT);
    double least = Math.max(total / load.highSi(), current / perLitre.highSi());
    double advised = Math.max(total / load.typicalSi(), current / perLitre.typicalSi());
    Volume bath = step.bath().orElse(new Volume(advised));
    if (step.bath().isEmpty()) {
      out.assume(Assumption.of("bath by area", load));
      out.assume(Assumption.of("bath by current", perLitre));
    } else if (bath.cubicMetres() < least * (1 - 1e-9)) {
      out.warn(
          "a bath of "
              + Quantity.show(bath.cubicMetres(), LITRE, 3)
              + " is small for "
              + Quantity.show(total, Dimension.AREA)
              + " and "
              + Quantity.show(current, Dimension.CURRENT)
              + ": take at least "
              + Quantity.show(least, LITRE, 3)
              + " (rule of thumb), or expect it to warm and drift");
    }
    out.bathL(bath.inLitres());
    out.tankLoadDm2PerL(DM2_PER_L.fromSi(total / bath.cubicMetres()));
    out.tankCurrentAPerL(A_PER_L.fromSi(current / bath.cubicMetres()));
    return bath;
  }
}
