package org.amperskin.film;

/**
 * A light-sensitive lacquer as it stands on the part.
 *
 * @param thicknessMm thickness (mm)
 * @param doseJPerM2 light that clears it through (J/m2)
 */
public record Resist(double thicknessMm, double doseJPerM2) {
  /**
   * Positive lacquer from a spray can: 8 um (common practice, 4 to 10 um) and 150 mJ/cm2 (100 to
   * 300 mJ/cm2 at 365 to 405 nm, from memory).
   */
  public static final Resist USUAL = new Resist(0.008, 1500);

  /** Checks the ranges. */
  public Resist {
    if (!(thicknessMm > 0 && thicknessMm <= 10)) {
      throw new IllegalArgumentException("resist of " + thicknessMm + " mm; above 0 to 10 fits");
    }
    if (!(doseJPerM2 > 0 && doseJPerM2 < 1e9)) {
      throw new IllegalArgumentException("resist dose " + doseJPerM2 + " J/m2; above zero fits");
    }
  }
}
