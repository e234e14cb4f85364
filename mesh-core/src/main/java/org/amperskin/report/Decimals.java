package org.amperskin.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers in drawings: plain decimals, no exponent, no needless zeros. */
final class Decimals {
  private static final int MOST_PLACES = 9;
  private static final double EXACT = 1e15;

  private Decimals() {}

  /**
   * A number rounded to some places.
   *
   * @param value a finite number
   * @param places digits after the point, 1 to 9
   */
  static String of(double value, int places) {
    if (places < 1 || places > MOST_PLACES) {
      throw new IllegalArgumentException(places + " places");
    }
    double factor = Math.pow(10, places);
    double scaled = Math.rint(value * factor);
    if (Math.abs(scaled) < EXACT) {
      long all = (long) scaled;
      String digits = Long.toString(Math.abs(all));
      StringBuilder out = new StringBuilder(digits);
      while (out.length() <= places) {
        out.insert(0, '0');
      }
      out.insert(out.length() - places, '.');
      int end = out.length();
      while (out.charAt(end - 1) == '0') {
        end--;
      }
      out.setLength(out.charAt(end - 1) == '.' ? end - 1 : end);
      return all < 0 ? "-" + out : out.toString();
    }
    return new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
  }
}
