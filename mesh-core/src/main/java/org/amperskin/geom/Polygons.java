package org.amperskin.geom;

/**
 * Cuts a polygon in space into triangles.
 *
 * <p>Definition: the polygon is looked at along the axis nearest to its Newell normal, and ears
 * (corners whose triangle holds no other corner) are cut off, every other one in turn.
 *
 * <p>Guaranteed: n - 2 triangles in the polygon's own sense; for a plane polygon that does not
 * cross itself they tile it, since the projection only drops a coordinate and the turns are exact.
 * Not guaranteed: a useful result for polygons that cross themselves; there the rest is cut as it
 * comes. Corners out of plane give one of several possible surfaces.
 *
 * <p>Method: ear clipping (G. H. Meisters, Polygons have ears, Amer. Math. Monthly 82, 1975, from
 * memory). Cost: n times the number of corners that are not convex.
 */
public final class Polygons {
  private final double[] x;
  private final double[] y;
  private final int[] previous;
  private final int[] following;

  /** The corners that are not convex, in no order: only they can lie in an ear. */
  private final int[] reflex;

  /** Place of a corner in {@link #reflex}, or {@link #CONVEX}. */
  private final int[] place;

  private static final int CONVEX = -1;
  private int reflexCount;

  private Polygons(double[] positions, int[] corner, int n) {
    double nx = 0;
    double ny = 0;
    double nz = 0;
    int o = 3 * corner[0];
    for (int i = 1; i < n - 1; i++) {
      int a = 3 * corner[i];
      int b = 3 * corner[i + 1];
      double ux = positions[a] - positions[o];
      double uy = positions[a + 1] - positions[o + 1];
      double uz = positions[a + 2] - positions[o + 2];
      double vx = positions[b] - positions[o];
      double vy = positions[b + 1] - positions[o + 1];
      double vz = positions[b + 2] - positions[o + 2];
      nx += uy * vz - uz * vy;
      ny += uz * vx - ux * vz;
      nz += ux * vy - uy * vx;
    }
    double ax = Math.abs(nx);
    double ay = Math.abs(ny);
    double az = Math.abs(nz);
    int drop = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
    double normal = drop == 0 ? nx : drop == 1 ? ny : nz;
    int i = normal >= 0 ? (drop + 1) % 3 : (drop + 2) % 3;
    int j = 3 - drop - i;
    x = new double[n];
    y = new double[n];
    previous = new int[n];
    following = new int[n];
    reflex = new int[n];
    place = new int[n];
    for (int k = 0; k < n; k++) {
      x[k] = positions[3 * corner[k] + i];
      y[k] = positions[3 * corner[k] + j];
      previous[k] = (k + n - 1) % n;
      following[k] = (k + 1) % n;
      place[k] = CONVEX;
    }
    for (int k = 0; k < n; k++) {
      classify(k);
    }
  }

  /**
   * Triangulates.
   *
   * @param positions {@code positions[3*v+k]}
   * @param corner the polygon's vertices in order, {@code corner[0..n-1]}
   * @param n number of corners, at least 3
   * @return positions in {@code corner}, three a triangle
   */
  public static int[] triangulate(double[] positions, int[] corner, int n) {
    return new Polygons(positions, corner, n).cut(n);
  }

  private int[] cut(int n) {
    int[] out = new int[3 * (n - 2)];
    int to = 0;
    int at = 0;
    int left = n;
    int since = 0;
    while (left > 3) {
      // A full round without an ear means a polygon that crosses itself: cut it as it comes.
      if (since >= left || isEar(at)) {
        to = take(out, to, at);
        remove(at);
        left--;
        since = 0;
        at = following[at];
      } else {
        since++;
      }
      at = following[at];
    }
    take(out, to, at);
    return out;
  }

  private int take(int[] out, int to, int at) {
    out[to] = previous[at];
    out[to + 1] = at;
    out[to + 2] = following[at];
    return to + 3;
  }

  private void remove(int at) {
    int a = previous[at];
    int b = following[at];
    following[a] = b;
    previous[b] = a;
    setConvex(at);
    classify(a);
    classify(b);
  }

  private void classify(int k) {
    if (turn(previous[k], k, following[k]) > 0) {
      setConvex(k);
    } else if (place[k] == CONVEX) {
      place[k] = reflexCount;
      reflex[reflexCount++] = k;
    }
  }

  private void setConvex(int k) {
    if (place[k] != CONVEX) {
      int last = reflex[--reflexCount];
      reflex[place[k]] = last;
      place[last] = place[k];
      place[k] = CONVEX;
    }
  }

  private boolean isEar(int at) {
    int a = previous[at];
    int b = following[at];
    if (same(at, a) || same(a, b)) {
      return true; // a repeated corner or a spike: gone without an area
    }
    if (place[at] != CONVEX) {
      return false;
    }
    for (int i = 0; i < reflexCount; i++) {
      if (inside(reflex[i], a, at, b)) {
        return false;
      }
    }
    return true;
  }

  private boolean inside(int q, int a, int at, int b) {
    if (x[q] < Math.min(x[a], Math.min(x[at], x[b]))
        || x[q] > Math.max(x[a], Math.max(x[at], x[b]))
        || y[q] < Math.min(y[a], Math.min(y[at], y[b]))
        || y[q] > Math.max(y[a], Math.max(y[at], y[b]))) {
      return false;
    }
    // A bridge to a hole visits its two ends twice: such a twin of a corner does not block.
    boolean sameAsCorner = same(q, a) || same(q, at) || same(q, b);
    return !sameAsCorner && turn(a, at, q) >= 0 && turn(at, b, q) >= 0 && turn(b, a, q) >= 0;
  }

  private boolean same(int p, int q) {
    return x[p] == x[q] && y[p] == y[q];
  }

  private int turn(int a, int b, int c) {
    return Predicates.orient2d(x[a], y[a], x[b], y[b], x[c], y[c]);
  }
}
