package org.amperskin.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with its dimension, read from what people type and shown as they read.
 *
 * <p>The value is held in the SI-coherent unit of its dimension (m, m2, s, kg, A, A/m2, C, K, a
 * plain ratio for a fraction). Guaranteed: finite; independent of locale; {@code read(shown)} is
 * within the digits shown. Not guaranteed: signs; negative numbers are read, and refused where they
 * make no sense by those who use them. Cost: linear in the text.
 *
 * @param si the value (SI-coherent unit of the dimension)
 * @param dimension what it measures
 */
public record Quantity(double si, Dimension dimension) {
  private static final Pattern NUMBER =
      Pattern.compile("([+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(.*)");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d*,\\d.*");
  private static final int DIGITS = 3;
  private static final double ZERO_CELSIUS_K = 273.15;

  /** Words people write for a unit, and the symbol that is read. */
  private static final Map<String, String> WORDS =
      Map.ofEntries(
          Map.entry("amp", "A"),
          Map.entry("amps", "A"),
          Map.entry("ampere", "A"),
          Map.entry("hr", "h"),
          Map.entry("hrs", "h"),
          Map.entry("hour", "h"),
          Map.entry("hours", "h"),
          Map.entry("sec", "s"),
          Map.entry("secs", "s"),
          Map.entry("seconds", "s"),
          Map.entry("mins", "min"),
          Map.entry("minutes", "min"),
          Map.entry("micron", "um"),
          Map.entry("microns", "um"),
          Map.entry("inch", "in"),
          Map.entry("inches", "in"),
          Map.entry("thou", "mil"),
          Map.entry("mils", "mil"),
          Map.entry("volt", "V"),
          Map.entry("volts", "V"),
          Map.entry("v", "V"),
          Map.entry("gram", "g"),
          Map.entry("grams", "g"),
          Map.entry("litre", "L"),
          Map.entry("liter", "L"),
          Map.entry("percent", "%"),
          Map.entry("degrees", "deg"),
          Map.entry("feet", "ft"),
          Map.entry("a", "A"),
          Map.entry("foot", "ft"));

  public Quantity {
    if (!Double.isFinite(si)) {
      throw new QuantityException(dimension.label() + " is not a finite number: " + si);
    }
  }

  /**
   * Reads a quantity as people type it, for example {@code 2.5 A/dm2}, {@code 25ASF} or {@code 30
   * µm}.
   *
   * @param text number, then unit
   * @param dimension what is wanted
   * @throws QuantityException naming the text, the units that fit and the nearest right word
   */
  public static Quantity parse(String text, Dimension dimension) {
    String stripped = text.strip();
    if (DECIMAL_COMMA.matcher(stripped).matches()) {
      throw new QuantityException(
          "'"
              + text
              + "' has a comma: use a point for decimals and no thousands mark, as in '"
              + stripped.replaceFirst(",", ".")
              + "'");
    }
    Matcher match = NUMBER.matcher(stripped);
    if (!match.matches()) {
      throw new QuantityException(
          "'" + text + "' does not begin with a finite number; " + fits(dimension));
    }
    double number = Double.parseDouble(match.group(1));
    if (!Double.isFinite(number)) {
      throw new QuantityException("'" + text + "' is too large to be a " + dimension.label());
    }
    String unit = match.group(2).strip();
    if (unit.isEmpty()) {
      throw new QuantityException("'" + text + "' has no unit; " + fits(dimension));
    }
    if (dimension == Dimension.TEMPERATURE) {
      return new Quantity(kelvin(number, unit, text), dimension);
    }
    return new Quantity(unit(unit, text, dimension).toSi(number), dimension);
  }

  private static Unit unit(String unitText, String text, Dimension dimension) {
    Unit unit;
    try {
      unit = Unit.of(unitText);
    } catch (QuantityException unknown) {
      throw new QuantityException(
          "'"
              + text
              + "': "
              + unknown.getMessage()
              + hint(unitText, dimension)
              + "; "
              + fits(dimension));
    }
    if (!dimension.fits(unit)) {
      throw new QuantityException(
          "'"
              + text
              + "': "
              + unitText
              + " is not a unit of "
              + dimension.label()
              + hint(unitText, dimension)
              + "; "
              + fits(dimension));
    }
    return unit;
  }

  private static double kelvin(double number, String unit, String text) {
    double kelvin =
        switch (unit.replace("\u00b0", "").replace("deg", "").replace("\u2103", "C").strip()) {
          case "C" -> number + ZERO_CELSIUS_K;
          case "F" -> (number - 32) * 5 / 9 + ZERO_CELSIUS_K;
          case "K" -> number;
          default ->
              throw new QuantityException(
                  "'"
                      + text
                      + "': "
                      + unit
                      + " is not a unit of temperature"
                      + hint(unit, Dimension.TEMPERATURE)
                      + "; "
                      + fits(Dimension.TEMPERATURE));
        };
    if (kelvin < 0) {
      throw new QuantityException("'" + text + "' lies below absolute zero, -273.15 C");
    }
    return kelvin;
  }

  private static String hint(String unit, Dimension dimension) {
    String word = WORDS.get(unit.toLowerCase(java.util.Locale.ROOT));
    if (word != null && dimension.fitting().contains(word)) {
      return " (did you mean '" + word + "'?)";
    }
    // "ohm" where "ohm/sq" is wanted: the longer unit that begins with it
    return dimension.fitting().stream()
        .filter(fit -> fit.startsWith(unit + "/"))
        .findFirst()
        .or(() -> NearestWord.of(unit, dimension.fitting()))
        .map(near -> " (did you mean '" + near + "'?)")
        .orElse("");
  }

  private static String fits(Dimension dimension) {
    return dimension.label() + " takes " + String.join(", ", dimension.fitting());
  }

  /**
   * This as a number of the given unit.
   *
   * @throws QuantityException if the unit measures something else
   */
  public double in(Unit unit) {
    if (!dimension.fits(unit)) {
      throw new QuantityException(
          unit.text() + " is not a unit of " + dimension.label() + "; " + fits(dimension));
    }
    return unit.fromSi(si);
  }

  /** As {@link #show(double, Dimension)}. */
  public String show() {
    return show(si, dimension);
  }

  /**
   * The value in a unit that reads well, to three significant digits.
   *
   * @param si the value (SI-coherent unit of the dimension)
   */
  public static String show(double si, Dimension dimension) {
    return show(si, dimension, DIGITS);
  }

  /**
   * The value in a unit that reads well.
   *
   * @param si the value (SI-coherent unit of the dimension)
   * @param digits significant digits, at least 1
   */
  public static String show(double si, Dimension dimension, int digits) {
    if (dimension == Dimension.TEMPERATURE) {
      return plain(si - ZERO_CELSIUS_K, digits) + " C";
    }
    // a second unit is taken once it reads at least 1, and minutes and hours from 2 on
    double enough = dimension == Dimension.TIME ? 2 : 1;
    Unit best = dimension.shown().get(0);
    for (Unit unit : dimension.shown()) {
      if (Math.abs(new BigDecimal(unit.fromSi(si)).round(new MathContext(digits)).doubleValue())
          >= enough) {
        best = unit;
      }
    }
    return plain(best.fromSi(si), digits) + " " + best.text();
  }

  /**
   * The value in the unit asked for.
   *
   * @param si the value (SI-coherent unit)
   * @param digits significant digits, at least 1
   */
  public static String show(double si, Unit unit, int digits) {
    return plain(unit.fromSi(si), digits) + " " + unit.text();
  }

  /**
   * A plain decimal number with the given significant digits, a point, no grouping, no exponent.
   *
   * @throws QuantityException if it is not finite
   */
  public static String plain(double value, int digits) {
    if (!Double.isFinite(value)) {
      throw new QuantityException("cannot show " + value + ": not a finite number");
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    // 1540.4 at three digits would read 1540 anyway; whole digits are never turned into zeros
    if (rounded.scale() < 0) {
      rounded = BigDecimal.valueOf(value).setScale(0, RoundingMode.HALF_EVEN);
    } else if (rounded.precision() < digits) {
      rounded = rounded.setScale(rounded.scale() + digits - rounded.precision());
    }
    return rounded.toPlainString();
  }
}
