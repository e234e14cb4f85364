/**
 * What the bench teaches and what the shop needs: the log, calibration from weighed coupons,
 * mixing, prices.
 *
 * <p>May import: {@code plating} and what it may import. Read {@link org.amperskin.bench.BenchLog}
 * first:
 *
 * <pre>{@code
 * try (BenchLog log = BenchLog.openOrMake(file)) {
 *   long bath = log.bath("big copper", Optional.of("copper-acid-high-throw"), Optional.empty());
 *   log.write(weighing);                       // on the disk when it returns
 *   EfficiencyFit fit = EfficiencyFit.of(log.weighings(bath), ion);
 * }
 * }</pre>
 */
package org.amperskin.bench;
