package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
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

  /** The step with what pulses change. */
  StepEstimate on(StepEstimate step) {
    if (step.currentA().isEmpty() || step.refused()) {
      return step;
    }
    double mean = step.currentA().getAsDouble();
    double peak = mean / duty();
    List<StepFigure> figures = new ArrayList<>();
    figures.add(
        StepFigure.of(
            PEAK,
            "pulse peak",
            peak,
            "A",
            Mark.COMPUTED,
            "set this, "
                + Quantity.plain(1000 * onS, 3)
                + " ms on and "
                + Quantity.plain(1000 * offS, 3)
                + " ms off: duty "
                + Quantity.plain(100 * duty(), 3)
                + " %, the meter shows the mean"));
    figures.add(
        StepFigure.of(
            "effectiveA",
            "leads carry",
            mean / Math.sqrt(duty()),
            "A",
            Mark.COMPUTED,
            "root mean square, which heats wire and clips"));
    List<String> warnings = new ArrayList<>();
    if (step.densityADm2().isPresent()) {
      double density = step.densityADm2().getAsDouble() / duty();
      figures.add(
          StepFigure.of(
              "peakADm2", "peak density", density, "A/dm2", Mark.COMPUTED, "mean over duty"));
      window(step, density, warnings);
      limit(step, density, warnings);
    }
    if (onS < SHORTEST_S) {
      warnings.add(
          "pulses of "
              + Quantity.plain(1e6 * onS, 2)
              + " us are spent on charging the surface before metal lands: take 100 us or longer"
              + " (rule of thumb)");
    }
    return step.withMore(figures, warnings, List.of());
  }

  private void window(StepEstimate step, double density, List<String> warnings) {
    if (step.densityWindowADm2().isEmpty() || density <= step.densityWindowADm2().get().high()) {
      return;
    }
    double high = step.densityWindowADm2().get().high();
    warnings.add(
        "the pulse's peak of "
            + Quantity.plain(density, 3)
            + " A/dm2 lies above the "
            + Quantity.plain(high, 3)
            + " A/dm2 allowed for steady current: a mean of "
            + Quantity.plain(step.currentA().getAsDouble() * high / density, 3)
            + " A or a duty of "
            + Quantity.plain(100 * Math.min(1, duty() * density / high), 3)
            + " % keeps within");
  }

  private void limit(StepEstimate step, double density, List<String> warnings) {
    step.figures().stream()
        .filter(f -> f.key().equals("limitingADm2") && density > f.value())
        .forEach(
            f ->
                warnings.add(
                    "the pulse's peak of "
                        + Quantity.plain(density, 3)
                        + " A/dm2 is more than the "
                        + Quantity.plain(f.value(), 3)
                        + " A/dm2 that diffusion brings with air: pulses longer than the layer's"
                        + " few milliseconds burn; shorten them, or lower the mean"));
  }
}
