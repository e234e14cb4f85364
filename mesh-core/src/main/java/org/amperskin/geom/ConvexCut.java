package org.amperskin.geom;

/**
 * Cuts a convex polygon in the plane by a line.
 *
 * <p>Definition: the polygon is {@code p[2*i], p[2*i+1]} for i below n, counter-clockwise; the line
 * is {@code a x + b y + c = 0} with {@code (a, b)} of length one; left is where the value is
 * positive.
 *
 * <p>Guaranteed: corners within {@code tolerance} of the line belong to both parts and no part is
 * thinner than that; a polygon that does not reach across goes to one part whole. The two parts add
 * up to the polygon up to rounding.
 */
public final class ConvexCut {
  private ConvexCut() {}

  /** Signed doubled area of a polygon. */
  public static double doubledArea(double[] p, int n) {
    double sum = 0;
    double x0 = p[0];
    double y0 = p[1];
    for (int i = 1; i + 1 < n; i++) {
      sum += (p[2 * i] - x0) * (p[2 * i + 3] - y0) - (p[2 * i + 1] - y0) * (p[2 * i + 2] - x0);
    }
    return sum;
  }

  /**
   * The part on one side of the line.
   *
   * @param side +1 for the left, -1 for the right part
   * @param out receives the part; room for n + 1 corners
   * @return number of corners of the part, 0 if there is none
   */
  public static int part(
      double[] p, int n, double a, double b, double c, double tolerance, int side, double[] out) {
    int to = 0;
    double xPrevious = p[2 * n - 2];
    double yPrevious = p[2 * n - 1];
    double dPrevious = side * (a * xPrevious + b * yPrevious + c);
    boolean beyond = false;
    for (int i = 0; i < n; i++) {
      double x = p[2 * i];
      double y = p[2 * i + 1];
      double d = side * (a * x + b * y + c);
      if (d > tolerance && dPrevious < -tolerance || d < -tolerance && dPrevious > tolerance) {
        double t = dPrevious / (dPrevious - d);
        out[to++] = xPrevious + t * (x - xPrevious);
        out[to++] = yPrevious + t * (y - yPrevious);
      }
      if (d >= -tolerance) {
        out[to++] = x;
        out[to++] = y;
        beyond |= d > tolerance;
      }
      xPrevious = x;
      yPrevious = y;
      dPrevious = d;
    }
    return beyond && to >= 6 ? to / 2 : 0;
  }

  /**
   * Where the polygon lies: +1 left of the line, -1 right of it, 0 on both sides (or on the line).
   */
  public static int side(double[] p, int n, double a, double b, double c, double tolerance) {
    boolean left = false;
    boolean right = false;
    for (int i = 0; i < n; i++) {
      double d = a * p[2 * i] + b * p[2 * i + 1] + c;
      left |= d > tolerance;
      right |= d < -tolerance;
    }
    return left == right ? 0 : left ? 1 : -1;
  }
}
