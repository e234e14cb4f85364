package org.amperskin.geom;

/**
 * Cuts a polygon in space into triangles.
 *
 * <p>Definition: the polygon is laid into the plane of its Newell normal and ears are cut off, the
 * roundest first among those that hold no other corner.
 *
 * <p>Guaranteed: n - 2 triangles in the polygon's own sense; for a plane polygon that does not
 * cross itself they tile it. Not guaranteed: a useful result for polygons that cross themselves;
 * there the rest is cut as a fan. Corners out of plane give one of several possible surfaces.
 *
 * <p>Method: ear clipping (G. H. Meisters, Polygons have ears, Amer. Math. Monthly 82, 1975, from
 * memory). Cost: n times the number of reflex corners.
 */
public final class Polygons {
  private final double[] x;
  private final double[] y;
  private final int[] previous;
  private final int[] following;

  private Polygons(double[] positions, int[] corner, int n) {
    double nx = 0;
    double ny = 0;
    double nz = 0;
    for (int i = 0; i < n; i++) {
      int a = 3 * corner[i];
      int b = 3 * corner[(i + 1) % n];
      nx += (positions[a + 1] - positions[b + 1]) * (positions[a + 2] + positions[b + 2]);
      ny += (positions[a + 2] - positions[b + 2]) * (positions[a] + positions[b]);
      nz += (positions[a] - positions[b]) * (positions[a + 1] + positions[b + 1]);
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
    for (int k = 0; k < n; k++) {
      x[k] = positions[3 * corner[k] + i];
      y[k] = positions[3 * corner[k] + j];
      previous[k] = (k + n - 1) % n;
      following[k] = (k + 1) % n;
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
        following[previous[at]] = following[at];
        previous[following[at]] = previous[at];
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

  private boolean isEar(int at) {
    int a = previous[at];
    int b = following[at];
    if (turn(a, at, b) <= 0) {
      return false;
    }
    for (int q = following[b]; q != a; q = following[q]) {
      boolean reflex = turn(previous[q], q, following[q]) <= 0;
      if (reflex && inside(q, a, at, b)) {
        return false;
      }
    }
    return true;
  }

  private boolean inside(int q, int a, int at, int b) {
    boolean sameAsCorner =
        x[q] == x[a] && y[q] == y[a]
            || x[q] == x[b] && y[q] == y[b]
            || x[q] == x[at] && y[q] == y[at];
    return !sameAsCorner && turn(a, at, q) >= 0 && turn(at, b, q) >= 0 && turn(b, a, q) >= 0;
  }

  private double turn(int a, int b, int c) {
    return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
  }
}
