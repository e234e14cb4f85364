package org.amperskin.bench;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.amperskin.plating.Figure;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.How;
import org.amperskin.plating.Mark;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeReader;
import org.amperskin.units.Unit;
import org.amperskin.yaml.YamlFault;

/**
 * A recipe of the user's: one that is there, with the efficiency the coupons show.
 *
 * <p>Guaranteed: a whole recipe in the ordinary format, read back before it is handed out; the
 * efficiency is computed, with coupons and dates as its source. Not guaranteed: anything else of
 * the recipe, which is copied as it was.
 *
 * @param recipe the recipe
 * @param yaml its file
 */
public record CalibratedRecipe(Recipe recipe, String yaml) {
  /** The id that a name becomes: {@code my copper} is {@code my-copper}. */
  public static String id(String name) {
    String id =
        name.strip().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("-$", "");
    if (!id.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*")) {
      throw new IllegalArgumentException(
          "recipe name '" + name + "' does not begin with a letter from a to z");
    }
    return id;
  }

  /**
   * The recipe by a fit.
   *
   * @throws IllegalArgumentException if the fit has no interval, lies above 100 %, or the recipe
   *     does not use an efficiency
   */
  public static CalibratedRecipe of(Recipe base, EfficiencyFit fit, String name) {
    String id = id(name);
    if (id.equals(base.id())) {
      throw new IllegalArgumentException(
          "'" + name + "' is the recipe it is based on; give it a name of its own");
    }
    if (base.how() != How.TANK || base.figure(FigureKey.EFFICIENCY).isEmpty()) {
      throw new IllegalArgumentException(
          base.id() + " uses a factor, not an efficiency: only tank recipes are calibrated so");
    }
    EfficiencyFit.Interval interval =
        fit.interval()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        fit.points().size()
                            + " weighed with a charge: a recipe needs "
                            + EfficiencyFit.ENOUGH
                            + ", for an interval"));
    if (interval.low() > 1) {
      throw new IllegalArgumentException(
          range(interval)
              + ": more metal than the charge can deposit; check the ampere-hour meter, the drying"
              + " before weighing and the recipe's metal");
    }
    if (!(interval.low() > 0)) {
      throw new IllegalArgumentException(
          range(interval) + ": too unsure to plan with; weigh more or larger coupons");
    }
    Figure efficiency =
        new Figure(
            percent(interval.low()),
            percent(Math.min(1, fit.efficiency())),
            percent(Math.min(1, interval.high())),
            Unit.of("%"),
            Mark.COMPUTED,
            source(fit));
    Map<FigureKey, Figure> instead = new EnumMap<>(FigureKey.class);
    instead.put(FigureKey.EFFICIENCY, efficiency);
    String yaml =
        RecipeYaml.of(
            base,
            id,
            name,
            instead,
            "Based on " + base.id() + "; its efficiency is that of coupons in the bench log.");
    try {
      return new CalibratedRecipe(RecipeReader.read(yaml, id + ".yaml"), yaml);
    } catch (YamlFault ours) {
      throw new IllegalStateException(ours.getMessage(), ours);
    }
  }

  private static String range(EfficiencyFit.Interval i) {
    return "efficiency " + Plain.percent(i.low()) + " to " + Plain.percent(i.high());
  }

  /** Four digits after the point of a percentage: far below what coupons can tell. */
  private static double percent(double share) {
    return Math.round(share * 1e6) / 1e4;
  }

  private static String source(EfficiencyFit fit) {
    LocalDate first = fit.points().get(0).weighing().head().date();
    LocalDate last = first;
    for (EfficiencyFit.Point p : fit.points()) {
      LocalDate day = p.weighing().head().date();
      first = day.isBefore(first) ? day : first;
      last = day.isAfter(last) ? day : last;
    }
    return "bench log, "
        + fit.points().size()
        + " coupons, "
        + (first.equals(last) ? first : first + " to " + last)
        + ": 95 % interval of the mean";
  }
}
