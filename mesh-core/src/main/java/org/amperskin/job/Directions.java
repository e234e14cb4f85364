package org.amperskin.job;

import java.util.Locale;
import org.amperskin.geom.Vec3;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;

/** Reads directions and points as people type them. */
public final class Directions {
  private Directions() {}

  /**
   * A direction: {@code -z}, {@code +y}, {@code x} or three numbers, {@code 0.2 0 -1}.
   *
   * @throws IllegalArgumentException saying what fits
   */
  public static Vec3 direction(String text) {
    String t = text.strip().toLowerCase(Locale.ROOT);
    String axis = t.startsWith("+") || t.startsWith("-") ? t.substring(1) : t;
    double sign = t.startsWith("-") ? -1 : 1;
    switch (axis) {
      case "x":
        return new Vec3(sign, 0, 0);
      case "y":
        return new Vec3(0, sign, 0);
      case "z":
        return new Vec3(0, 0, sign);
      default:
        Vec3 v = numbers(text, t.split("[\\s,]+"), 3);
        if (v.length() == 0) {
          throw new IllegalArgumentException("direction '" + text + "' has no length");
        }
        return v;
    }
  }

  /**
   * A point in mm: three numbers and a unit, {@code 0 12.5 -3 mm}.
   *
   * @throws IllegalArgumentException saying what fits
   */
  public static Vec3 point(String text) {
    String[] words = text.strip().split("[\\s,]+");
    if (words.length != 4) {
      throw new IllegalArgumentException(
          "point '" + text + "': three numbers and a unit fit, for example '0 12.5 -3 mm'");
    }
    double mm = millimetres("1 " + words[3]);
    return numbers(text, words, 4).times(mm);
  }

  /** Millimetres of a length such as {@code 1 in}. */
  static double millimetres(String length) {
    try {
      return Quantity.parse(length, Dimension.LENGTH).in(org.amperskin.units.Unit.of("mm"));
    } catch (QuantityException bad) {
      throw new IllegalArgumentException(bad.getMessage(), bad);
    }
  }

  private static Vec3 numbers(String text, String[] words, int expected) {
    if (words.length != expected) {
      throw new IllegalArgumentException(
          "direction '" + text + "': -z, +y or three numbers such as '0.2 0 -1' fit");
    }
    double[] v = new double[3];
    for (int k = 0; k < 3; k++) {
      try {
        v[k] = Double.parseDouble(words[k]);
      } catch (NumberFormatException bad) {
        throw new IllegalArgumentException("'" + words[k] + "' in '" + text + "' is not a number");
      }
    }
    return new Vec3(v[0], v[1], v[2]);
  }
}
