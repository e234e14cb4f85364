package org.amperskin.units;

/**
 * Current per area; tanks count in A/dm2, brushes in A/cm2.
 *
 * @param amperesPerSquareMetre the value (A/m2), finite
 */
public record CurrentDensity(double amperesPerSquareMetre) {
  private static final Unit PERDM2 = Unit.of("A/dm2");
  private static final Unit PERCM2 = Unit.of("A/cm2");

  public CurrentDensity {
    if (!Double.isFinite(amperesPerSquareMetre)) {
      throw new IllegalArgumentException(
          "current density (" + amperesPerSquareMetre + " A/m2) is not finite");
    }
  }

  /** From a number of A/dm2. */
  public static CurrentDensity ofPerDm2(double value) {
    return new CurrentDensity(PERDM2.toSi(value));
  }

  /** As a number of A/dm2. */
  public double inPerDm2() {
    return PERDM2.fromSi(amperesPerSquareMetre);
  }

  /** From a number of A/cm2. */
  public static CurrentDensity ofPerCm2(double value) {
    return new CurrentDensity(PERCM2.toSi(value));
  }

  /** As a number of A/cm2. */
  public double inPerCm2() {
    return PERCM2.fromSi(amperesPerSquareMetre);
  }
}
