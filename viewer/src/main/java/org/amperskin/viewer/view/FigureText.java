package org.amperskin.viewer.view;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers as people read them, with a point for decimals on every machine. */
final class FigureText {
  private static final MathContext FOUR_DIGITS = new MathContext(4);

  private FigureText() {}

  /** Four significant digits without an exponent: 0.1780, 12.35, 1540. */
  static String fourDigits(double value) {
    if (value == 0 || !Double.isFinite(value)) {
      return value == 0 ? "0" : Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(FOUR_DIGITS);
    int decimals = Math.max(0, 4 - rounded.precision() + rounded.scale());
    return rounded.setScale(decimals).toPlainString();
  }

  /** Area in dm2 with four decimals, from mm2. */
  static String squareDecimetres(double areaMm2) {
    return String.format(Locale.ROOT, "%.4f", areaMm2 / 1e4);
  }

  /** A share as per cent with one decimal, without the sign. */
  static String perCent(double share) {
    return String.format(Locale.ROOT, "%.1f", 100 * share);
  }

  /** "45 s", "25 min 40 s", "3 h 05 min". */
  static String duration(double seconds) {
    long s = Math.round(seconds);
    if (s < 60) {
      return s < 10 ? fourDigits(seconds) + " s" : s + " s";
    }
    if (s < 3600) {
      return s % 60 == 0 ? s / 60 + " min" : String.format("%d min %02d s", s / 60, s % 60);
    }
    long min = Math.round(seconds / 60);
    return String.format("%d h %02d min", min / 60, min % 60);
  }
}
