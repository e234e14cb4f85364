package org.amperskin.pattern;

import java.util.BitSet;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;

/**
 * Finds the rings that nothing can cross: convex ones whose box no edge of another ring comes near.
 * Dots and short strokes of large patterns are such; they need no noding.
 *
 * <p>Guaranteed: a ring told free crosses neither itself nor any other ring. Not guaranteed: that
 * all such rings are found.
 *
 * <p>Cost: O(n log n) in rings, plus pairs of overlapping boxes.
 */
final class FreeRings {
  /** Rings of more edges than this are not looked at edge by edge. */
  private static final int MOST_EDGES = 64;

  private static final double NEAR_MM = 4 * PaintStack.GRID_MM;

  private FreeRings() {}

  /** The free ones of closed rings (first point repeated at the end). */
  static BitSet of(List<Coordinate[]> rings) {
    HPRtree tree = new HPRtree();
    Envelope[] boxes = new Envelope[rings.size()];
    for (int r = 0; r < boxes.length; r++) {
      Envelope box = new Envelope();
      for (Coordinate c : rings.get(r)) {
        box.expandToInclude(c);
      }
      box.expandBy(NEAR_MM);
      boxes[r] = box;
      tree.insert(box, r);
    }
    BitSet free = new BitSet();
    for (int r = 0; r < boxes.length; r++) {
      if (isConvex(rings.get(r))) {
        int ring = r;
        boolean[] met = {false};
        tree.query(
            boxes[r],
            item -> {
              int other = (Integer) item;
              met[0] = met[0] || other != ring && reaches(rings.get(other), boxes[ring]);
            });
        free.set(r, !met[0]);
      }
    }
    return free;
  }

  private static boolean reaches(Coordinate[] ring, Envelope box) {
    if (ring.length > MOST_EDGES) {
      return true;
    }
    for (int i = 0; i + 1 < ring.length; i++) {
      if (box.intersects(ring[i], ring[i + 1])) {
        return true;
      }
    }
    return false;
  }

  /** Turns to one side only, and round once. */
  private static boolean isConvex(Coordinate[] ring) {
    int n = ring.length - 1;
    if (n < 3) {
      return false;
    }
    double sign = 0;
    double turned = 0;
    for (int i = 0; i < n; i++) {
      Coordinate a = ring[i];
      Coordinate b = ring[i + 1];
      Coordinate c = ring[i + 2 > n ? 1 : i + 2];
      double ux = b.x - a.x;
      double uy = b.y - a.y;
      double vx = c.x - b.x;
      double vy = c.y - b.y;
      double cross = ux * vy - uy * vx;
      double turn = Math.atan2(cross, ux * vx + uy * vy);
      // flat corners are left to the noder, which decides them exactly
      if (Math.abs(turn) < 1e-6 || sign * turn < 0) {
        return false;
      }
      sign = Math.signum(turn);
      turned += turn;
    }
    return Math.abs(Math.abs(turned) - 2 * Math.PI) < 1;
  }
}
