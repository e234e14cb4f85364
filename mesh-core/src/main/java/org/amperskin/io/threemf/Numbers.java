package org.amperskin.io.threemf;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;

/** Numbers as the standard's schema writes them: ST_Number and ST_ResourceIndex. */
final class Numbers {
  private Numbers() {}

  /** A decimal number, NaN if the text is none. */
  static double real(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && text.charAt(from) <= ' ') {
      from++;
    }
    while (from < to && text.charAt(to - 1) <= ' ') {
      to--;
    }
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      // Keeps out what Java would read as well: hexadecimal, suffixes, words.
      if ((c < '0' || c > '9') && c != '.' && c != '-' && c != '+' && c != 'e' && c != 'E') {
        return Double.NaN;
      }
    }
    try {
      return from == to ? Double.NaN : JavaDoubleParser.parseDouble(text, from, to - from);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** A whole number from 0 to 2^31 - 1, -1 if the text is none. */
  static int index(String text) {
    String s = text.strip();
    if (s.isEmpty() || s.length() > 10) {
      return -1;
    }
    long value = 0;
    for (int i = 0; i < s.length(); i++) {
      int digit = s.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      value = 10 * value + digit;
    }
    return value > Integer.MAX_VALUE ? -1 : (int) value;
  }
}
