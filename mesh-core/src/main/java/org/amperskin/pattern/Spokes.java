package org.amperskin.pattern;

import java.util.Arrays;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;

/**
 * The edges around each vertex in counter-clockwise order, beginning at the direction of -x.
 *
 * <p>Slots of vertex v are {@code first(v) .. first(v) + degree(v) - 1}. Order is exact: JTS {@code
 * Orientation} works in extended precision where doubles do not decide.
 */
final class Spokes {
  private final int[] start;
  private final int[] edges;
  private final int[] slotAtA;
  private final int[] slotAtB;
  private final int[] a;

  Spokes(Coordinate[] points, int[] a, int[] b, int edgeCount) {
    this.a = a;
    start = new int[points.length + 1];
    for (int e = 0; e < edgeCount; e++) {
      start[a[e] + 1]++;
      start[b[e] + 1]++;
    }
    for (int v = 0; v < points.length; v++) {
      start[v + 1] += start[v];
    }
    edges = new int[2 * edgeCount];
    int[] fill = Arrays.copyOf(start, points.length);
    for (int e = 0; e < edgeCount; e++) {
      edges[fill[a[e]]++] = e;
      edges[fill[b[e]]++] = e;
    }
    slotAtA = new int[edgeCount];
    slotAtB = new int[edgeCount];
    for (int v = 0; v < points.length; v++) {
      sort(points, b, v);
      for (int slot = start[v]; slot < start[v + 1]; slot++) {
        (a[edges[slot]] == v ? slotAtA : slotAtB)[edges[slot]] = slot;
      }
    }
  }

  int first(int v) {
    return start[v];
  }

  int degree(int v) {
    return start[v + 1] - start[v];
  }

  int edge(int slot) {
    return edges[slot];
  }

  int slot(int v, int edge) {
    return a[edge] == v ? slotAtA[edge] : slotAtB[edge];
  }

  /** The next slot counter-clockwise. */
  int next(int v, int slot) {
    return slot + 1 == start[v + 1] ? start[v] : slot + 1;
  }

  /** The next slot clockwise. */
  int previous(int v, int slot) {
    return slot == start[v] ? start[v + 1] - 1 : slot - 1;
  }

  private void sort(Coordinate[] points, int[] b, int v) {
    int n = degree(v);
    if (n < 2) {
      return;
    }
    Integer[] order = new Integer[n];
    for (int i = 0; i < n; i++) {
      order[i] = edges[start[v] + i];
    }
    Arrays.sort(
        order,
        (e, f) ->
            compare(points[v], points[a[e] == v ? b[e] : a[e]], points[a[f] == v ? b[f] : a[f]]));
    for (int i = 0; i < n; i++) {
      edges[start[v] + i] = order[i];
    }
  }

  private static int compare(Coordinate centre, Coordinate p, Coordinate q) {
    boolean pLow = low(centre, p);
    boolean qLow = low(centre, q);
    if (pLow != qLow) {
      return pLow ? -1 : 1;
    }
    return -Orientation.index(centre, p, q);
  }

  /** Directions from -x (included) over -y to +x (not included). */
  private static boolean low(Coordinate centre, Coordinate p) {
    return p.y < centre.y || (p.y == centre.y && p.x < centre.x);
  }
}
