package org.amperskin.units;

/**
 * Mass of a metal per volume.
 *
 * @param kilogramsPerCubicMetre the value (kg/m3), finite
 */
public record MassDensity(double kilogramsPerCubicMetre) {
  private static final Unit GRAMSPERCM3 = Unit.of("g/cm3");

  public MassDensity {
    if (!Double.isFinite(kilogramsPerCubicMetre)) {
      throw new IllegalArgumentException(
          "density (" + kilogramsPerCubicMetre + " kg/m3) is not finite");
    }
  }

  /** From a number of g/cm3. */
  public static MassDensity ofGramsPerCm3(double value) {
    return new MassDensity(GRAMSPERCM3.toSi(value));
  }

  /** As a number of g/cm3. */
  public double inGramsPerCm3() {
    return GRAMSPERCM3.fromSi(kilogramsPerCubicMetre);
  }
}
