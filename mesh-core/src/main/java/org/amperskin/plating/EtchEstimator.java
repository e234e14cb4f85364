package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.amperskin.units.Area;
import org.amperskin.units.Charge;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Dimension;
import org.amperskin.units.Length;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/**
 * Works out an etch with current.
 *
 * <p>Definition: to depth d, metal also goes sideways under the mask by u = d / etch factor; along
 * an edge of length P the hollow under the mask is a quarter of an ellipse, so the volume is {@code
 * A d + (pi/4) P u d}. Charge by Faraday's law over the anode's efficiency; a bare wire in the bath
 * is eaten to the same depth. Guaranteed: exact for straight edges far from each other and an even
 * current. Not guaranteed: evenness; openings near the mask's border go deeper. Sources: Faraday's
 * law; area of the ellipse.
 */
final class EtchEstimator {
  /** Key of the depth (um). */
  static final String DEPTH = "depthUm";

  private static final OptionalDouble NOT_WEIGHED = OptionalDouble.empty();
  private static final double ROOM_K = 298.15;
  private static final double MOST_OF_A_BRIDGE = 0.5;
  private static final double MOST_OF_A_WIRE = 0.1;

  private final EtchStep step;
  private final Recipe recipe;
  private final PlatedSurface surface;
  private final EstimateBuilder out;

  EtchEstimator(EtchStep step) {
    this.step = step;
    this.recipe = step.recipe();
    this.surface = step.surface();
    this.out = step.basics().start();
  }

  /** What is dissolved: volume to a depth, with the area, the wire and the etch factor open. */
  private record Hollow(double edgeM, double wireM2) {
    double volume(double depth, double open, double factor) {
      return depth * (open + wireM2) + Math.PI / 4 * edgeM / factor * depth * depth;
    }

    double depth(double volume, double open, double factor) {
      double a = Math.PI / 4 * edgeM / factor;
      double b = open + wireM2;
      // the form of the quadratic's root that loses no digits when a is small
      return 2 * volume / (b + Math.sqrt(b * b + 4 * a * volume));
    }
  }

  StepEstimate estimate() {
    if (surface.openAreaMm2() == 0) {
      return out.refuse(
              "region '" + step.region() + "' has no open area (0 mm2): nothing would be etched")
          .build();
    }
    double open = surface.openArea().squareMetres();
    boolean tank = !recipe.swabbed();
    double wire = tank ? step.wire().map(ContactWire::area).map(Area::squareMetres).orElse(0.0) : 0;
    CurrentDensity density = step.basics().workingDensity(out);
    SwabAtWork swab = new SwabAtWork(step.swab(), surface, out);
    double contact = tank ? 0 : swab.contactM2();
    double working = tank ? open + wire : surface.openFraction() * contact;
    double current = density.amperesPerSquareMetre() * working;
    step.basics().checkWindow(density, StepBasics.A_PER_DM2, working, out);
    out.densityADm2(density.inPerDm2());
    out.densityWindowADm2(recipe.needed(FigureKey.DENSITY).window(StepBasics.A_PER_DM2));
    out.currentA(current);
    step.basics().currentBand(current, out);
    Figure volts = recipe.needed(FigureKey.VOLTAGE);
    out.assume(Assumption.of("voltage to start with", volts));
    out.voltageV(volts.typicalSi()).voltageWindowV(volts.window(Unit.of("V")));
    Optional<Charge> some = dissolve(open, wire, current);
    if (some.isEmpty()) {
      return out.build();
    }
    Charge charge = some.get();
    double time = charge.coulombs() / current;
    out.timeS(time);
    if (!tank) {
      out.contactAreaMm2(new Area(contact).inMm2());
      swab.move(recipe.needed(FigureKey.SPEED), time, contact);
      out.handsS(time).waitS(0);
    }
    return out.build();
  }

  private Spread.Triangle efficiency() {
    OptionalDouble seen = step.already().map(d -> d.efficiency(recipe.ion())).orElse(NOT_WEIGHED);
    return step.efficiency().isEmpty() && seen.isPresent()
        ? step.basics().weighed("anode efficiency", seen.getAsDouble(), out)
        : out.ownOr("anode efficiency", step.efficiency(), recipe.needed(FigureKey.EFFICIENCY));
  }

  /** Charge that was passed before (C), by density of the metal, efficiency, area and factor. */
  private ToDoubleFunction<double[]> done(Hollow hollow) {
    double k = recipe.ion().kilogramsPerCoulomb();
    return x ->
        step.already()
            .map(
                d -> {
                  double depth = Length.ofUm(d.readingUm().orElse(1)).metres();
                  double area = hollow.volume(depth, x[2], x[3]) / depth;
                  return d.coulombs(x[0] / (x[1] * k), 1 / (x[1] * k), area, 1);
                })
            .orElse(0.0);
  }

  /** Tells what goes; gives the charge that is left, none if the step is refused. */
  private Optional<Charge> dissolve(double open, double wire, double current) {
    Spread.Triangle rho = step.basics().depositDensity(out);
    Spread.Triangle eps = efficiency();
    Figure ratio = recipe.needed(FigureKey.ETCH_FACTOR);
    out.assume(Assumption.of("depth over undercut", ratio));
    Spread.Triangle factor = ratio.triangleSi();
    Hollow hollow = new Hollow(Length.ofMm(surface.edgeLengthMm()).metres(), wire);
    double k = recipe.ion().kilogramsPerCoulomb();
    ToDoubleFunction<double[]> done = done(hollow);
    double perVolume = rho.typical() / (k * eps.typical());
    double doneC =
        done.applyAsDouble(new double[] {rho.typical(), eps.typical(), open, factor.typical()});
    Target target = step.basics().target();
    double whole =
        target instanceof Target.Thickness t
            ? hollow.volume(t.thickness().metres(), open, factor.typical()) * perVolume
            : ((Target.Passed) target).charge().coulombs();
    Optional<String> end = step.already().flatMap(d -> step.basics().nothingLeft(d, doneC, whole));
    if (end.isPresent()) {
      out.refuse(end.get());
      return Optional.empty();
    }
    double coulombs = whole - doneC;
    double depth =
        target instanceof Target.Thickness t
            ? t.thickness().metres()
            : hollow.depth(whole / perVolume, open, factor.typical());
    Unknown[] unknowns = {
      Unknown.depositDensity(rho),
      Unknown.efficiency(eps),
      Unknown.area(surface.openTriangle()),
      Unknown.etchFactor(factor)
    };
    if (target instanceof Target.Thickness) {
      out.timeBandS(
          out.band(
              "time",
              "s",
              x -> {
                double all = hollow.volume(depth, x[2], x[3]) * x[0] / (k * x[1]);
                return Math.max(0, all - done.applyAsDouble(x)) / current;
              },
              unknowns));
    }
    Band band =
        out.band(
            "depth",
            "um",
            x -> {
              double all = coulombs + done.applyAsDouble(x);
              return new Length(hollow.depth(all * k * x[1] / x[0], x[2], x[3])).inUm();
            },
            unknowns);
    out.chargeAh(new Charge(coulombs).inAmpereHours());
    out.figures.add(
        new StepFigure(
            DEPTH,
            "depth",
            new Length(depth).inUm(),
            "um",
            Optional.of(band),
            Mark.COMPUTED,
            "mean over the open metal, by charge"));
    double reached = hollow.depth(doneC / perVolume, open, factor.typical());
    step.already()
        .ifPresent(d -> step.basics().tellAlready(d, doneC, coulombs, reached / depth, out));
    undercut(depth, factor);
    removed(coulombs, eps.typical());
    if (wire > 0) {
      Hollow alone = new Hollow(hollow.edgeM(), 0);
      wire(depth, alone.depth(whole / perVolume, open, factor.typical()));
    }
    return Optional.of(new Charge(coulombs));
  }

  /** How far metal goes under the mask's edge, and what that does to lines and bridges. */
  private void undercut(double depth, Spread.Triangle factor) {
    if (surface.edgeLengthMm() == 0) {
      return;
    }
    double um = new Length(depth / factor.typical()).inUm();
    double[] each = {1 / factor.high(), 1 / factor.typical(), 1 / factor.low()};
    out.figure(
        "undercutUm",
        "undercut",
        "um",
        new Length(depth).inUm(),
        each,
        recipe.needed(FigureKey.ETCH_FACTOR).mark(),
        "each side: a line comes out wider by twice this; draw it narrower");
    double grown = surface.openAreaMm2() + surface.edgeLengthMm() * um / 1000;
    out.figure(
        "etchedMm2",
        "etched area",
        grown,
        "mm2",
        Mark.COMPUTED,
        "open area and what is laid bare under the mask's edge");
    double covered = surface.traversedAreaMm2() - surface.openAreaMm2();
    double bridgeUm = 2000 * covered / surface.edgeLengthMm();
    if (2 * um > MOST_OF_A_BRIDGE * bridgeUm) {
      out.warn(
          "covered places, "
              + Quantity.plain(bridgeUm, 2)
              + " um wide on average, lose "
              + Quantity.plain(um, 2)
              + " um on each side: their mask lifts; etch at most "
              + Quantity.plain(new Length(depth).inUm() * MOST_OF_A_BRIDGE * bridgeUm / (2 * um), 2)
              + " um deep or draw a coarser pattern");
    }
  }

  private void removed(double coulombs, double eps) {
    double grams = Faraday.mass(new Charge(coulombs), recipe.ion(), eps).inGrams();
    String metal = recipe.metal().label();
    boolean cathodeTakes = recipe.figure(FigureKey.METAL_CONTENT).isPresent();
    out.figure(
        "removedG",
        "taken off",
        grams,
        "g",
        Mark.COMPUTED,
        metal
            + (recipe.swabbed() || step.wire().isEmpty() ? "" : ", of part and wire")
            + ", by charge and efficiency");
    if (cathodeTakes) {
      double taken = Faraday.mass(new Charge(coulombs), recipe.ion(), 1).inGrams();
      out.figure(
          "cathodeTakesG",
          "cathode takes",
          taken,
          "g",
          Mark.COMPUTED,
          metal + " lands on the sheet opposite: the bath keeps its strength");
      return;
    }
    step.bath()
        .filter(b -> !recipe.swabbed())
        .ifPresent(
            b ->
                out.figure(
                    "intoSolutionGPerL",
                    "into solution",
                    grams / b.inLitres(),
                    "g/L",
                    Mark.COMPUTED,
                    metal + ", all that is taken off stays in the bath"));
    out.hydrogen(Faraday.hydrogen(new Charge(coulombs), ROOM_K));
  }

  /**
   * A bare wire in the bath thins, and takes charge that the openings get if it is covered.
   *
   * @param alone how deep the same charge goes into the openings alone (m)
   */
  private void wire(double depth, double alone) {
    out.assume(
        new Assumption(
            "contact wire",
            "bare and eaten too; under resist or lacquer say 'wire: covered', or the openings get "
                + Quantity.show(alone, Dimension.LENGTH),
            Mark.COMPUTED,
            "Faraday's law on the openings alone"));
    double coat = step.wireCoat().metres();
    double diameter = step.wire().orElseThrow().diameter().metres() - 2 * coat;
    double loss = 2 * (depth - coat);
    if (loss > MOST_OF_A_WIRE * diameter) {
      out.warn(
          "the bare contact wire of "
              + Quantity.show(diameter, Dimension.LENGTH)
              + " loses "
              + Quantity.show(loss, Dimension.LENGTH)
              + " of its diameter: lacquer it where it is wet, or take a wire of "
              + Quantity.show(loss / MOST_OF_A_WIRE, Dimension.LENGTH));
    }
  }
}
