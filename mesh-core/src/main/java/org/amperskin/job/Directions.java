package org.amperskin.job;

import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.amperskin.geom.Vec3;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.units.Unit;

/** Reads directions, points and numbers of tiles as people type them. */
public final class Directions {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

  private static final Pattern TILES = Pattern.compile("(\\d{1,3})\\s*x\\s*(\\d{1,3})");

  private static final Pattern UNIT = Pattern.compile("[\\d.+eE -]+(.*)");

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
        Vec3 v = numbers(text, text.strip().split("[\\s,]+"), 3);
        if (!(v.length() > 0) || Double.isInfinite(v.length())) {
          throw new IllegalArgumentException(
              "direction '" + text + "' has length " + v.length() + " and so points nowhere");
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
    double mm = millimetresPer(words[3]);
    return numbers(text, words, 4).times(mm);
  }

  /**
   * Millimetres in one unit of length such as {@code in}.
   *
   * @throws IllegalArgumentException saying what fits
   */
  public static double millimetresPer(String unit) {
    try {
      return Quantity.parse("1 " + unit, Dimension.LENGTH).in(Unit.of("mm"));
    } catch (QuantityException bad) {
      throw new IllegalArgumentException(
          "'" + unit + "' is not a unit of length; mm, cm, m, um, in, mil, ft fit", bad);
    }
  }

  private static Vec3 numbers(String text, String[] words, int expected) {
    if (words.length != expected) {
      throw new IllegalArgumentException(
          "direction '" + text + "': -z, +y or three numbers such as '0.2 0 -1' fit");
    }
    double[] v = new double[3];
    for (int k = 0; k < 3; k++) {
      if (!NUMBER.matcher(words[k]).matches() || !Double.isFinite(Double.parseDouble(words[k]))) {
        throw new IllegalArgumentException("'" + words[k] + "' in '" + text + "' is not a number");
      }
      v[k] = Double.parseDouble(words[k]);
    }
    return new Vec3(v[0], v[1], v[2]);
  }

  /**
   * How often artwork is repeated: {@code 3x2} is three across and two upward.
   *
   * @return columns and rows
   * @throws IllegalArgumentException saying what fits
   */
  public static int[] tiles(String text) {
    Matcher m = TILES.matcher(text.strip());
    if (!m.matches()) {
      throw new IllegalArgumentException("'" + text + "': columns x rows fit, such as '3 x 2'");
    }
    return new int[] {Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2))};
  }

  /**
   * The size of a sheet in mm: {@code 120 x 80 mm}, {@code 120x80mm} or {@code 5in x 80mm}.
   *
   * @return width and height (mm)
   * @throws IllegalArgumentException saying what fits
   */
  public static double[] size(String text) {
    return sides(text, 2, "width x height fit, such as '120 x 80 mm'");
  }

  /**
   * A block, three lengths: {@code 300 x 200 x 250 mm}.
   *
   * @return length, width, depth (mm)
   * @throws IllegalArgumentException saying what fits
   */
  public static double[] block(String text) {
    return sides(text, 3, "length x width x depth fit, such as '300 x 200 x 250 mm'");
  }

  /** Lengths (mm) with an x between them; a bare number takes the last one's unit. */
  private static double[] sides(String text, int count, String fits) {
    String[] sides = text.strip().split("\\s*x\\s*", -1);
    if (sides.length != count || Arrays.stream(sides).anyMatch(String::isBlank)) {
      throw new IllegalArgumentException("size '" + text + "': " + fits);
    }
    Matcher unit = UNIT.matcher(sides[count - 1]);
    double[] mm = new double[count];
    for (int k = 0; k < count; k++) {
      boolean bare = k < count - 1 && unit.matches() && sides[k].matches("[\\d.+-]+");
      try {
        String side = bare ? sides[k] + " " + unit.group(1) : sides[k];
        mm[k] = Quantity.parse(side, Dimension.LENGTH).in(Unit.of("mm"));
      } catch (QuantityException bad) {
        throw new IllegalArgumentException("size '" + text + "': " + bad.getMessage(), bad);
      }
    }
    return mm;
  }
}
