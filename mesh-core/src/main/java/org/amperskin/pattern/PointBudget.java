package org.amperskin.pattern;

/** Counts the points a drawing costs and refuses when there are too many. */
final class PointBudget {
  static final int LARGEST = 4_000_000;
  private double spent;

  void spend(double points) {
    spent += points;
    SvgFault.unless(
        spent <= LARGEST,
        "at most " + LARGEST + " points after flattening",
        (long) spent + " points");
  }
}
