package org.amperskin.units;

import java.util.Arrays;

/**
 * A unit of measurement as people write it, with its exact factor to SI.
 *
 * <p>Symbols combine with {@code .}, {@code *}, {@code ·} or a space (times), {@code /} (per, read
 * from left to right), brackets and whole exponents ({@code dm2}, {@code dm^2}, {@code dm²}).
 * Guaranteed: factors are exact ratios, so whole numbers convert to the nearest double. Not
 * guaranteed: offsets; a temperature scale is read by {@link Quantity} alone. Cost: linear in the
 * text.
 */
public final class Unit {
  private final String text;
  private final double num;
  private final double den;
  private final int[] powers;

  Unit(String text, double num, double den, int[] powers) {
    this.text = text;
    this.num = num;
    this.den = den;
    this.powers = powers.clone();
  }

  /**
   * Reads a unit.
   *
   * @param text for example {@code A.h/(dm2.um)}
   * @throws QuantityException naming the symbol that is not known
   */
  public static Unit of(String text) {
    return new UnitParser(text).parse();
  }

  /**
   * @param value a number of these units
   * @return the same in the SI-coherent unit
   */
  public double toSi(double value) {
    return value * num / den;
  }

  /**
   * @param siValue a value in the SI-coherent unit
   * @return the same as a number of these units
   */
  public double fromSi(double siValue) {
    return siValue * den / num;
  }

  /** This times another (sign 1) or per another (sign -1). */
  Unit times(Unit other, int sign, String name) {
    int[] sum = powers.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += sign * other.powers[i];
    }
    return sign > 0
        ? new Unit(name, num * other.num, den * other.den, sum)
        : new Unit(name, num * other.den, den * other.num, sum);
  }

  /** Whether both measure the same kind of thing. */
  boolean sameKind(Unit other) {
    return Arrays.equals(powers, other.powers);
  }

  /** The unit as it was written. */
  public String text() {
    return text;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Unit that
        && Double.compare(num / den, that.num / that.den) == 0
        && sameKind(that);
  }

  @Override
  public int hashCode() {
    return Double.hashCode(num / den) * 31 + Arrays.hashCode(powers);
  }

  @Override
  public String toString() {
    return text;
  }
}
