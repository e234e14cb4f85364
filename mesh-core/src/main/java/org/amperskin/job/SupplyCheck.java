package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.amperskin.plating.Plan;
import org.amperskin.plating.Pulse;
import org.amperskin.plating.StepEstimate;
import org.amperskin.plating.StepFigure;

/** Compares the settings of a plan with what the user's supply gives. */
final class SupplyCheck {
  /** Steps coarser than this share of a setting are worth a word (rule of thumb). */
  private static final double COARSE = 0.05;

  private SupplyCheck() {}

  static List<String> warnings(Job.SupplySpec supply, Plan plan) {
    List<String> warnings = new ArrayList<>();
    for (StepEstimate step : plan.steps()) {
      double most = Math.max(step.currentA().orElse(0), peakA(step));
      compare(warnings, step, "A", most, supply.currentA().orElse(1e300));
      compare(warnings, step, "V", step.voltageV().orElse(0), supply.voltageV().orElse(1e300));
      supply.currentStepA().ifPresent(s -> coarse(warnings, step, "A", step.currentA(), s));
      // a tank is run by its current; its voltage is only looked at
      if (step.contactAreaMm2().isPresent()) {
        supply.voltageStepV().ifPresent(s -> coarse(warnings, step, "V", step.voltageV(), s));
      }
    }
    return warnings;
  }

  /** What a pulsed step asks of the supply at its peak (A), 0 without pulses. */
  private static double peakA(StepEstimate step) {
    return step.figure(Pulse.PEAK).map(StepFigure::value).orElse(0.0);
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
            "%s wants %.3g %s, the supply moves in steps of %.3g %s (%s): %s, or take a finer supply",
            step.name(),
            at,
            unit,
            one,
            unit,
            far,
            unit.equals("V")
                ? "set the current and let the voltage follow, read by a meter at the swab"
                : step.contactAreaMm2().isPresent()
                    ? "read the current with a finer meter in series, or take a larger swab"
                    : "read the current with a finer meter in series, plate a dummy of known area"
                        + " beside the part"));
  }

  private static void compare(
      List<String> warnings, StepEstimate step, String unit, double wanted, double most) {
    if (wanted > most) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "%s wants %.3g %s, the supply gives %.3g %s: %s",
              step.name(),
              wanted,
              unit,
              most,
              unit,
              remedy(step, unit, wanted, most)));
    }
  }

  /** What brings a setting down to what the supply gives, with the number it comes to. */
  private static String remedy(StepEstimate step, String unit, double wanted, double most) {
    if (unit.equals("V")) {
      return step.contactAreaMm2().isPresent()
          ? "use a thinner wrap, a lower density or a larger supply"
          : "bring the anodes nearer, use a lower density or a larger supply";
    }
    double share = most / wanted;
    if (step.contactAreaMm2().isPresent()) {
      return String.format(
          Locale.ROOT,
          "use a swab of at most %.3g cm2 contact, a lower density or a larger supply",
          share * step.contactAreaMm2().getAsDouble() / 100);
    }
    return step.densityADm2().isPresent()
        ? String.format(
            Locale.ROOT,
            "use %.3g A/dm2 at most, which takes longer, or a larger supply",
            share * step.densityADm2().getAsDouble())
        : "use a lower density or a larger supply";
  }
}
