package org.amperskin.plating;

import java.util.List;
import org.amperskin.units.Quantity;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;

/**
 * Cathode efficiency as a function of current density.
 *
 * <p>Definition: straight lines between the points; at the nearer end's value outside them.
 *
 * @param points at least two, density rising
 * @param mark how far it can be trusted
 * @param source where it was read
 */
public record EfficiencyCurve(List<Point> points, Mark mark, String source) {
  /**
   * One point.
   *
   * @param densityAm2 current density (A/m2), above zero
   * @param efficiency share of the charge that deposits metal, above 0 and up to 1
   */
  public record Point(double densityAm2, double efficiency) {
    public Point {
      Faraday.positive("density of an efficiency", densityAm2, "A/m2");
      if (!(efficiency > 0 && efficiency <= 1)) {
        throw new IllegalArgumentException(
            "efficiency-by-density: efficiency " + efficiency + " is not above 0 and up to 1");
      }
    }
  }

  public EfficiencyCurve {
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new IllegalArgumentException(
          "efficiency-by-density has " + points.size() + " point, at least 2 make a line");
    }
    for (int k = 1; k < points.size(); k++) {
      if (!(points.get(k).densityAm2() > points.get(k - 1).densityAm2())) {
        throw new IllegalArgumentException(
            "efficiency-by-density: density " + show(points.get(k)) + " does not rise");
      }
    }
  }

  private static String show(Point p) {
    return Quantity.plain(StepBasics.A_PER_DM2.fromSi(p.densityAm2()), 3) + " A/dm2";
  }

  /** The efficiency at a density (A/m2). */
  public double at(double densityAm2) {
    double[] x = points.stream().mapToDouble(Point::densityAm2).toArray();
    double[] y = points.stream().mapToDouble(Point::efficiency).toArray();
    double within = Math.max(x[0], Math.min(x[x.length - 1], densityAm2));
    return new LinearInterpolator().interpolate(x, y).value(within);
  }

  /** Whether a density (A/m2) lies between its points. */
  boolean covers(double densityAm2) {
    return densityAm2 >= points.get(0).densityAm2() * (1 - 1e-9)
        && densityAm2 <= points.get(points.size() - 1).densityAm2() * (1 + 1e-9);
  }

  /** Its range of densities, for people. */
  String range() {
    return show(points.get(0)) + " to " + show(points.get(points.size() - 1));
  }
}
