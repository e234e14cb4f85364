package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * Links the edges between opaque and clear faces into simple rings with opaque on the left.
 *
 * <p>At a vertex where several outlines meet the walk turns to the edge that bounds the same opaque
 * face; where a ring comes back to one of its own vertices the loop is cut off as a ring of its
 * own. Both together give simple rings that touch but never cross.
 */
final class OutlineTrace {
  private final Coordinate[] points;
  private final int[] a;
  private final int[] b;
  private final int edgeCount;
  private final boolean[] leftOpaque;
  private final boolean[] rightOpaque;
  private final Spokes spokes;

  OutlineTrace(
      Coordinate[] points,
      int[] a,
      int[] b,
      int edgeCount,
      boolean[] leftOpaque,
      boolean[] rightOpaque,
      Spokes spokes) {
    this.points = points;
    this.a = a;
    this.b = b;
    this.edgeCount = edgeCount;
    this.leftOpaque = leftOpaque;
    this.rightOpaque = rightOpaque;
    this.spokes = spokes;
  }

  List<double[]> rings() {
    List<double[]> rings = new ArrayList<>();
    boolean[] used = new boolean[edgeCount];
    int[] placeInPath = new int[points.length];
    Arrays.fill(placeInPath, -1);
    int[] path = new int[64];
    for (int begin = 0; begin < edgeCount; begin++) {
      if (used[begin] || !kept(begin)) {
        continue;
      }
      int size = 0;
      int e = begin;
      int at = tail(begin);
      placeInPath[at] = 0;
      path[size++] = at;
      do {
        used[e] = true;
        at = head(e);
        if (placeInPath[at] >= 0) {
          int back = placeInPath[at];
          keep(loop(path, back, size), rings);
          for (int i = back + 1; i < size; i++) {
            placeInPath[path[i]] = -1;
          }
          size = back + 1;
        } else {
          if (size == path.length) {
            path = Arrays.copyOf(path, 2 * size);
          }
          placeInPath[at] = size;
          path[size++] = at;
        }
        e = following(e, at);
      } while (e != begin);
      for (int i = 0; i < size; i++) {
        placeInPath[path[i]] = -1;
      }
    }
    return rings;
  }

  /** Drops slivers no wider than rounding can make them; nothing else fits inside one. */
  private static void keep(double[] ring, List<double[]> rings) {
    double twice = 0;
    double length = 0;
    for (int p = 0, q = ring.length - 2; p < ring.length; q = p, p += 2) {
      twice += (ring[q] - ring[0]) * (ring[p + 1] - ring[1]);
      twice -= (ring[p] - ring[0]) * (ring[q + 1] - ring[1]);
      length += Math.hypot(ring[p] - ring[q], ring[p + 1] - ring[q + 1]);
    }
    if (ring.length >= 6 && Math.abs(twice) > 2 * PaintStack.GRID_MM * length) {
      rings.add(ring);
    }
  }

  private boolean kept(int e) {
    return leftOpaque[e] != rightOpaque[e];
  }

  private int tail(int e) {
    return leftOpaque[e] ? a[e] : b[e];
  }

  private int head(int e) {
    return leftOpaque[e] ? b[e] : a[e];
  }

  /** First kept edge clockwise from the one we came along. */
  private int following(int e, int at) {
    int slot = spokes.slot(at, e);
    do {
      slot = spokes.previous(at, slot);
    } while (!kept(spokes.edge(slot)));
    return spokes.edge(slot);
  }

  private double[] loop(int[] path, int from, int to) {
    double[] ring = new double[2 * (to - from)];
    for (int i = from; i < to; i++) {
      ring[2 * (i - from)] = points[path[i]].x;
      ring[2 * (i - from) + 1] = points[path[i]].y;
    }
    return RingSet.withoutCollinear(ring);
  }
}
