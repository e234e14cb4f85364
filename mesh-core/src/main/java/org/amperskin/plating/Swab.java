package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The tool of a brush step.
 *
 * @param contactAreaMm2 area that touches the work (mm2), if known
 * @param widthMm width across its movement (mm), if known; else the side of a square of its area
 * @param speedMPerMin speed over the work (m/min), if not the recipe's
 * @param coverMm thickness of the wrap (mm), if not the usual 4 mm
 * @param basis how the contact area comes about, if it is not simply told
 */
public record Swab(
    OptionalDouble contactAreaMm2,
    OptionalDouble widthMm,
    OptionalDouble speedMPerMin,
    OptionalDouble coverMm,
    Optional<String> basis) {
  public Swab {
    contactAreaMm2.ifPresent(v -> Faraday.positive("contact area of the swab", v, "mm2"));
    widthMm.ifPresent(v -> Faraday.positive("width of the swab", v, "mm"));
    speedMPerMin.ifPresent(v -> Faraday.positive("speed of the swab", v, "m/min"));
    coverMm.ifPresent(v -> Faraday.positive("wrap of the swab", v, "mm"));
  }

  /** A swab whose contact area is told, or not at all. */
  public Swab(
      OptionalDouble contactAreaMm2,
      OptionalDouble widthMm,
      OptionalDouble speedMPerMin,
      OptionalDouble coverMm) {
    this(contactAreaMm2, widthMm, speedMPerMin, coverMm, Optional.empty());
  }

  /** A swab of which nothing is known. */
  public static Swab unknown() {
    OptionalDouble none = OptionalDouble.empty();
    return new Swab(none, none, none, none);
  }

  /** A swab with a known contact area. */
  public static Swab ofContact(double areaMm2) {
    OptionalDouble none = OptionalDouble.empty();
    return new Swab(OptionalDouble.of(areaMm2), none, none, none);
  }

  /** Voltage lost in the wrap: i t / (kappa porosity^1.5), and so the heat in it. */
  static double coverDropV(
      double densityAm2, double coverM, double conductivitySPerM, double porosity) {
    return densityAm2 * coverM / (conductivitySPerM * Math.pow(porosity, 1.5));
  }
}
