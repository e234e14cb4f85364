package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * An input that is not known for sure.
 *
 * @param name what it is
 * @param range its triangular range
 * @param remedy what to measure to know it better
 */
record Unknown(String name, Spread.Triangle range, String remedy) {
  private static final double LOW = 0.1;
  private static final double HIGH = 0.9;
  private static final double NOTHING = 1e-9;

  static Unknown efficiency(Spread.Triangle range) {
    return new Unknown(
        "cathode efficiency", range, "weigh a coupon before and after: amperskin log weigh");
  }

  static Unknown depositDensity(Spread.Triangle range) {
    return new Unknown(
        "density of the deposit", range, "weigh a coupon and measure its thickness with a meter");
  }

  static Unknown area(Spread.Triangle range) {
    return new Unknown(
        "open area", range, "tell where paint reaches, draw with fewer curves, repair the file");
  }

  static Unknown factor(Spread.Triangle range) {
    return new Unknown(
        "ampere-hour factor", range, "take the bottle's, or weigh a coupon: amperskin log weigh");
  }

  static Unknown etchFactor(Spread.Triangle range) {
    return new Unknown(
        "etch factor", range, "etch a coupon through lines of known width and measure them");
  }

  static Unknown maximumUse(Spread.Triangle range) {
    return new Unknown("maximum use", range, "take the bottle's ampere-hours per litre");
  }

  static Unknown usableMetal(Spread.Triangle range) {
    return new Unknown(
        "usable metal", range, "take the bottle's ampere-hours per litre, or weigh until it fails");
  }

  static Unknown metalContent(Spread.Triangle range) {
    return new Unknown("metal in the solution", range, "read it on the bottle");
  }

  /** The result at both ends of each unknown; unknowns that move nothing are left out. */
  static List<Swing> swings(
      String result, String unit, ToDoubleFunction<double[]> value, List<Unknown> unknowns) {
    double[] typical = typicals(unknowns);
    double middle = value.applyAsDouble(typical);
    List<Swing> swings = new ArrayList<>();
    for (int k = 0; k < typical.length; k++) {
      Unknown unknown = unknowns.get(k);
      double[] at = typical.clone();
      at[k] = unknown.range.quantile(LOW);
      double low = value.applyAsDouble(at);
      at[k] = unknown.range.quantile(HIGH);
      double high = value.applyAsDouble(at);
      if (Math.abs(high - low) > NOTHING * Math.abs(middle)) {
        swings.add(new Swing(result, unknown.name, middle, low, high, unit, unknown.remedy));
      }
    }
    return swings;
  }

  static Spread.Triangle[] ranges(List<Unknown> unknowns) {
    return unknowns.stream().map(Unknown::range).toArray(Spread.Triangle[]::new);
  }

  /** All at their typical values. */
  static double[] typicals(List<Unknown> unknowns) {
    return unknowns.stream().mapToDouble(u -> u.range.typical()).toArray();
  }
}
