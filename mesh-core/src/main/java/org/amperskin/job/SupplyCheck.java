package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.plating.Plan;
import org.amperskin.plating.StepEstimate;

/** Compares the settings of a plan with what the user's supply gives. */
final class SupplyCheck {
  private SupplyCheck() {}

  static List<String> warnings(Job.SupplySpec supply, Plan plan) {
    List<String> warnings = new ArrayList<>();
    for (StepEstimate step : plan.steps()) {
      compare(warnings, step, "A", step.currentA().orElse(0), supply.currentA().orElse(1e300));
      compare(warnings, step, "V", step.voltageV().orElse(0), supply.voltageV().orElse(1e300));
    }
    return warnings;
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
