package org.amperskin.film;

/**
 * What a film is made of: sheets of base with black on them, one on the other.
 *
 * <p>Definition: optical density D = -log10 of the transmitted share; densities of layers add. The
 * black side of the lowest sheet lies on the part, so each further layer lies one base higher.
 *
 * @param layers sheets, one on the other
 * @param densityPerLayer optical density of the black of one sheet in the resist's light
 * @param baseMm thickness of one sheet (mm)
 * @param refractiveIndex of the base
 * @param registrationMm how far layers may lie beside one another (mm)
 */
public record FilmStock(
    int layers,
    double densityPerLayer,
    double baseMm,
    double refractiveIndex,
    double registrationMm) {
  /**
   * Share of light that a clear sheet passes, 0.85: a rule of thumb, common practice, no source.
   */
  public static final double CLEAR_SHEET = 0.85;

  /** How well hand and eye lay one sheet on another (mm): 0.05 to 0.1, common practice. */
  public static final double HAND_REGISTRATION_MM = 0.1;

  /**
   * One printed sheet: black of density 2 (toner and inkjet 2 to 2.5, often less at 365 nm: common
   * practice), base of 0.1 mm and refractive index 1.6 (polyester, from memory).
   */
  public static final FilmStock USUAL = new FilmStock(1, 2, 0.1, 1.6, 0);

  /** Checks the ranges. */
  public FilmStock {
    if (layers < 1 || layers > 4) {
      throw new IllegalArgumentException(layers + " layers of film; 1 to 4 fit");
    }
    require(densityPerLayer > 0 && densityPerLayer <= 10, "density", densityPerLayer, "0 to 10");
    require(baseMm >= 0 && baseMm <= 5, "base (mm)", baseMm, "0 to 5");
    require(refractiveIndex >= 1 && refractiveIndex <= 3, "index", refractiveIndex, "1 to 3");
    require(registrationMm >= 0 && registrationMm <= 5, "registration (mm)", registrationMm, "0-5");
  }

  private static void require(boolean holds, String what, double found, String fits) {
    if (!holds) {
      throw new IllegalArgumentException("film " + what + " " + found + "; " + fits + " fits");
    }
  }

  /** The usual film in a number of layers of a density, further ones laid by hand. */
  public static FilmStock of(int layers, double densityPerLayer) {
    return new FilmStock(
        layers,
        densityPerLayer,
        USUAL.baseMm(),
        USUAL.refractiveIndex(),
        layers > 1 ? HAND_REGISTRATION_MM : 0);
  }

  /** Optical density of all layers together. */
  public double density() {
    return layers * densityPerLayer;
  }

  /** Share of light that passes the black. */
  public double leak() {
    return StrictMath.pow(10, -density());
  }

  /** Share of light that passes where the film is clear. */
  public double clear() {
    return StrictMath.pow(CLEAR_SHEET, layers);
  }

  /**
   * How far a slanting ray moves sideways between the lowest layer and the highest (mm): base x
   * tan(theta') for each further layer, sin theta' = sin theta / refractive index (Snell).
   */
  public double parallaxMm(Light light) {
    double inside =
        StrictMath.asin(StrictMath.sin(Math.toRadians(light.halfAngleDegrees())) / refractiveIndex);
    return (layers - 1) * baseMm * StrictMath.tan(inside);
  }

  /**
   * How far an edge may move to each side: the lamp's penumbra, the parallax of further layers and
   * their registration, added as if all went the same way (mm). Diffraction is kept apart.
   *
   * @param gapMm distance between film and skin along the light (mm)
   */
  public double edgeShiftMm(double gapMm, Light light) {
    return light.penumbraMm(gapMm) + parallaxMm(light) + (layers > 1 ? registrationMm : 0);
  }
}
