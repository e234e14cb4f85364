package org.amperskin.unroll;

import java.util.Locale;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Looks for layouts that lie on themselves: a film that would have to be in two places. */
final class Overlap {
  /** Ragged borders may lie on each other by this share of the patch. */
  private static final double MOST_SHARE = 2e-3;

  private Overlap() {}

  /**
   * Refuses a layout that overlaps itself.
   *
   * @throws IllegalArgumentException naming the area
   */
  static void refuse(CutPatch cut, double[] xy) {
    int n = cut.patch().size();
    STRtree tree = new STRtree();
    double whole = 0;
    for (int i = 0; i < n; i++) {
      Envelope box = new Envelope();
      for (int k = 0; k < 3; k++) {
        int v = cut.corner(i, k);
        box.expandToInclude(xy[2 * v], xy[2 * v + 1]);
      }
      tree.insert(box, i);
      whole += area(cut, xy, i);
    }
    double twice = 0;
    for (int i = 0; i < n; i++) {
      double x = 0;
      double y = 0;
      for (int k = 0; k < 3; k++) {
        int v = cut.corner(i, k);
        x += xy[2 * v] / 3;
        y += xy[2 * v + 1] / 3;
      }
      for (Object other : tree.query(new Envelope(x, x, y, y))) {
        int j = (Integer) other;
        if (j != i && holds(cut, xy, j, x, y)) {
          twice += area(cut, xy, i);
          break;
        }
      }
    }
    if (twice > MOST_SHARE * whole) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a patch of %d faces would overlap itself when unrolled, by %.3g of %.4g mm2: choose"
                  + " a smaller patch",
              n,
              twice / 2,
              whole));
    }
  }

  private static double area(CutPatch cut, double[] xy, int i) {
    return turn(xy, cut.corner(i, 0), cut.corner(i, 1), cut.corner(i, 2)) / 2;
  }

  private static double turn(double[] xy, int a, int b, int c) {
    return side(xy, a, b, xy[2 * c], xy[2 * c + 1]);
  }

  private static double side(double[] xy, int a, int b, double x, double y) {
    return (xy[2 * b] - xy[2 * a]) * (y - xy[2 * a + 1])
        - (xy[2 * b + 1] - xy[2 * a + 1]) * (x - xy[2 * a]);
  }

  private static boolean holds(CutPatch cut, double[] xy, int j, double x, double y) {
    for (int k = 0; k < 3; k++) {
      if (!(side(xy, cut.corner(j, k), cut.corner(j, (k + 1) % 3), x, y) > 0)) {
        return false;
      }
    }
    return true;
  }
}
