package org.amperskin.geom;

import java.math.BigDecimal;

/**
 * Signs of orientation determinants, exact for any finite doubles.
 *
 * <p>Method: a floating-point evaluation with Shewchuk's static error bound decides nearly all
 * calls; the rest is evaluated without rounding. Source: J. R. Shewchuk, Adaptive Precision
 * Floating-Point Arithmetic and Fast Robust Geometric Predicates, Discrete &amp; Computational
 * Geometry 18 (1997) 305-363 (bounds from memory, checked by test against exact arithmetic).
 *
 * <p>Without rounding means whole numbers of 128 bits where the coordinates lie on a common grid of
 * {@value #GRID_BITS} bits, as those of print files in single precision nearly always do, and big
 * decimals elsewhere.
 *
 * <p>Cost: about 10 ns when the filter decides, 50 ns on the grid, microseconds otherwise.
 */
public final class Predicates {
  private static final double EPSILON = Math.ulp(1.0) / 2;
  private static final double ORIENT2D_BOUND = (3 + 16 * EPSILON) * EPSILON;
  private static final double ORIENT3D_BOUND = (7 + 56 * EPSILON) * EPSILON;

  /** Differences take a bit more, a product of three and their sum then 126. */
  private static final int GRID_BITS = 40;

  private static final int FRACTION_BITS = 52;

  private Predicates() {}

  /** Sign of the turn a, b, c in the plane: +1 counter-clockwise, -1 clockwise, 0 in line. */
  public static int orient2d(double ax, double ay, double bx, double by, double cx, double cy) {
    int quick = quickOrient2d(ax, ay, bx, by, cx, cy);
    if (quick != UNSURE) {
      return quick;
    }
    int unit = gridExponent(ax, ay, bx, by, cx, cy);
    if (unit != NO_GRID) {
      long gx = onGrid(cx, unit);
      long gy = onGrid(cy, unit);
      return Int128.product(onGrid(ax, unit) - gx, onGrid(by, unit) - gy)
          .minus(Int128.product(onGrid(ay, unit) - gy, onGrid(bx, unit) - gx))
          .signum();
    }
    BigDecimal x = exact(cx);
    BigDecimal y = exact(cy);
    BigDecimal l = exact(ax).subtract(x).multiply(exact(by).subtract(y));
    BigDecimal r = exact(ay).subtract(y).multiply(exact(bx).subtract(x));
    return l.compareTo(r);
  }

  /** As {@link #orient2d}, but {@link #UNSURE} where only exact arithmetic could tell. */
  public static int quickOrient2d(
      double ax, double ay, double bx, double by, double cx, double cy) {
    double left = (ax - cx) * (by - cy);
    double right = (ay - cy) * (bx - cx);
    double det = left - right;
    double bound = ORIENT2D_BOUND * (Math.abs(left) + Math.abs(right));
    return det > bound ? 1 : -det > bound ? -1 : bound == 0 ? 0 : UNSURE;
  }

  /** Answer of {@link #quickOrient3d} where rounding could have turned the sign. */
  public static final int UNSURE = 2;

  /**
   * Side of the plane through face a, b, c on which d lies: +1 if a, b, c are seen
   * counter-clockwise from d, -1 clockwise, 0 in the plane.
   *
   * @param p {@code p[3*v+k]}
   * @param a first vertex
   * @param b second vertex
   * @param c third vertex
   * @param d the point asked about
   */
  public static int orient3d(double[] p, int a, int b, int c, int d) {
    int quick = quickOrient3d(p, a, b, c, d);
    return quick == UNSURE ? exactOrient3d(p, 3 * a, 3 * b, 3 * c, 3 * d) : quick;
  }

  /** As {@link #orient3d}, but {@link #UNSURE} where only exact arithmetic could tell. */
  public static int quickOrient3d(double[] p, int a, int b, int c, int d) {
    int ia = 3 * a;
    int ib = 3 * b;
    int ic = 3 * c;
    int id = 3 * d;
    double dx = p[id];
    double dy = p[id + 1];
    double dz = p[id + 2];
    double adx = p[ia] - dx;
    double ady = p[ia + 1] - dy;
    double adz = p[ia + 2] - dz;
    double bdx = p[ib] - dx;
    double bdy = p[ib + 1] - dy;
    double bdz = p[ib + 2] - dz;
    double cdx = p[ic] - dx;
    double cdy = p[ic + 1] - dy;
    double cdz = p[ic + 2] - dz;
    double m1 = bdx * cdy;
    double m2 = cdx * bdy;
    double m3 = cdx * ady;
    double m4 = adx * cdy;
    double m5 = adx * bdy;
    double m6 = bdx * ady;
    double det = adz * (m1 - m2) + bdz * (m3 - m4) + cdz * (m5 - m6);
    double permanent =
        (Math.abs(m1) + Math.abs(m2)) * Math.abs(adz)
            + (Math.abs(m3) + Math.abs(m4)) * Math.abs(bdz)
            + (Math.abs(m5) + Math.abs(m6)) * Math.abs(cdz);
    double bound = ORIENT3D_BOUND * permanent;
    if (det > bound) {
      return -1;
    }
    if (-det > bound) {
      return 1;
    }
    for (int k = 0; k < 3; k++) {
      // A common coordinate, the usual case in boxes, is decided without big numbers.
      double d0 = p[id + k];
      if (p[ia + k] == d0 && p[ib + k] == d0 && p[ic + k] == d0) {
        return 0;
      }
    }
    return UNSURE;
  }

  private static int exactOrient3d(double[] p, int a, int b, int c, int d) {
    int unit =
        gridExponent(
            p[a], p[a + 1], p[a + 2], p[b], p[b + 1], p[b + 2], p[c], p[c + 1], p[c + 2], p[d],
            p[d + 1], p[d + 2]);
    return unit == NO_GRID ? bigOrient3d(p, a, b, c, d) : gridOrient3d(p, unit, a, b, c, d);
  }

  private static int gridOrient3d(double[] p, int unit, int a, int b, int c, int d) {
    long dx = onGrid(p[d], unit);
    long dy = onGrid(p[d + 1], unit);
    long dz = onGrid(p[d + 2], unit);
    long adx = onGrid(p[a], unit) - dx;
    long ady = onGrid(p[a + 1], unit) - dy;
    long bdx = onGrid(p[b], unit) - dx;
    long bdy = onGrid(p[b + 1], unit) - dy;
    long cdx = onGrid(p[c], unit) - dx;
    long cdy = onGrid(p[c + 1], unit) - dy;
    Int128 bc = Int128.product(bdx, cdy).minus(Int128.product(cdx, bdy));
    Int128 ca = Int128.product(cdx, ady).minus(Int128.product(adx, cdy));
    Int128 ab = Int128.product(adx, bdy).minus(Int128.product(bdx, ady));
    return -bc.times(onGrid(p[a + 2], unit) - dz)
        .plus(ca.times(onGrid(p[b + 2], unit) - dz))
        .plus(ab.times(onGrid(p[c + 2], unit) - dz))
        .signum();
  }

  private static final int NO_GRID = Integer.MAX_VALUE;

  /** Exponent of the coarsest power of two that measures all values, if they are not too large. */
  private static int gridExponent(double... values) {
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (double v : values) {
      if (v == 0) {
        continue;
      }
      int exponent = Math.getExponent(v);
      if (exponent < Double.MIN_EXPONENT || exponent > Double.MAX_EXPONENT) {
        return NO_GRID;
      }
      long fraction = Double.doubleToRawLongBits(v) & (1L << FRACTION_BITS) - 1;
      int trailing = fraction == 0 ? FRACTION_BITS : Long.numberOfTrailingZeros(fraction);
      low = Math.min(low, exponent - FRACTION_BITS + trailing);
      high = Math.max(high, exponent);
    }
    if (low == Integer.MAX_VALUE) {
      return 0;
    }
    // beyond that the scale itself would leave the range of doubles
    return high - low < GRID_BITS && Math.abs(low) < Double.MAX_EXPONENT - 1 ? low : NO_GRID;
  }

  private static long onGrid(double v, int unit) {
    return (long) Math.scalb(v, -unit);
  }

  private static int bigOrient3d(double[] p, int a, int b, int c, int d) {
    BigDecimal[] ad = difference(p, a, d);
    BigDecimal[] bd = difference(p, b, d);
    BigDecimal[] cd = difference(p, c, d);
    BigDecimal det =
        ad[2]
            .multiply(bd[0].multiply(cd[1]).subtract(cd[0].multiply(bd[1])))
            .add(bd[2].multiply(cd[0].multiply(ad[1]).subtract(ad[0].multiply(cd[1]))))
            .add(cd[2].multiply(ad[0].multiply(bd[1]).subtract(bd[0].multiply(ad[1]))));
    return -det.signum();
  }

  private static BigDecimal[] difference(double[] p, int a, int d) {
    return new BigDecimal[] {
      exact(p[a]).subtract(exact(p[d])),
      exact(p[a + 1]).subtract(exact(p[d + 1])),
      exact(p[a + 2]).subtract(exact(p[d + 2]))
    };
  }

  private static BigDecimal exact(double v) {
    return new BigDecimal(v);
  }
}
