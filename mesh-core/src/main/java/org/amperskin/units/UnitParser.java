package org.amperskin.units;

/** Reads a unit by recursive descent: product := power (times power | per power)*. */
final class UnitParser {
  private static final int LARGEST_EXPONENT = 9;

  private final String original;
  private final String text;
  private int at;

  UnitParser(String original) {
    this.original = original.strip();
    this.text = plain(this.original);
  }

  /** One spelling for the many: both mu code points, ohm signs, superscripts, dots. */
  private static String plain(String text) {
    return text.replace('\u00b5', 'u') // micro sign
        .replace('\u03bc', 'u') // Greek mu
        .replace("\u03a9", "ohm")
        .replace("\u2126", "ohm")
        .replace("\u25a1", "sq")
        .replace("\u00b0", "deg")
        .replace('\u00b9', '1')
        .replace('\u00b2', '2')
        .replace('\u00b3', '3')
        .replace('\u207b', '-')
        .replace('\u2212', '-')
        .replace('\u00b7', '.')
        .replace('\u22c5', '.')
        .replace('*', '.')
        .replaceAll("\\s*/\\s*", "/")
        .replaceAll("\\s*\\.\\s*", ".")
        .replaceAll("\\s+", ".");
  }

  Unit parse() {
    if (text.isEmpty()) {
      throw new QuantityException("no unit given in '" + original + "'");
    }
    Unit unit = product();
    if (at < text.length()) {
      throw unreadable(text.substring(at));
    }
    return unit;
  }

  private Unit product() {
    Unit unit = power();
    while (at < text.length() && (text.charAt(at) == '.' || text.charAt(at) == '/')) {
      int sign = text.charAt(at) == '/' ? -1 : 1;
      at++;
      unit = times(unit, power(), sign);
    }
    return unit;
  }

  private Unit power() {
    Unit base;
    if (at < text.length() && text.charAt(at) == '(') {
      at++;
      base = product();
      if (at >= text.length() || text.charAt(at) != ')') {
        throw new QuantityException("bracket not closed in unit '" + original + "'");
      }
      at++;
    } else {
      base = symbol();
    }
    int exponent = exponent();
    if (exponent == 0 || Math.abs(exponent) > LARGEST_EXPONENT) {
      throw new QuantityException("exponent " + exponent + " in unit '" + original + "'");
    }
    Unit unit = base;
    for (int i = 1; i < Math.abs(exponent); i++) {
      unit = times(unit, base, 1);
    }
    Unit one = new Unit(original, 1, 1, new int[UnitSymbols.BASES]);
    return exponent < 0 ? times(one, unit, -1) : unit;
  }

  private Unit symbol() {
    int start = at;
    while (at < text.length() && (Character.isLetter(text.charAt(at)) || text.charAt(at) == '%')) {
      at++;
    }
    String name = text.substring(start, at);
    UnitSymbols.Symbol symbol = name.isEmpty() ? null : UnitSymbols.find(name);
    if (symbol == null) {
      throw unreadable(name.isEmpty() ? text.substring(start) : name);
    }
    return new Unit(original, symbol.num(), symbol.den(), symbol.powers());
  }

  private int exponent() {
    if (at < text.length() && text.charAt(at) == '^') {
      at++;
    }
    int sign = 1;
    if (at + 1 < text.length() && text.charAt(at) == '-') {
      sign = -1;
      at++;
    }
    int start = at;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    if (at == start) {
      return sign;
    }
    return at - start > 1 ? LARGEST_EXPONENT + 1 : sign * (text.charAt(start) - '0');
  }

  private Unit times(Unit a, Unit b, int sign) {
    return a.times(b, sign, original);
  }

  private QuantityException unreadable(String what) {
    return new QuantityException("'" + what + "' is not a unit known here, in '" + original + "'");
  }
}
