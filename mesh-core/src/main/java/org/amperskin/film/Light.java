package org.amperskin.film;

import java.util.OptionalDouble;

/**
 * The lamp that exposes the resist.
 *
 * <p>Definition: seen from the film, the lamp fills a cone of the given half-angle; its irradiance
 * is that on a surface square to it.
 *
 * @param halfAngleDegrees half of the angle under which the lamp is seen (deg); 0 for parallel
 *     light
 * @param irradianceWPerM2 light that falls on the film (W/m2), if known
 */
public record Light(double halfAngleDegrees, OptionalDouble irradianceWPerM2) {
  /** Wavelength that resists of this sort take (mm): the mercury i line, 365 nm. */
  public static final double WAVELENGTH_MM = 365e-6;

  /** A small lamp at a distance, 5 deg: a rule of thumb, common practice, no source. */
  public static final Light USUAL = new Light(5, OptionalDouble.empty());

  /** Checks the ranges. */
  public Light {
    if (!(halfAngleDegrees >= 0 && halfAngleDegrees <= 60)) {
      throw new IllegalArgumentException(
          "half-angle of the light " + halfAngleDegrees + " deg; 0 to 60 fits");
    }
    if (irradianceWPerM2.isPresent()
        && !(irradianceWPerM2.getAsDouble() > 0 && irradianceWPerM2.getAsDouble() < 1e9)) {
      throw new IllegalArgumentException(
          "irradiance " + irradianceWPerM2.getAsDouble() + " W/m2; above zero fits");
    }
  }

  /**
   * How far an edge is smeared to each side by the lamp's size: gap x tan(half-angle), geometry.
   *
   * @param gapMm distance between film and skin along the light (mm)
   */
  public double penumbraMm(double gapMm) {
    return gapMm * StrictMath.tan(Math.toRadians(halfAngleDegrees));
  }

  /**
   * The narrowest line that diffraction lets through: 1.5 sqrt(wavelength (gap + resist / 2)).
   *
   * <p>Source: M. Madou, Fundamentals of Microfabrication, resolution of proximity printing, from
   * memory.
   *
   * @param gapMm distance between film and skin (mm)
   * @param resistMm thickness of the resist (mm)
   */
  public static double diffractionMm(double gapMm, double resistMm) {
    return 1.5 * Math.sqrt(WAVELENGTH_MM * (gapMm + resistMm / 2));
  }
}
