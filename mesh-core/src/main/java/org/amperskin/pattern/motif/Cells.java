package org.amperskin.pattern.motif;

/** Which cells of a regular row meet a window; one more on either side, for what reaches over. */
final class Cells {
  private Cells() {}

  static int first(double from, double step) {
    return (int) Math.floor(from / step) - 1;
  }

  static int last(double to, double step) {
    return (int) Math.ceil(to / step) + 1;
  }
}
