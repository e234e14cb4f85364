package org.amperskin.film;

import java.util.List;
import java.util.Optional;

/**
 * What becomes of a film's lines, or of its spaces.
 *
 * @param outlineMm length of all outline that lies on lit skin (mm of film)
 * @param vanishingMm part of it whose line or space vanishes
 * @param riskMm part of it at risk
 * @param smallest the narrowest on the skin, sharp tips left out, if any was measured
 * @param worst the one with the least width left over, sharp tips left out, if any was measured
 * @param places where lines vanish, the longest first
 */
public record Fates(
    double outlineMm,
    double vanishingMm,
    double riskMm,
    Optional<Feature> smallest,
    Optional<Feature> worst,
    List<Place> places) {
  /** Copies the list. */
  public Fates {
    places = List.copyOf(places);
  }

  /**
   * Neighbouring outline whose line or space vanishes.
   *
   * @param narrowest the one with the least width left over
   * @param lengthMm length of outline there (mm of film)
   */
  public record Place(Feature narrowest, double lengthMm) {}

  /** Share of the outline whose line or space vanishes, 0 to 1. */
  public double vanishingShare() {
    return outlineMm > 0 ? vanishingMm / outlineMm : 0;
  }

  /** Share of the outline at risk, 0 to 1. */
  public double riskShare() {
    return outlineMm > 0 ? riskMm / outlineMm : 0;
  }
}
