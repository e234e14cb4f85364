package org.amperskin.plating;

import org.amperskin.units.Quantity;

/**
 * Current switched on and off.
 *
 * <p>Definition: duty = on / (on + off); peak = mean / duty; what heats leads is the root mean
 * square, mean / sqrt(duty). The mean stays the step's current, so charge, metal and time do not
 * change. Guaranteed: the peak's density is held against the recipe's window and, where the step
 * knows it, against the density that diffusion brings. Not guaranteed: windows are those of steady
 * current; short pulses bear more than they say. Source: definition of the duty cycle.
 *
 * @param onS time on (s)
 * @param offS time off (s)
 */
public record Pulse(double onS, double offS) {
  /** Key of the figure that the supply must reach. */
  public static final String PEAK = "peakA";

  private static final double SHORTEST_S = 1e-4;

  public Pulse {
    Faraday.positive("pulse on", onS, "s");
    if (!(offS >= 0) || !Double.isFinite(offS)) {
      throw new IllegalArgumentException("pulse off (" + offS + " s) is negative");
    }
  }

  /** Share of the time that it is on. */
  public double duty() {
    return onS / (onS + offS);
  }

  /**
   * Tells what pulses change.
   *
   * @param meanA mean current (A)
   * @param meanADm2 mean density (A/dm2)
   * @param steady densities allowed for steady current (A/dm2)
   */
  void tell(EstimateBuilder out, double meanA, double meanADm2, Window steady) {
    out.figure(
        PEAK,
        "pulse peak",
        meanA / duty(),
        "A",
        Mark.COMPUTED,
        "set this, "
            + Quantity.plain(1000 * onS, 3)
            + " ms on and "
            + Quantity.plain(1000 * offS, 3)
            + " ms off: duty "
            + Quantity.plain(100 * duty(), 3)
            + " %, the meter shows the mean");
    out.figure(
        "effectiveA",
        "leads carry",
        meanA / Math.sqrt(duty()),
        "A",
        Mark.COMPUTED,
        "root mean square, which heats wire and clips");
    double density = meanADm2 / duty();
    out.figure("peakADm2", "peak density", density, "A/dm2", Mark.COMPUTED, "mean over duty");
    if (density > steady.high()) {
      out.warn(
          "the pulse's peak of "
              + Quantity.plain(density, 3)
              + " A/dm2 lies above the "
              + Quantity.plain(steady.high(), 3)
              + " A/dm2 allowed for steady current: a mean of "
              + Quantity.plain(meanA * steady.high() / density, 3)
              + " A or a duty of "
              + Quantity.plain(100 * Math.min(1, duty() * density / steady.high()), 3)
              + " % keeps within");
    }
    limit(out, density);
    if (onS < SHORTEST_S) {
      out.warn(
          "pulses of "
              + Quantity.plain(1e6 * onS, 2)
              + " us are spent on charging the surface before metal lands: take 100 us or longer"
              + " (rule of thumb)");
    }
  }

  private static void limit(EstimateBuilder out, double density) {
    out.figures.stream()
        .filter(f -> f.key().equals(TankBalance.LIMIT) && density > f.value())
        .forEach(
            f ->
                out.warn(
                    "the pulse's peak of "
                        + Quantity.plain(density, 3)
                        + " A/dm2 is more than the "
                        + Quantity.plain(f.value(), 3)
                        + " A/dm2 that diffusion brings with air: pulses longer than the layer's"
                        + " few milliseconds burn; shorten them, or lower the mean"));
  }
}
