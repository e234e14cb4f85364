package org.amperskin.units;

/**
 * A distance.
 *
 * @param metres the value (m), finite
 */
public record Length(double metres) {
  private static final Unit UM = Unit.of("um");
  private static final Unit MM = Unit.of("mm");

  public Length {
    if (!Double.isFinite(metres)) {
      throw new IllegalArgumentException("length (" + metres + " m) is not finite");
    }
  }

  /** From a number of um. */
  public static Length ofUm(double value) {
    return new Length(UM.toSi(value));
  }

  /** As a number of um. */
  public double inUm() {
    return UM.fromSi(metres);
  }

  /** From a number of mm. */
  public static Length ofMm(double value) {
    return new Length(MM.toSi(value));
  }

  /** As a number of mm. */
  public double inMm() {
    return MM.fromSi(metres);
  }

  /** From a number of m. */
  public static Length ofMetres(double value) {
    return new Length(value);
  }
}
