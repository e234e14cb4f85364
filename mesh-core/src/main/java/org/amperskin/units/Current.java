package org.amperskin.units;

/**
 * Electric current.
 *
 * @param amperes the value (A), finite
 */
public record Current(double amperes) {

  public Current {
    if (!Double.isFinite(amperes)) {
      throw new IllegalArgumentException("current (" + amperes + " A) is not finite");
    }
  }

  /** From a number of A. */
  public static Current ofAmperes(double value) {
    return new Current(value);
  }
}
