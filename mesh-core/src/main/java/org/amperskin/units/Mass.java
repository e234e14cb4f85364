package org.amperskin.units;

/**
 * A mass of metal or chemical.
 *
 * @param kilograms the value (kg), finite
 */
public record Mass(double kilograms) {
  private static final Unit GRAMS = Unit.of("g");

  public Mass {
    if (!Double.isFinite(kilograms)) {
      throw new IllegalArgumentException("mass (" + kilograms + " kg) is not finite");
    }
  }

  /** From a number of g. */
  public static Mass ofGrams(double value) {
    return new Mass(GRAMS.toSi(value));
  }

  /** As a number of g. */
  public double inGrams() {
    return GRAMS.fromSi(kilograms);
  }
}
