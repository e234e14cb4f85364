package org.amperskin.bench;

import java.util.List;
import java.util.Optional;
import org.amperskin.plating.How;
import org.amperskin.plating.Recipe;

/**
 * What the log knows of a bath: its state, and what its coupons show.
 *
 * @param bath which
 * @param recipe its recipe, if told and known
 * @param fit its efficiency by weighings with a charge, if there is one and the recipe is known
 * @param coverage its charge per area for the colour, if it has coupons
 * @param state what it holds now
 */
public record Calibration(
    Bath bath,
    Optional<Recipe> recipe,
    Optional<EfficiencyFit> fit,
    Optional<CoverageMean> coverage,
    BathState state) {

  /** Everything about one bath, by all entries in order of time. */
  public static Calibration of(Bath bath, Optional<Recipe> recipe, List<LogEntry> entries) {
    List<LogEntry.Weighing> weighings =
        entries.stream()
            .filter(LogEntry.Weighing.class::isInstance)
            .map(LogEntry.Weighing.class::cast)
            .filter(w -> of(bath, w) && EfficiencyFit.usable(w))
            .toList();
    List<LogEntry.Coupon> coupons =
        entries.stream()
            .filter(LogEntry.Coupon.class::isInstance)
            .map(LogEntry.Coupon.class::cast)
            .filter(c -> of(bath, c))
            .toList();
    Optional<EfficiencyFit> fit =
        recipe
            .filter(r -> !weighings.isEmpty())
            .map(r -> EfficiencyFit.of(weighings, r.ion(), r.how() == How.ETCH));
    Optional<BathState.Chemistry> chemistry =
        recipe.flatMap(r -> BathState.Chemistry.of(bath, r, fit));
    return new Calibration(
        bath, recipe, fit, CoverageMean.of(coupons), BathState.of(bath, entries, chemistry));
  }

  private static boolean of(Bath bath, LogEntry entry) {
    return entry.baths().stream().anyMatch(bath.name()::equalsIgnoreCase);
  }
}
