package org.amperskin.bench;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * Charge per area that gives the colour wanted, by coupons.
 *
 * <p>Definition: the mean of their A.h/dm2 with its 95 % interval by Student's t; none with fewer
 * than three. Not guaranteed: another brush, density or bath, which wants coupons of its own.
 *
 * @param coupons how many
 * @param meanAhPerDm2 mean (A.h/dm2)
 * @param spreadAhPerDm2 standard deviation of single coupons (A.h/dm2), if there are two or more
 * @param interval 95 % interval of the mean (A.h/dm2), if there are three or more
 */
public record CoverageMean(
    int coupons,
    double meanAhPerDm2,
    Optional<Double> spreadAhPerDm2,
    Optional<EfficiencyFit.Interval> interval) {

  /** The mean of coupons, empty if all are struck or there is none. */
  public static Optional<CoverageMean> of(List<LogEntry.Coupon> coupons) {
    SummaryStatistics sum = new SummaryStatistics();
    coupons.stream()
        .filter(c -> c.head().struck().isEmpty())
        .forEach(c -> sum.addValue(c.coverageAhPerDm2()));
    int n = (int) sum.getN();
    if (n == 0) {
      return Optional.empty();
    }
    Optional<EfficiencyFit.Interval> interval = Optional.empty();
    if (n >= EfficiencyFit.ENOUGH) {
      double t = new TDistribution(null, n - 1).inverseCumulativeProbability(0.975);
      double half = t * sum.getStandardDeviation() / Math.sqrt(n);
      interval =
          Optional.of(new EfficiencyFit.Interval(sum.getMean() - half, sum.getMean() + half));
    }
    return Optional.of(
        new CoverageMean(
            n,
            sum.getMean(),
            n > 1 ? Optional.of(sum.getStandardDeviation()) : Optional.empty(),
            interval));
  }
}
