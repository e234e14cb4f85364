package org.amperskin.units;

/**
 * A surface area.
 *
 * @param squareMetres the value (m2), finite
 */
public record Area(double squareMetres) {
  private static final Unit MM2 = Unit.of("mm2");
  private static final Unit CM2 = Unit.of("cm2");
  private static final Unit DM2 = Unit.of("dm2");

  public Area {
    if (!Double.isFinite(squareMetres)) {
      throw new IllegalArgumentException("area (" + squareMetres + " m2) is not finite");
    }
  }

  /** From a number of mm2. */
  public static Area ofMm2(double value) {
    return new Area(MM2.toSi(value));
  }

  /** As a number of mm2. */
  public double inMm2() {
    return MM2.fromSi(squareMetres);
  }

  /** From a number of cm2. */
  public static Area ofCm2(double value) {
    return new Area(CM2.toSi(value));
  }

  /** As a number of cm2. */
  public double inCm2() {
    return CM2.fromSi(squareMetres);
  }

  /** From a number of dm2. */
  public static Area ofDm2(double value) {
    return new Area(DM2.toSi(value));
  }

  /** As a number of dm2. */
  public double inDm2() {
    return DM2.fromSi(squareMetres);
  }
}
