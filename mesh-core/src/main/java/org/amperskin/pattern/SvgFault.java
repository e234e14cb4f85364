package org.amperskin.pattern;

/** Something in a drawing that cannot be read; the reader adds path and line. */
final class SvgFault extends RuntimeException {
  private static final long serialVersionUID = 1L;

  SvgFault(String expected, String found) {
    super("expected " + expected + ", found " + shortened(found));
  }

  static void unless(boolean holds, String expected, String found) {
    if (!holds) {
      throw new SvgFault(expected, found);
    }
  }

  /** A name, at most 40 characters of it. */
  static String cut(String name) {
    return name.length() <= 40 ? name : name.substring(0, 37) + "...";
  }

  static String shortened(String text) {
    String line = text.replaceAll("\\s+", " ").strip();
    return "\"" + (line.length() <= 60 ? line : line.substring(0, 57) + "...") + "\"";
  }
}
