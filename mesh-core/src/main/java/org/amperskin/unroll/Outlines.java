package org.amperskin.unroll;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Looks for borders that cross themselves: a film that would have to be in two places. */
final class Outlines {
  /**
   * What overlaps by less is within how well a film is laid by hand (common practice, no source).
   */
  private static final double TOUCH_MM = 0.1;

  private static final double TOUCH_SHARE = 0.1;

  private Outlines() {}

  static void refuseCrossing(List<Unrolling.Edge> edges, Patch patch) {
    STRtree tree = new STRtree();
    for (int i = 0; i < edges.size(); i++) {
      Unrolling.Edge e = edges.get(i);
      tree.insert(new Envelope(e.x0(), e.x1(), e.y0(), e.y1()), i);
    }
    int crossings = 0;
    for (int i = 0; i < edges.size(); i++) {
      Unrolling.Edge e = edges.get(i);
      for (Object o : tree.query(new Envelope(e.x0(), e.x1(), e.y0(), e.y1()))) {
        int j = (Integer) o;
        if (j > i && cross(e, edges.get(j))) {
          crossings++;
        }
      }
    }
    if (crossings > 0) {
      throw new IllegalArgumentException(
          "a patch of "
              + patch.size()
              + " faces would overlap itself when unrolled ("
              + crossings
              + " crossings of its outline): choose a smaller patch");
    }
  }

  /** True if each line's ends lie clearly on two sides of the other; touching is no crossing. */
  private static boolean cross(Unrolling.Edge a, Unrolling.Edge b) {
    double touch = Math.min(TOUCH_MM, TOUCH_SHARE * Math.min(length(a), length(b)));
    return beside(a, b.x0(), b.y0(), touch) * beside(a, b.x1(), b.y1(), touch) < 0
        && beside(b, a.x0(), a.y0(), touch) * beside(b, a.x1(), a.y1(), touch) < 0;
  }

  private static double length(Unrolling.Edge e) {
    return Math.hypot(e.x1() - e.x0(), e.y1() - e.y0());
  }

  private static int beside(Unrolling.Edge e, double x, double y, double touch) {
    double dx = e.x1() - e.x0();
    double dy = e.y1() - e.y0();
    double away = (dx * (y - e.y0()) - dy * (x - e.x0())) / length(e);
    return Math.abs(away) > touch ? (int) Math.signum(away) : 0;
  }
}
