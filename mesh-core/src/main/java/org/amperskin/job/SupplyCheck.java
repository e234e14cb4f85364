package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.amperskin.plating.Plan;
import org.amperskin.plating.StepEstimate;

/** Compares the settings of a plan with what the user's supply gives. */
final class SupplyCheck {
  /** Steps coarser than this share of a setting are worth a word (rule of thumb). */
  private static final double COARSE = 0.05;

  private SupplyCheck() {}

  static List<String> warnings(Job.SupplySpec supply, Plan plan) {
    List<String> warnings = new ArrayList<>();
    for (StepEstimate step : plan.steps()) {
      compare(warnings, step, "A", step.currentA().orElse(0), supply.currentA().orElse(1e300));
      compare(warnings, step, "V", step.voltageV().orElse(0), supply.voltageV().orElse(1e300));
      supply.currentStepA().ifPresent(s -> coarse(warnings, step, "A", step.currentA(), s));
      supply.voltageStepV().ifPresent(s -> coarse(warnings, step, "V", step.voltageV(), s));
    }
    return warnings;
  }

  /** A setting is only as good as the supply's smallest step. */
  private static void coarse(
      List<String> warnings, StepEstimate step, String unit, OptionalDouble wanted, double one) {
    if (wanted.isEmpty() || !(one > COARSE * wanted.getAsDouble())) {
      return;
    }
    double at = wanted.getAsDouble();
    String far =
        one > at
            ? "below the supply's step"
            : String.format(Locale.ROOT, "%.2g %% a step", 100 * one / at);
    warnings.add(
        String.format(
            Locale.ROOT,
            "%s wants %.3g %s, the supply moves in steps of %.3g %s (%s): read the current with a"
                + " finer meter in series, plate a dummy of known area beside the part, or take a"
                + " finer supply",
            step.name(),
            at,
            unit,
            one,
            unit,
            far));
  }

  private static void compare(
      List<String> warnings, StepEstimate step, String unit, double wanted, double most) {
    if (wanted > most) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "%s wants %.3g %s, the supply gives %.3g %s: use a lower density, a smaller swab or"
                  + " a larger supply",
              step.name(),
              wanted,
              unit,
              most,
              unit));
    }
  }
}
