package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.Quantity;
import org.amperskin.units.Time;
import org.amperskin.units.Unit;

/**
 * The first minutes of plating on conductive paint.
 *
 * <p>Definition: on a strip of sheet resistance R_s, length L from its contact, under a cell of
 * area resistance rho_a = h/kappa + d(eta)/di, the density at the contact over that at the far end
 * is cosh(lambda), lambda = L sqrt(R_s/rho_a). The start current is held until the metal already
 * grown at the far end has brought R_s L^2/rho_a below 0.2, so that near and far differ by less
 * than about a tenth; R_s falls as 1/(1/R_s0 + d/rho_metal). Guaranteed: the closed form for linear
 * kinetics. Not guaranteed: real shapes; the far end is given its share at the start, which is the
 * slowest it will be, so the hold errs on the long side. Source: Tobias and Wijsman, J.
 * Electrochem. Soc. 100 (1953) 459; start densities and least times are common practice.
 */
final class PaintStart {
  static final double EVEN_ENOUGH = 0.2;
  private static final double PAINT_LIMIT_OHM = 1;
  private static final double LEAST_HOLD_MIN = 10;
  private static final double LONGEST_HOLD_MIN = 60;
  private static final CurrentDensity LOW = CurrentDensity.ofPerDm2(0.3);
  private static final CurrentDensity MODERATE = CurrentDensity.ofPerDm2(0.5);
  private static final CurrentDensity MIDDLE = CurrentDensity.ofPerDm2(1);

  private final ConductivePaint paint;
  private final double areaResistance;
  private final double metalResistivity;

  /**
   * @param areaResistance rho_a (ohm.m2)
   * @param metalResistivity of the metal that grows (ohm.m)
   */
  PaintStart(ConductivePaint paint, double areaResistance, double metalResistivity) {
    this.paint = paint;
    this.areaResistance = Faraday.positive("area resistance", areaResistance, "ohm.m2");
    this.metalResistivity = Faraday.positive("resistivity", metalResistivity, "ohm.m");
  }

  /** Area resistance of a cell with Tafel kinetics. */
  static double areaResistance(
      Length gap, double conductivitySPerM, double tafelSlopeV, CurrentDensity density) {
    return gap.metres() / conductivitySPerM + tafelSlopeV / density.amperesPerSquareMetre();
  }

  private double lambda(double farthestM) {
    return farthestM * Math.sqrt(paint.sheetResistanceOhm() / areaResistance);
  }

  /** Density at the contact over that at a place this far away, on bare paint. */
  double nearOverFar(Length farthest) {
    return Math.cosh(lambda(farthest.metres()));
  }

  /** The distance at which near and far differ by a tenth. */
  Length evenReach() {
    double lambda = Math.log(1.1 + Math.sqrt(1.1 * 1.1 - 1));
    return new Length(lambda * Math.sqrt(areaResistance / paint.sheetResistanceOhm()));
  }

  /** Thickness at which R_s L^2/rho_a has come down to 0.2, or 0. */
  Length coveringThickness(Length farthest) {
    double wanted = farthest.metres() * farthest.metres() / (EVEN_ENOUGH * areaResistance);
    return new Length(metalResistivity * Math.max(0, wanted - 1 / paint.sheetResistanceOhm()));
  }

  /** The density the part starts with. */
  CurrentDensity startDensity(CurrentDensity working) {
    CurrentDensity start = paint.sheetResistanceOhm() > PAINT_LIMIT_OHM ? MODERATE : LOW;
    return start.amperesPerSquareMetre() < working.amperesPerSquareMetre() ? start : working;
  }

  /** How long the start density is held, at the rate the metal grows at 1 A/m2 (m/s). */
  Time hold(CurrentDensity start, double growthPerAm2) {
    Time least = Time.ofMinutes(LEAST_HOLD_MIN);
    if (paint.farthestMm().isEmpty()) {
      return least;
    }
    Length farthest = Length.ofMm(paint.farthestMm().getAsDouble());
    double lambda = lambda(farthest.metres());
    double farShare = lambda < 1e-6 ? 1 : lambda / Math.sinh(lambda);
    double seconds =
        coveringThickness(farthest).metres()
            / (growthPerAm2 * start.amperesPerSquareMetre() * farShare);
    return seconds > least.seconds() ? new Time(seconds) : least;
  }

  /** The whole start: hold, a middle stage, then the working current. */
  CurrentSchedule schedule(CurrentDensity working, double areaM2, double growthPerAm2) {
    double full = working.amperesPerSquareMetre() * areaM2;
    CurrentDensity start = startDensity(working);
    if (start.equals(working)) {
      return CurrentSchedule.constant(full);
    }
    double at = hold(start, growthPerAm2).seconds();
    List<RampPoint> points = new ArrayList<>();
    points.add(new RampPoint(0, start.amperesPerSquareMetre() * areaM2));
    if (MIDDLE.amperesPerSquareMetre() < working.amperesPerSquareMetre()) {
      points.add(new RampPoint(at, MIDDLE.amperesPerSquareMetre() * areaM2));
      at += Time.ofMinutes(LEAST_HOLD_MIN).seconds();
    }
    points.add(new RampPoint(at, full));
    return new CurrentSchedule(points);
  }

  /** What to mind, with numbers. */
  List<String> warnings(CurrentDensity working, double growthPerAm2) {
    List<String> warnings = new ArrayList<>();
    String reach = Quantity.show(evenReach().metres(), Unit.of("mm"), 2);
    String paintText = Quantity.plain(paint.sheetResistanceOhm(), 3) + " ohm/sq";
    if (paint.farthestMm().isEmpty()) {
      warnings.add(
          "distance to the nearest contact not given: on "
              + paintText
              + " keep every painted place within "
              + reach
              + " of a contact, or the far places start thin");
      return warnings;
    }
    double farthestMm = paint.farthestMm().getAsDouble();
    if (farthestMm > evenReach().inMm()) {
      warnings.add(
          "a painted place lies "
              + Quantity.plain(farthestMm, 3)
              + " mm from a contact on "
              + paintText
              + ": the contact gets "
              + Quantity.plain(nearOverFar(Length.ofMm(farthestMm)), 3)
              + " times the density of that place; with contacts no farther than "
              + reach
              + " it would be 1.1 times");
    }
    double minutes = hold(startDensity(working), growthPerAm2).inMinutes();
    if (minutes > LONGEST_HOLD_MIN) {
      warnings.add(
          "the start would have to be held for "
              + Quantity.plain(minutes, 3)
              + " min, past the usual 60 min: place more contacts or use a paint better than "
              + paintText);
    }
    return warnings;
  }
}
