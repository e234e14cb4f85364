package org.amperskin.plating;

import java.util.Optional;
import org.amperskin.units.Area;
import org.amperskin.units.Charge;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Dimension;
import org.amperskin.units.Length;
import org.amperskin.units.Mass;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/**
 * Works out a brush step.
 *
 * <p>With open fraction f of the traversed area A, factor F, contact area CA and density ACD:
 * charge = F f A T, current = ACD f CA, time = charge / current = F A T / (ACD CA), dwell = time CA
 * / A, passes = time v w / A, solution = charge / maximum use. Bands by {@link Spread} over the
 * factor, the density of the deposit and the area error. Not guaranteed: evenness, which is in the
 * hand. Source: Surface Finishing Guidebook 2011-12 p. 349; the open fraction follows from charge
 * balance.
 */
final class BrushEstimator {
  /** Result told for sums over steps: solution used up (L). */
  static final String SOLUTION = "solution";

  private static final Length USUAL_COVER = Length.ofMm(4);
  private static final double USUAL_POROSITY = 0.8;
  private static final double HOT_WATT = 20;
  private static final double ROOM_K = 298.15;
  private static final Unit A_PER_CM2 = Unit.of("A/cm2");
  private static final Unit LITRE = Unit.of("L");

  private final BrushStep step;
  private final Recipe recipe;
  private final PlatedSurface surface;
  private final Target target;
  private final EstimateBuilder out;

  BrushEstimator(BrushStep step) {
    this.step = step;
    this.recipe = step.recipe();
    this.surface = step.surface();
    this.target = step.basics().target();
    this.out = step.basics().start();
  }

  StepEstimate estimate() {
    if (surface.openAreaMm2() == 0) {
      return out.refuse(
              "region '" + step.region() + "' has no open area (0 mm2): nothing would be plated")
          .build();
    }
    if (recipe.claim() == Claim.COUPON && !(target instanceof Target.Coverage)) {
      return out.refuse(Coupon.refusal(recipe)).build();
    }
    if (recipe.claim() == Claim.CAPPED && target instanceof Target.Thickness t) {
      Figure cap = recipe.needed(FigureKey.THICKNESS_CAP);
      if (t.thickness().metres() > cap.typicalSi() * (1 + 1e-9)) {
        return out.refuse(
                Quantity.show(t.thickness().metres(), Dimension.LENGTH)
                    + " of "
                    + recipe.name()
                    + " is not promised: it is a decorative film of at most "
                    + cap.show()
                    + " ("
                    + cap.source()
                    + ")")
            .build();
      }
    }
    CurrentDensity density = step.basics().workingDensity(out);
    SwabAtWork swab = new SwabAtWork(step.swab(), surface, out);
    double contact = swab.contactM2();
    double current = density.amperesPerSquareMetre() * surface.openFraction() * contact;
    step.basics().checkWindow(density, A_PER_CM2, surface.openFraction() * contact, out);
    out.densityADm2(density.inPerDm2());
    Window window = recipe.needed(FigureKey.DENSITY).window(StepBasics.A_PER_DM2);
    out.densityWindowADm2(window);
    out.currentA(current).contactAreaMm2(new Area(contact).inMm2());
    step.basics().currentBand(current, out);
    double open = surface.openArea().squareMetres();
    double doneC = done(factorOrNothing(), open);
    double whole = wholeC();
    if (step.already().isPresent()) {
      Optional<String> end = step.basics().nothingLeft(step.already().get(), doneC, whole);
      if (end.isPresent()) {
        return out.refuse(end.get()).build();
      }
      step.basics().tellAlready(step.already().get(), doneC, whole - doneC, out);
    }
    Charge charge = new Charge(whole - doneC);
    out.chargeAh(charge.inAmpereHours());
    double time = charge.coulombs() / current;
    out.timeS(time);
    deposit(charge, current);
    swab.move(recipe.needed(FigureKey.SPEED), time, contact);
    solution(charge);
    voltage(density, current, contact);
    if (surface.openFraction() < 1 - 1e-9) {
      out.assume(
          new Assumption(
              "open fraction under the swab",
              Quantity.plain(100 * surface.openFraction(), 3)
                  + " %: current, charge and metal fall with it, the time does not",
              Mark.COMPUTED,
              "charge balance: each opening needs its dwell"));
      out.notes.add(
          new Note(
              "Set the current, not the voltage: at constant voltage a sparse pattern runs hotter.",
              Mark.COMPUTED,
              "constriction resistance of stripes under a thick wrap"));
    }
    out.evenness(new Charge(doneC).inAmpereHours());
    step.pulse().ifPresent(p -> p.tell(out, current, density.inPerDm2(), window));
    return out.build();
  }

  /** Charge per area and thickness (C/m3) with its spread. */
  private Spread.Triangle factor() {
    if (step.factor().isPresent()) {
      return Spread.Triangle.known(step.factor().getAsDouble());
    }
    return recipe.needed(FigureKey.FACTOR).triangleSi();
  }

  /** Charge that was passed before (C), by factor (C/m3) and open area (m2). */
  private double done(double factor, double openM2) {
    double rho = step.basics().typicalDepositDensity().kilogramsPerCubicMetre();
    return step.already().map(d -> d.coulombs(factor, factor / rho, openM2, 1)).orElse(0.0);
  }

  /** Charge that a thickness still wants (C), by factor and open area. */
  private double left(double factor, double openM2, Length thickness) {
    return Math.max(0, factor * openM2 * thickness.metres() - done(factor, openM2));
  }

  /** Charge per volume, 0 for a finish of which none is known. */
  private double factorOrNothing() {
    boolean known = step.factor().isPresent() || recipe.figure(FigureKey.FACTOR).isPresent();
    return known ? factor().typical() : 0;
  }

  /** The charge of all of the step (C), what was done before included. */
  private double wholeC() {
    double open = surface.openArea().squareMetres();
    if (target instanceof Target.Passed p) {
      return p.charge().coulombs();
    }
    return target instanceof Target.Coverage c
        ? c.coulombsPerSquareMetre() * open
        : factor().typical() * open * ((Target.Thickness) target).thickness().metres();
  }

  private void deposit(Charge charge, double current) {
    boolean calibrated = target instanceof Target.Coverage && recipe.claim() != Claim.FARADAY;
    if (calibrated) {
      out.assume(
          new Assumption(
              "coverage",
              Quantity.plain(((Target.Coverage) target).ampereHoursPerDm2(), 3)
                  + " A.h/dm2 to the wanted colour",
              Mark.COMPUTED,
              "coupon, as given; thickness and mass are not promised"));
      // no efficiency is known for the coupon's finish: all of the charge could make hydrogen
      out.hydrogen(Faraday.hydrogen(charge, ROOM_K));
      return;
    }
    out.assume(
        Assumption.ownOr("ampere-hour factor", step.factor(), recipe.needed(FigureKey.FACTOR)));
    Spread.Triangle factor = factor();
    Spread.Triangle area = surface.openTriangle();
    double open = area.typical();
    double doneC = done(factor.typical(), open);
    double thickness = (charge.coulombs() + doneC) / (factor.typical() * open);
    if (recipe.claim() == Claim.CAPPED
        && thickness > recipe.needed(FigureKey.THICKNESS_CAP).typicalSi() * (1 + 1e-9)) {
      out.warn(
          "this charge would be "
              + Quantity.show(thickness, Dimension.LENGTH)
              + " by the published factor, past the "
              + recipe.needed(FigureKey.THICKNESS_CAP).show()
              + " that can be promised: no thickness or mass is given; calibrate on a coupon");
      out.hydrogen(Faraday.hydrogen(charge, ROOM_K));
      return;
    }
    Spread.Triangle rho = step.basics().depositDensity(out);
    out.thicknessUm(new Length(thickness).inUm());
    out.thicknessBandUm(
        honest(
            out.band(
                "thickness",
                "um",
                x -> new Length((charge.coulombs() + done(x[0], x[1])) / (x[0] * x[1])).inUm(),
                Unknown.factor(factor),
                Unknown.area(area)),
            new Length(thickness).inUm()));
    double grams = new Mass(rho.typical() * charge.coulombs() / factor.typical()).inGrams();
    out.massG(grams);
    out.massBandG(
        honest(
            out.band(
                "metal",
                "g",
                x -> new Mass(x[1] * charge.coulombs() / x[0]).inGrams(),
                Unknown.factor(factor),
                Unknown.depositDensity(rho)),
            grams));
    out.rateUmPerH(new Length(current / (factor.typical() * open) * Unit.of("h").toSi(1)).inUm());
    if (target instanceof Target.Thickness t) {
      out.timeBandS(
          honest(
              out.band(
                  "time",
                  "s",
                  x -> left(x[0], x[1], t.thickness()) / current,
                  Unknown.factor(factor),
                  Unknown.area(area)),
              charge.coulombs() / current));
    }
    efficiency(charge, factor.typical(), rho.typical());
  }

  /** A dark film's factor is only known within a half, whatever its percentiles say. */
  private Band honest(Band band, double value) {
    return recipe.claim() == Claim.CAPPED ? band.atLeastHalf(value) : band;
  }

  private void efficiency(Charge charge, double factor, double rho) {
    double implied = rho / recipe.ion().kilogramsPerCoulomb() / factor;
    if (implied > 1) {
      out.warn(
          "the factor implies an efficiency of "
              + Quantity.plain(100 * implied, 3)
              + " %, more than all of the charge: check the factor");
    }
    double side = Math.max(0, 1 - implied);
    out.hydrogen(Faraday.hydrogen(new Charge(charge.coulombs() * side), ROOM_K));
  }

  private void solution(Charge charge) {
    var maxUse = recipe.figure(FigureKey.MAX_USE);
    var content = recipe.figure(FigureKey.METAL_CONTENT);
    var usable = recipe.figure(FigureKey.USABLE_METAL);
    double typical = charge.coulombs();
    if (maxUse.isPresent()) {
      out.assume(Assumption.of("maximum use of the solution", maxUse.get()));
      out.solutionL(LITRE.fromSi(typical / maxUse.get().typicalSi()));
      Unknown use = Unknown.maximumUse(maxUse.get().triangleSi());
      if (target instanceof Target.Thickness t) {
        // what the thickness takes if factor and area are not as thought
        out.uncertain(
            SOLUTION,
            "L",
            x -> LITRE.fromSi(left(x[0], x[1], t.thickness()) / x[2]),
            Unknown.factor(factor()),
            Unknown.area(surface.openTriangle()),
            use);
      } else {
        out.uncertain(SOLUTION, "L", x -> LITRE.fromSi(typical / x[0]), use);
      }
      return;
    }
    StepEstimate soFar = out.build();
    if (content.isEmpty() || usable.isEmpty() || soFar.massG().isEmpty()) {
      out.notes.add(
          new Note(
              "No maximum use is known for this solution: ask its maker for ampere-hours per"
                  + " litre.",
              Mark.COMMON,
              Assumption.PRACTICE));
      return;
    }
    out.assume(Assumption.of("metal in the solution", content.get()));
    out.assume(Assumption.of("share of the metal that can be used", usable.get()));
    double kilograms = Mass.ofGrams(soFar.massG().getAsDouble()).kilograms();
    double perM3 = content.get().typicalSi() * usable.get().typicalSi();
    out.solutionL(LITRE.fromSi(kilograms / perM3));
    out.uncertain(
        SOLUTION,
        "L",
        x -> LITRE.fromSi(kilograms / (x[0] * x[1])),
        Unknown.metalContent(content.get().triangleSi()),
        Unknown.usableMetal(usable.get().triangleSi()));
  }

  private void voltage(CurrentDensity density, double current, double contactM2) {
    Figure window = recipe.needed(FigureKey.VOLTAGE);
    out.assume(Assumption.of("voltage to start with", window));
    out.voltageV(window.typicalSi()).voltageWindowV(window.window(Unit.of("V")));
    if (recipe.figure(FigureKey.CONDUCTIVITY).isEmpty()) {
      return;
    }
    double cover =
        step.swab().coverMm().isPresent()
            ? Length.ofMm(step.swab().coverMm().getAsDouble()).metres()
            : USUAL_COVER.metres();
    double drop =
        Swab.coverDropV(
            current / contactM2,
            cover,
            recipe.needed(FigureKey.CONDUCTIVITY).typicalSi(),
            USUAL_POROSITY);
    double watt = drop * current;
    if (watt > HOT_WATT) {
      out.warn(
          "about "
              + Quantity.plain(drop, 2)
              + " V are lost in a wrap of "
              + Quantity.show(cover, Dimension.LENGTH)
              + ", which is "
              + Quantity.plain(watt, 2)
              + " W of heat at "
              + Quantity.show(current, Dimension.CURRENT)
              + ": dip often or pump solution, a dry wrap burns");
    }
  }
}
