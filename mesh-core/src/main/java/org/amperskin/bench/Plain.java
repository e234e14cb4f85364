package org.amperskin.bench;

import org.amperskin.units.Quantity;

/** Numbers in messages: up to four digits, no zeros behind the point. */
final class Plain {
  private static final int DIGITS = 4;

  private Plain() {}

  static String of(double value) {
    String text = Quantity.plain(value, DIGITS);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  /** A share of one as a percentage. */
  static String percent(double share) {
    return of(100 * share) + " %";
  }
}
