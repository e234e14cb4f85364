package org.amperskin.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.plating.Ion;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * The cathode efficiency that weighed coupons show.
 *
 * <p>Definition: the slope of mass gained over the mass that the charge would deposit at 100 %, a
 * line through the origin: no charge, no metal. Each weighing counts by the inverse square of its
 * balance's step. Guaranteed: with three coupons or more, a 95 % interval of the mean by Student's
 * t, right if the errors are those of weighing and independent; none with fewer. Not guaranteed:
 * against what all coupons share, such as a meter that reads 1 % low: that is 1 % of efficiency.
 * Outliers are told, never dropped. Method: weighted least squares by Commons Math; externally
 * studentised residuals against Student's t at 5 % over all coupons (Bonferroni): Draper and Smith,
 * Applied Regression Analysis. Cost: linear in the coupons.
 *
 * @param efficiency the slope (1 is 100 %)
 * @param standardError its standard error, if there are three coupons or more
 * @param interval its 95 % interval, if there are three coupons or more
 * @param scatterOverBalance scatter of the residuals over that of rounding to the balance's step,
 *     if there are two coupons or more
 * @param points the coupons in the order given
 */
public record EfficiencyFit(
    double efficiency,
    Optional<Double> standardError,
    Optional<Interval> interval,
    Optional<Double> scatterOverBalance,
    List<Point> points) {
  /** Coupons needed for an interval. */
  public static final int ENOUGH = 3;

  private static final double CONFIDENCE = 0.95;

  public EfficiencyFit {
    points = List.copyOf(points);
  }

  /**
   * Ends of an interval.
   *
   * @param low lower end (1 is 100 %)
   * @param high upper end (1 is 100 %)
   */
  public record Interval(double low, double high) {}

  /**
   * One coupon in the fit.
   *
   * @param weighing its entry
   * @param efficiency what it shows by itself (1 is 100 %)
   * @param residualG what it gained beyond the fit (g)
   * @param studentised its residual over the error it should have by the other coupons, if there
   *     are three coupons or more
   * @param outlier whether that is too much to be chance
   */
  public record Point(
      LogEntry.Weighing weighing,
      double efficiency,
      double residualG,
      Optional<Double> studentised,
      boolean outlier) {}

  /** Whether a weighing can show an efficiency: plated in the bath with a charge, not struck. */
  public static boolean usable(LogEntry.Weighing weighing) {
    return weighing.chargeAh().isPresent() && weighing.head().struck().isEmpty();
  }

  /**
   * Fits usable weighings.
   *
   * @throws IllegalArgumentException if there is none, or one has no charge
   */
  public static EfficiencyFit of(List<LogEntry.Weighing> weighings, Ion ion) {
    return of(weighings, ion, false);
  }

  /**
   * The same, of metal plated or of metal taken off.
   *
   * @param off whether the charge takes metal off, so that what was lost counts
   */
  static EfficiencyFit of(List<LogEntry.Weighing> weighings, Ion ion, boolean off) {
    int sign = off ? -1 : 1;
    if (weighings.isEmpty()) {
      throw new IllegalArgumentException("0 weighings with a charge: an efficiency needs one");
    }
    int n = weighings.size();
    double[] ideal = new double[n];
    double[] weight = new double[n];
    double gPerAh = ion.massPerAmpereHour().inGrams();
    SimpleRegression line = new SimpleRegression(false);
    double sumX2 = 0;
    double sumXy = 0;
    for (int i = 0; i < n; i++) {
      LogEntry.Weighing w = weighings.get(i);
      ideal[i] = gPerAh * w.chargeAh().orElseThrow(() -> noCharge(w));
      // two readings, each rounded to the step d: the gain has the variance 2 d^2 / 12
      weight[i] = 6 / (w.balanceG() * w.balanceG());
      double root = Math.sqrt(weight[i]);
      line.addData(root * ideal[i], root * sign * w.gainG());
      sumX2 += weight[i] * ideal[i] * ideal[i];
      sumXy += weight[i] * ideal[i] * sign * w.gainG();
    }
    double slope = n > 1 ? line.getSlope() : sumXy / sumX2;
    double[] residual = new double[n];
    double sumR2 = 0;
    for (int i = 0; i < n; i++) {
      residual[i] = sign * weighings.get(i).gainG() - slope * ideal[i];
      sumR2 += weight[i] * residual[i] * residual[i];
    }
    // a balance that happens to show the same digits is not surer than its step allows
    double scatter = n > 1 ? Math.sqrt(sumR2 / (n - 1)) : 0;
    double told = Math.max(scatter, LEAST_SCATTER);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double leverage = weight[i] * ideal[i] * ideal[i] / sumX2;
      Optional<Double> studentised =
          n < ENOUGH
              ? Optional.empty()
              : Optional.of(studentised(weight[i], residual[i], leverage, sumR2, n));
      boolean outlier = studentised.isPresent() && Math.abs(studentised.get()) > limit(n);
      points.add(
          new Point(
              weighings.get(i),
              sign * weighings.get(i).gainG() / ideal[i],
              residual[i],
              studentised,
              outlier));
    }
    if (n < ENOUGH) {
      return new EfficiencyFit(
          slope,
          Optional.empty(),
          Optional.empty(),
          n > 1 ? Optional.of(scatter) : Optional.empty(),
          points);
    }
    double error = told / Math.sqrt(sumX2);
    // SimpleRegression's own interval counts a degree of freedom for the intercept it has not
    // fitted
    double t = new TDistribution(null, n - 1).inverseCumulativeProbability(0.5 + CONFIDENCE / 2);
    return new EfficiencyFit(
        slope,
        Optional.of(error),
        Optional.of(new Interval(slope - t * error, slope + t * error)),
        Optional.of(scatter),
        points);
  }

  /** Least scatter believed, in units of the rounding of the balance. */
  private static final double LEAST_SCATTER = 0.2;

  private static double studentised(double w, double residual, double leverage, double r2, int n) {
    double own = w * residual * residual / (1 - leverage);
    double others = Math.max(0, r2 - own) / (n - 2);
    double s = Math.max(Math.sqrt(others), LEAST_SCATTER);
    return Math.sqrt(w) * residual / (s * Math.sqrt(1 - leverage));
  }

  private static double limit(int n) {
    return new TDistribution(null, n - 2).inverseCumulativeProbability(1 - 0.05 / (2.0 * n));
  }

  private static IllegalArgumentException noCharge(LogEntry.Weighing w) {
    return new IllegalArgumentException(
        "weighing " + w.head().number() + " (" + w.what() + ") has no charge");
  }

  /** The coupons told apart from the others. */
  public List<Point> outliers() {
    return points.stream().filter(Point::outlier).toList();
  }
}
