package org.amperskin.units;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The one table of conversion factors: every unit symbol with its factor to SI as an exact ratio of
 * two numbers, so that 30 um is 30/1e6 m and not 30 times a rounded 1e-6.
 *
 * <p>Inch, foot, ounce (avoirdupois) and US gallon are exact by definition: international yard and
 * pound agreement of 1959, and 231 cubic inches to the US gallon (NIST Special Publication 811,
 * Appendix B).
 */
final class UnitSymbols {
  /** Order of the powers in every array: m, kg, s, A, K, rad, square (sheet), mol. */
  static final int BASES = 8;

  /** A symbol: SI value = value * num / den. */
  record Symbol(double num, double den, boolean takesPrefix, int... powers) {
    Symbol {
      powers = java.util.Arrays.copyOf(powers, BASES);
    }
  }

  private static final Map<String, Symbol> SYMBOLS = new LinkedHashMap<>();
  private static final Map<String, double[]> PREFIXES = new LinkedHashMap<>();

  static {
    SYMBOLS.put("m", new Symbol(1, 1, true, 1));
    SYMBOLS.put("in", new Symbol(254, 1e4, false, 1));
    SYMBOLS.put("mil", new Symbol(254, 1e7, false, 1));
    SYMBOLS.put("ft", new Symbol(3048, 1e4, false, 1));
    SYMBOLS.put("L", new Symbol(1, 1e3, true, 3));
    SYMBOLS.put("l", new Symbol(1, 1e3, true, 3));
    SYMBOLS.put("gal", new Symbol(3785411784.0, 1e12, false, 3));
    SYMBOLS.put("g", new Symbol(1, 1e3, true, 0, 1));
    SYMBOLS.put("oz", new Symbol(28349523125.0, 1e12, false, 0, 1));
    SYMBOLS.put("s", new Symbol(1, 1, true, 0, 0, 1));
    SYMBOLS.put("min", new Symbol(60, 1, false, 0, 0, 1));
    SYMBOLS.put("h", new Symbol(3600, 1, false, 0, 0, 1));
    SYMBOLS.put("A", new Symbol(1, 1, true, 0, 0, 0, 1));
    SYMBOLS.put("Ah", new Symbol(3600, 1, true, 0, 0, 1, 1));
    SYMBOLS.put("C", new Symbol(1, 1, true, 0, 0, 1, 1));
    SYMBOLS.put("V", new Symbol(1, 1, true, 2, 1, -3, -1));
    SYMBOLS.put("ohm", new Symbol(1, 1, true, 2, 1, -3, -2));
    SYMBOLS.put("S", new Symbol(1, 1, true, -2, -1, 3, 2));
    SYMBOLS.put("W", new Symbol(1, 1, true, 2, 1, -3));
    SYMBOLS.put("J", new Symbol(1, 1, true, 2, 1, -2));
    SYMBOLS.put("K", new Symbol(1, 1, false, 0, 0, 0, 0, 1));
    SYMBOLS.put("rad", new Symbol(1, 1, true, 0, 0, 0, 0, 0, 1));
    SYMBOLS.put("deg", new Symbol(Math.PI, 180, false, 0, 0, 0, 0, 0, 1));
    SYMBOLS.put("sq", new Symbol(1, 1, false, 0, 0, 0, 0, 0, 0, 1));
    SYMBOLS.put("mol", new Symbol(1, 1, true, 0, 0, 0, 0, 0, 0, 0, 1));
    SYMBOLS.put("%", new Symbol(1, 100, false));
    SYMBOLS.put("ppm", new Symbol(1, 1e6, false));
    // shop words for amperes per square foot, inch and decimetre
    SYMBOLS.put("ASF", new Symbol(1e8, 3048.0 * 3048.0, false, -2, 0, 0, 1));
    SYMBOLS.put("ASI", new Symbol(1e8, 254.0 * 254.0, false, -2, 0, 0, 1));
    SYMBOLS.put("ASD", new Symbol(100, 1, false, -2, 0, 0, 1));
    PREFIXES.put("n", new double[] {1, 1e9});
    PREFIXES.put("u", new double[] {1, 1e6});
    PREFIXES.put("m", new double[] {1, 1e3});
    PREFIXES.put("c", new double[] {1, 1e2});
    PREFIXES.put("d", new double[] {1, 10});
    PREFIXES.put("k", new double[] {1e3, 1});
    PREFIXES.put("M", new double[] {1e6, 1});
  }

  private UnitSymbols() {}

  /** The symbol, with its prefix applied, or null when it is none of ours. */
  static Symbol find(String text) {
    Symbol whole = SYMBOLS.get(text);
    if (whole != null) {
      return whole;
    }
    if (text.length() < 2) {
      return null;
    }
    double[] prefix = PREFIXES.get(text.substring(0, 1));
    Symbol rest = SYMBOLS.get(text.substring(1));
    if (prefix == null || rest == null || !rest.takesPrefix) {
      return null;
    }
    return new Symbol(rest.num * prefix[0], rest.den * prefix[1], false, rest.powers);
  }
}
