package org.amperskin.units;

/**
 * A volume of liquid or metal.
 *
 * @param cubicMetres the value (m3), finite
 */
public record Volume(double cubicMetres) {
  private static final Unit MM3 = Unit.of("mm3");
  private static final Unit LITRES = Unit.of("L");
  private static final Unit MILLILITRES = Unit.of("mL");

  public Volume {
    if (!Double.isFinite(cubicMetres)) {
      throw new IllegalArgumentException("volume (" + cubicMetres + " m3) is not finite");
    }
  }

  /** From a number of mm3. */
  public static Volume ofMm3(double value) {
    return new Volume(MM3.toSi(value));
  }

  /** As a number of mm3. */
  public double inMm3() {
    return MM3.fromSi(cubicMetres);
  }

  /** From a number of L. */
  public static Volume ofLitres(double value) {
    return new Volume(LITRES.toSi(value));
  }

  /** As a number of L. */
  public double inLitres() {
    return LITRES.fromSi(cubicMetres);
  }

  /** From a number of mL. */
  public static Volume ofMillilitres(double value) {
    return new Volume(MILLILITRES.toSi(value));
  }

  /** As a number of mL. */
  public double inMillilitres() {
    return MILLILITRES.fromSi(cubicMetres);
  }
}
