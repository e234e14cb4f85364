package org.amperskin.units;

/**
 * Electric charge; platers count it in ampere-hours.
 *
 * @param coulombs the value (C), finite
 */
public record Charge(double coulombs) {
  private static final Unit AMPEREHOURS = Unit.of("A.h");

  public Charge {
    if (!Double.isFinite(coulombs)) {
      throw new IllegalArgumentException("charge (" + coulombs + " C) is not finite");
    }
  }

  /** From a number of C. */
  public static Charge ofCoulombs(double value) {
    return new Charge(value);
  }

  /** From a number of A.h. */
  public static Charge ofAmpereHours(double value) {
    return new Charge(AMPEREHOURS.toSi(value));
  }

  /** As a number of A.h. */
  public double inAmpereHours() {
    return AMPEREHOURS.fromSi(coulombs);
  }
}
