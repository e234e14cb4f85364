package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.List;

/**
 * Turns a stroke into an area: a list of rings that all run counter-clockwise and whose union is
 * the stroke (fill with the nonzero rule).
 *
 * <p>Definition: W3C SVG 2 section 13.5 ("Computing the shape of the stroke"): what a line of the
 * stroke's width, held square to the path, sweeps over, plus joins at corners and caps at open
 * ends; dashes as in 13.5.6. Joins arcs and miter-clip are drawn as miter.
 *
 * <p>Straight paths with straight joins are exact. Along curves the sides' inner vertices are moved
 * outwards so that area is kept as {@link Flattener} does.
 */
final class Pen {
  enum Cap {
    BUTT,
    ROUND,
    SQUARE
  }

  enum Join {
    MITER,
    ROUND,
    BEVEL
  }

  private final double half;
  private final Cap cap;
  private final Join join;
  private final double miterLimit;
  private final double tolerance;
  private final PointBudget budget;
  private final List<double[]> rings = new ArrayList<>();
  private double worst;

  Pen(double width, Cap cap, Join join, double miterLimit, double tolerance, PointBudget budget) {
    this.half = width / 2;
    this.cap = cap;
    this.join = join;
    this.miterLimit = miterLimit;
    this.tolerance = tolerance * 0.7;
    this.budget = budget;
  }

  List<double[]> rings() {
    return rings;
  }

  /** Largest deviation of round joins and caps, in the path's unit. */
  double worst() {
    return worst;
  }

  /** Draws one chain without dashes. */
  void draw(Chain chain) {
    if (chain.segments <= 0) {
      dot(chain.x[0], chain.y[0], 1, 0);
      return;
    }
    if (chain.segments == 1 && !chain.closed && chain.runLength[0] == 0 && half > 0) {
      single(chain);
      return;
    }
    double[] left = side(chain, half);
    double[] right = side(chain, -half);
    for (int k = 0; k < chain.segments; k++) {
      band(left, right, k);
    }
    int joins = chain.closed ? chain.segments : chain.segments - 1;
    for (int k = 0; k < joins; k++) {
      corner(chain, k, (k + 1) % chain.segments);
    }
    if (!chain.closed) {
      int last = chain.segments - 1;
      int end = chain.points() - 1;
      end(chain.x[0], chain.y[0], -chain.tangents[0], -chain.tangents[1]);
      end(chain.x[end], chain.y[end], chain.tangents[4 * last + 2], chain.tangents[4 * last + 3]);
    }
  }

  /** A lone straight line with its caps as one convex ring; large patterns are full of them. */
  private void single(Chain chain) {
    double tx = chain.tangents[0];
    double ty = chain.tangents[1];
    double[] from = cap(chain.x[0], chain.y[0], -tx, -ty);
    double[] to = cap(chain.x[1], chain.y[1], tx, ty);
    double[] ring = java.util.Arrays.copyOf(to, to.length + from.length);
    System.arraycopy(from, 0, ring, to.length, from.length);
    add(ring);
  }

  /** The border of a cap facing (tx, ty), counter-clockwise. */
  private double[] cap(double x, double y, double tx, double ty) {
    double nx = half * ty;
    double ny = -half * tx;
    if (cap == Cap.ROUND) {
      double[] pie = arc(x, y, nx, ny, Math.PI);
      return java.util.Arrays.copyOfRange(pie, 2, pie.length);
    }
    double reach = cap == Cap.SQUARE ? half : 0;
    double cx = x + reach * tx;
    double cy = y + reach * ty;
    return new double[] {cx + nx, cy + ny, cx - nx, cy - ny};
  }

  /** A dash or subpath of no length: only round and square caps show it. */
  void dot(double x, double y, double tx, double ty) {
    if (cap == Cap.ROUND) {
      end(x, y, tx, ty);
      end(x, y, -tx, -ty);
    } else if (cap == Cap.SQUARE) {
      double ux = half * tx;
      double uy = half * ty;
      add(
          x - ux + uy,
          y - uy - ux,
          x + ux + uy,
          y + uy - ux,
          x + ux - uy,
          y + uy + ux,
          x - ux - uy,
          y - uy + ux);
    }
  }

  /**
   * The offset points on one side: start and end of segment k at {@code 4*k}; along curves moved
   * outwards, see {@link Flattener}.
   */
  private static double[] side(Chain chain, double distance) {
    int n = chain.segments;
    double[] out = new double[4 * n];
    double[] sagitta = new double[n];
    for (int k = 0; k < n; k++) {
      int p = k;
      int q = chain.after(k);
      double[] t = chain.tangents;
      out[4 * k] = chain.x[p] - distance * t[4 * k + 1];
      out[4 * k + 1] = chain.y[p] + distance * t[4 * k];
      out[4 * k + 2] = chain.x[q] - distance * t[4 * k + 3];
      out[4 * k + 3] = chain.y[q] + distance * t[4 * k + 2];
      if (chain.runLength[k] > 1) {
        double dx = out[4 * k + 2] - out[4 * k];
        double dy = out[4 * k + 3] - out[4 * k + 1];
        boolean forward = dx * (chain.x[q] - chain.x[p]) + dy * (chain.y[q] - chain.y[p]) > 0;
        double turn = Flattener.turn(t[4 * k], t[4 * k + 1], t[4 * k + 2], t[4 * k + 3]);
        sagitta[k] = forward ? Math.hypot(dx, dy) * turn / 8 : 0;
      }
    }
    for (int k = 0; k < n; k++) {
      int next = k + 1 == n ? 0 : k + 1;
      if (chain.joinsOn[k] && (chain.closed || k + 1 < n) && chain.runLength[next] > 1) {
        int run = chain.runLength[k];
        boolean whole = chain.closed && run == n;
        double share = whole ? 2.0 / 3 : 2.0 / 3 * run / (run - 1);
        double by = share * (sagitta[k] + sagitta[next]) / 2;
        double tx = chain.tangents[4 * k + 2];
        double ty = chain.tangents[4 * k + 3];
        out[4 * k + 2] += by * ty;
        out[4 * k + 3] -= by * tx;
        out[4 * next] += by * ty;
        out[4 * next + 1] -= by * tx;
      }
    }
    return out;
  }

  /** What the pen sweeps along one segment; two triangles where it turns about an inner point. */
  private void band(double[] left, double[] right, int k) {
    double ax = right[4 * k];
    double ay = right[4 * k + 1];
    double bx = right[4 * k + 2];
    double by = right[4 * k + 3];
    double cx = left[4 * k + 2];
    double cy = left[4 * k + 3];
    double dx = left[4 * k];
    double dy = left[4 * k + 1];
    // pen positions: a-d at the start, b-c at the end
    double rx = dx - ax;
    double ry = dy - ay;
    double sx = cx - bx;
    double sy = cy - by;
    double cross = rx * sy - ry * sx;
    if (cross != 0) {
      double u = ((bx - ax) * sy - (by - ay) * sx) / cross;
      double v = ((bx - ax) * ry - (by - ay) * rx) / cross;
      if (u > 0 && u < 1 && v > 0 && v < 1) {
        double ix = ax + u * rx;
        double iy = ay + u * ry;
        add(ax, ay, bx, by, ix, iy);
        add(dx, dy, cx, cy, ix, iy);
        return;
      }
    }
    add(ax, ay, bx, by, cx, cy, dx, dy);
  }

  private void corner(Chain chain, int k, int next) {
    int p = chain.after(k);
    double t0x = chain.tangents[4 * k + 2];
    double t0y = chain.tangents[4 * k + 3];
    double t1x = chain.tangents[4 * next];
    double t1y = chain.tangents[4 * next + 1];
    double turn = Flattener.turn(t0x, t0y, t1x, t1y);
    if (Math.abs(turn) < 1e-9) {
      return;
    }
    // outer side: right of the path when it turns left
    double s = turn > 0 ? half : -half;
    double px = chain.x[p];
    double py = chain.y[p];
    double ax = s * t0y;
    double ay = -s * t0x;
    double bx = s * t1y;
    double by = -s * t1x;
    boolean round = chain.joinsOn[k] && chain.runLength[next] > 1 || join == Join.ROUND;
    double cosHalf = Math.cos(turn / 2);
    if (round) {
      pie(px, py, ax, ay, turn);
    } else if (join == Join.MITER && cosHalf > 0 && 1 / cosHalf <= miterLimit * (1 + 1e-12)) {
      double scale = 1 / (1 + Math.cos(turn));
      add(
          px,
          py,
          px + ax,
          py + ay,
          px + scale * (ax + bx),
          py + scale * (ay + by),
          px + bx,
          py + by);
    } else {
      add(px, py, px + ax, py + ay, px + bx, py + by);
    }
  }

  private void end(double x, double y, double tx, double ty) {
    if (cap == Cap.ROUND) {
      pie(x, y, half * ty, -half * tx, Math.PI);
    } else if (cap == Cap.SQUARE) {
      double nx = half * ty;
      double ny = -half * tx;
      double fx = half * tx;
      double fy = half * ty;
      add(x + nx, y + ny, x + nx + fx, y + ny + fy, x - nx + fx, y - ny + fy, x - nx, y - ny);
    }
  }

  /** Sector of the pen's circle about (x, y) from (ax, ay) over an angle. */
  private void pie(double x, double y, double ax, double ay, double angle) {
    add(arc(x, y, ax, ay, angle));
  }

  /** The sector's ring: the centre, then the arc from its begin to its end. */
  private double[] arc(double x, double y, double ax, double ay, double angle) {
    double step = Math.PI / 4;
    if (half > tolerance) {
      step = Math.min(step, 2 * Math.acos(1 - tolerance / half));
    }
    double wanted = Math.ceil(Math.abs(angle) / step);
    SvgFault.unless(
        wanted <= PointBudget.LARGEST,
        "a round of at most " + PointBudget.LARGEST + " points",
        wanted + "");
    int count = (int) Math.max(2, wanted);
    double each = angle / count;
    double grow = Flattener.growth(Math.abs(each), count);
    worst = Math.max(worst, half * Math.max(1 - Math.cos(each / 2), grow - 1));
    double[] ring = new double[2 * count + 4];
    ring[0] = x;
    ring[1] = y;
    for (int i = 0; i <= count; i++) {
      double f = i == 0 || i == count ? 1 : grow;
      double c = f * Math.cos(i * each);
      double s = f * Math.sin(i * each);
      ring[2 * i + 2] = x + c * ax - s * ay;
      ring[2 * i + 3] = y + s * ax + c * ay;
    }
    return ring;
  }

  private void add(double... ring) {
    budget.spend(ring.length / 2.0);
    rings.add(ring);
  }
}
