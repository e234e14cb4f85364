package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.List;

/** Makes larger sheets of artwork: tiles of it, or a frame round it. */
public final class Sheets {
  private Sheets() {}

  /**
   * The artwork side by side.
   *
   * @param columns how often across
   * @param rows how often upward
   * @return one sheet with the tiles' common borders merged, centred as the whole
   */
  public static Artwork repeated(Artwork artwork, int columns, int rows) {
    if (columns < 1 || rows < 1) {
      throw new IllegalArgumentException(
          "repeat " + columns + "x" + rows + ": at least one column and one row fit, as 3x2");
    }
    int points = artwork.edgeCount();
    int tiles = Math.multiplyExact(columns, rows);
    if (tiles == 1) {
      return artwork;
    }
    double[] xy = new double[Math.multiplyExact(2 * points, tiles)];
    int rings = artwork.ringCount();
    int[] starts = new int[rings * tiles + 1];
    for (int t = 0; t < tiles; t++) {
      double dx = (t % columns - (columns - 1) / 2.0) * artwork.widthMm();
      double dy = (t / columns - (rows - 1) / 2.0) * artwork.heightMm();
      for (int p = 0; p < points; p++) {
        xy[2 * (t * points + p)] = artwork.xy()[2 * p] + dx;
        xy[2 * (t * points + p) + 1] = artwork.xy()[2 * p + 1] + dy;
      }
      for (int r = 0; r < rings; r++) {
        starts[t * rings + r + 1] = t * points + artwork.ringStarts()[r + 1];
      }
    }
    return Artwork.cleaned(
        columns * artwork.widthMm(),
        rows * artwork.heightMm(),
        xy,
        starts,
        artwork.flatteningMm(),
        artwork.notes());
  }

  /**
   * The artwork on a larger sheet.
   *
   * @param widthMm least width of the new sheet (mm)
   * @param heightMm least height of the new sheet (mm)
   * @param opaque whether what is added is opaque
   */
  public static Artwork surrounded(
      Artwork artwork, double widthMm, double heightMm, boolean opaque) {
    double w = Math.max(widthMm, artwork.widthMm());
    double h = Math.max(heightMm, artwork.heightMm());
    // rings clear of the old border are clean already: only the others meet the frame
    List<double[]> inner = new ArrayList<>();
    List<double[]> outer = new ArrayList<>();
    for (int r = 0; r < artwork.ringCount(); r++) {
      double[] ring = SeparateRings.ring(artwork, r);
      boolean border = SeparateRings.onBorder(ring, artwork.widthMm() / 2, artwork.heightMm() / 2);
      (border ? outer : inner).add(ring);
    }
    if (opaque) {
      outer.add(rectangle(w, h, false));
      outer.add(rectangle(artwork.widthMm(), artwork.heightMm(), true));
    }
    return SeparateRings.join(w, h, inner, outer, artwork.flatteningMm(), artwork.notes());
  }

  private static double[] rectangle(double width, double height, boolean clockwise) {
    double x = width / 2;
    double y = height / 2;
    return clockwise
        ? new double[] {-x, -y, -x, y, x, y, x, -y}
        : new double[] {-x, -y, x, -y, x, y, -x, y};
  }
}
