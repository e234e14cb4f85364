package org.amperskin.film;

/**
 * A strip beside one edge of a film's cut outline, to be glued under the edge it meets when the
 * film closes round the part.
 *
 * <p>Definition: the flap lies on the right of the walk from {@code (x0, y0)} to {@code (x1, y1)},
 * which is the outer side of an outline that runs counter-clockwise; its ends slope by 45 degrees.
 *
 * @param x0 start (film mm)
 * @param y0 start (film mm)
 * @param x1 end (film mm)
 * @param y1 end (film mm)
 * @param widthMm how far it reaches out (mm)
 * @param label what to glue it under
 */
public record Flap(double x0, double y0, double x1, double y1, double widthMm, String label) {
  /** Checks the sizes. */
  public Flap {
    if (!(widthMm > 0) || !(Math.hypot(x1 - x0, y1 - y0) > 0)) {
      throw new IllegalArgumentException(
          "glue flap of " + Math.hypot(x1 - x0, y1 - y0) + " x " + widthMm + " mm");
    }
  }

  /** Length of the edge it is glued along (mm). */
  public double lengthMm() {
    return Math.hypot(x1 - x0, y1 - y0);
  }

  /** Its outline. */
  Outline outline() {
    double length = lengthMm();
    double ux = (x1 - x0) / length;
    double uy = (y1 - y0) / length;
    double in = Math.min(widthMm, 0.4 * length);
    return Outline.of(
        java.util.List.of(
            new double[] {
              x0,
              y0,
              x0 + in * ux + widthMm * uy,
              y0 + in * uy - widthMm * ux,
              x1 - in * ux + widthMm * uy,
              y1 - in * uy - widthMm * ux,
              x1,
              y1
            }));
  }

  Flap mirrored(double aboutX) {
    return new Flap(2 * aboutX - x1, y1, 2 * aboutX - x0, y0, widthMm, label);
  }
}
