package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads numbers, lengths and number lists as W3C SVG 1.1 section 4.2 and SVG 2 section 9.3.9 write
 * them: {@code 1.5.5-2e3} is three numbers, flags may stand without a gap.
 */
final class SvgNumbers {
  /** Millimetres per unit; CSS Values and Units 3, section 6.2: 1 in = 25.4 mm = 96 px. */
  static final double MM_PER_IN = 25.4;

  static final double MM_PER_PX = MM_PER_IN / 96;

  private final String text;
  private int at;

  SvgNumbers(String text) {
    this.text = text;
  }

  /** Skips white space and at most one comma; true if something is left. */
  boolean more() {
    skipSpace();
    if (at < text.length() && text.charAt(at) == ',') {
      at++;
      skipSpace();
    }
    return at < text.length();
  }

  /** The next character without moving, or 0 at the end. */
  char peek() {
    return at < text.length() ? text.charAt(at) : 0;
  }

  char take() {
    return text.charAt(at++);
  }

  /** Whether a number starts here. */
  boolean atNumber() {
    char c = peek();
    return c >= '0' && c <= '9' || c == '.' || c == '-' || c == '+';
  }

  boolean flag() {
    more();
    char c = peek();
    SvgFault.unless(c == '0' || c == '1', "an arc flag 0 or 1", rest());
    at++;
    return c == '1';
  }

  double number() {
    more();
    int begin = at;
    if (peek() == '+' || peek() == '-') {
      at++;
    }
    int digits = digits();
    if (peek() == '.') {
      at++;
      digits += digits();
    }
    if (digits == 0) {
      at = begin;
      throw new SvgFault("a number", rest());
    }
    exponent();
    double value = Double.parseDouble(text.substring(begin, at));
    SvgFault.unless(Math.abs(value) < 1e12, "a number below 1e12", text.substring(begin, at));
    return value;
  }

  /** All numbers of a list. */
  static double[] list(String text) {
    SvgNumbers in = new SvgNumbers(text);
    List<Double> out = new ArrayList<>();
    while (in.more()) {
      out.add(in.number());
    }
    return out.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** A lone number. */
  static double single(String text) {
    SvgNumbers in = new SvgNumbers(text.strip());
    double value = in.number();
    SvgFault.unless(in.at == in.text.length(), "one number", text);
    return value;
  }

  /** A number with its unit, lower case ("" for none, "%" for percent). */
  record Length(double value, String unit) {
    /** Whether the unit hangs on the size of the font. */
    boolean ofFont() {
      return unit.equals("em") || unit.equals("ex") || unit.equals("rem");
    }

    /**
     * The length in mm; NaN for none, percent and units that hang on a font or window. Ratios of
     * whole numbers keep 144pt and 192px at exactly 50.8 mm.
     */
    double mm() {
      return switch (unit) {
        case "mm" -> value;
        case "cm" -> value * 10;
        case "q" -> value / 4;
        case "in" -> value * 127 / 5;
        case "pt" -> value * 127 / 360;
        case "pc" -> value * 127 / 30;
        case "px" -> value * 127 / 480;
        default -> Double.NaN;
      };
    }
  }

  static Length length(String text) {
    SvgNumbers in = new SvgNumbers(text.strip());
    double value = in.number();
    String unit = in.text.substring(in.at).strip().toLowerCase(Locale.ROOT);
    Length length = new Length(value, unit);
    SvgFault.unless(
        unit.isEmpty() || unit.equals("%") || length.ofFont() || !Double.isNaN(length.mm()),
        "a length in mm, cm, Q, in, pt, pc, px, em, ex, rem, % or without unit",
        text);
    return length;
  }

  String rest() {
    return text.substring(Math.min(at, text.length()));
  }

  private void exponent() {
    int before = at;
    if (peek() == 'e' || peek() == 'E') {
      at++;
      if (peek() == '+' || peek() == '-') {
        at++;
      }
      if (digits() == 0) {
        at = before;
      }
    }
  }

  private int digits() {
    int begin = at;
    while (peek() >= '0' && peek() <= '9') {
      at++;
    }
    return at - begin;
  }

  private void skipSpace() {
    while (at < text.length() && " \t\r\n\f".indexOf(text.charAt(at)) >= 0) {
      at++;
    }
  }
}
