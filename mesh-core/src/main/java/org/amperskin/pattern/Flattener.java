package org.amperskin.pattern;

/**
 * Cuts curves into straight segments that stay within a tolerance of the curve.
 *
 * <p>Definition: deviation is the largest distance between curve and polygon.
 *
 * <p>Guaranteed: for cubics, deviation of a chord over a step h of the parameter is at most h^2
 * max|B''|/8 (the error bound of linear interpolation; B'' is linear in t, so its largest value
 * lies at an end of the step); for arcs of an ellipse with larger half axis s it is s (1 -
 * cos(step/2)) (sagitta). Steps also turn by at most 45 degrees, so small details stay round. The
 * two sides of a stroke along a cubic are measured at three places of each step.
 *
 * <p>With {@code keepArea} inner vertices are moved outwards by about two thirds of the sagitta, so
 * the polygon has the curve's area: exact for arcs of ellipses, to fourth order in the step for
 * cubics. Without this each small dot of 1 mm drawn to 0.01 mm would come out 2.5 % too small.
 *
 * <p>Cost: number of segments grows with the square root of size over tolerance.
 */
final class Flattener {
  private static final double LARGEST_TURN = Math.PI / 4;
  private static final int DEEPEST = 20;
  private static final int DEEPEST_TURN = 18;

  /** A turn within one step (rad) from which on the pen draws a round corner, as at a cusp. */
  private static final double SHARP = 1.2;

  /** Room below the tolerance, because moved vertices may stray by up to 4/3 of the sagitta. */
  private static final double ROOM = 0.7;

  private final double tolerance;
  private final double reach;
  private final boolean keepArea;
  private final PointBudget budget;
  private double worst;

  /**
   * A flattener.
   *
   * @param tolerance largest deviation, in the path's own unit
   * @param reach distance to which normals are drawn (half the stroke width), in the same unit; 0
   *     to fill
   * @param keepArea whether inner vertices are moved so that area is kept
   * @param budget counts points
   */
  Flattener(double tolerance, double reach, boolean keepArea, PointBudget budget) {
    this.tolerance = tolerance * ROOM;
    this.reach = reach;
    this.keepArea = keepArea;
    this.budget = budget;
  }

  /** Largest deviation so far, in the path's own unit; 0 if only lines came by. */
  double worst() {
    return worst;
  }

  /** Numbers as {@link Contour#arc} takes them. */
  void arc(Chain.Builder chain, double[] n) {
    double largest = largestAxis(n[2], n[3], n[4], n[5]);
    double sweep = Math.abs(n[7]);
    double step = Math.min(LARGEST_TURN, stepFor(largest + reach));
    double wanted = Math.ceil(sweep / step - 1e-9);
    budget.spend(wanted);
    int count = (int) Math.max(2, wanted);
    double each = n[7] / count;
    boolean whole = sweep >= 2 * Math.PI - 1e-12;
    double grow = keepArea ? growth(Math.abs(each), whole ? 0 : count) : 1;
    worst =
        Math.max(
            worst, Math.max((largest + reach) * (1 - Math.cos(each / 2)), largest * (grow - 1)));
    if (whole && keepArea) {
      // the start point has already been set on the true curve: begin anew on the grown one
      double[] p = onArc(n, n[6], grow);
      chain.segment(p[0], p[1], 0, 0, 0, 0, count, true);
    }
    for (int i = 1; i <= count; i++) {
      double t = n[6] + i * each;
      double before = t - each;
      boolean last = i == count;
      double[] p = onArc(n, t, last && !whole ? 1 : grow);
      chain.segment(
          last && !(whole && keepArea) ? n[8] : p[0],
          last && !(whole && keepArea) ? n[9] : p[1],
          each * (n[4] * Math.cos(before) - n[2] * Math.sin(before)),
          each * (n[5] * Math.cos(before) - n[3] * Math.sin(before)),
          each * (n[4] * Math.cos(t) - n[2] * Math.sin(t)),
          each * (n[5] * Math.cos(t) - n[3] * Math.sin(t)),
          count,
          !last || whole);
    }
  }

  private static double[] onArc(double[] n, double t, double grow) {
    double c = grow * Math.cos(t);
    double s = grow * Math.sin(t);
    return new double[] {n[0] + n[2] * c + n[4] * s, n[1] + n[3] * c + n[5] * s};
  }

  /**
   * Factor f for inner vertices such that {@code count} triangles of angle d have the sector's
   * area: ((count - 2) f^2 + 2 f) sin d = count d; for a whole turn (count 0) f^2 sin d = d.
   */
  static double growth(double d, int count) {
    double ratio = d / Math.sin(d);
    if (count == 0) {
      return Math.sqrt(ratio);
    }
    if (count < 2) {
      return 1;
    }
    if (count == 2) {
      return ratio;
    }
    double m = count - 2;
    return (Math.sqrt(1 + m * count * ratio) - 1) / m;
  }

  private double stepFor(double radius) {
    return radius <= tolerance ? LARGEST_TURN : 2 * Math.acos(1 - tolerance / radius);
  }

  /** Control points x[0..3], y[0..3]. */
  void cubic(Chain.Builder chain, double[] x, double[] y) {
    double[] cuts = new double[16];
    int[] size = {1};
    double[][] grown = {cuts};
    double turn = reach > 0 ? Math.min(LARGEST_TURN, stepFor(2 * reach)) : LARGEST_TURN;
    divide(x, y, 0, 0.5, 1, turn, grown, size);
    divide(x, y, 0.5, 1, 1, turn, grown, size);
    cuts = grown[0];
    int count = size[0] - 1;
    double[] px = new double[count + 1];
    double[] py = new double[count + 1];
    double[] tx = new double[count + 1];
    double[] ty = new double[count + 1];
    for (int i = 0; i <= count; i++) {
      px[i] = i == 0 ? x[0] : i == count ? x[3] : value(x, cuts[i]);
      py[i] = i == 0 ? y[0] : i == count ? y[3] : value(y, cuts[i]);
      double[] t = tangent(x, y, cuts[i]);
      tx[i] = t[0];
      ty[i] = t[1];
    }
    if (keepArea) {
      move(px, py, tx, ty, count);
    }
    for (int i = 1; i <= count; i++) {
      boolean sharp = Math.abs(turn(tx[i - 1], ty[i - 1], tx[i], ty[i])) > SHARP;
      chain.segment(
          px[i],
          py[i],
          sharp ? 0 : tx[i - 1],
          sharp ? 0 : ty[i - 1],
          sharp ? 0 : tx[i],
          sharp ? 0 : ty[i],
          count,
          i < count);
    }
  }

  private void divide(
      double[] x,
      double[] y,
      double from,
      double to,
      int depth,
      double largestTurn,
      double[][] cuts,
      int[] size) {
    double h = to - from;
    double bend = Math.max(second(x, y, from), second(x, y, to));
    double deviation = h * h * bend / 8;
    double[] a = tangent(x, y, from);
    double[] b = tangent(x, y, to);
    double turn = Math.abs(turn(a[0], a[1], b[0], b[1]));
    double sides = reach > 0 ? sideDeviation(x, y, from, to) : 0;
    boolean tooFar = Math.max(deviation, sides) > tolerance && depth < DEEPEST;
    boolean tooRound =
        turn > largestTurn && depth < DEEPEST_TURN && (deviation > tolerance / 100 || reach > 0);
    if (tooFar || tooRound) {
      double middle = (from + to) / 2;
      divide(x, y, from, middle, depth + 1, largestTurn, cuts, size);
      divide(x, y, middle, to, depth + 1, largestTurn, cuts, size);
      return;
    }
    budget.spend(1);
    worst = Math.max(worst, Math.max(deviation, turn < SHARP ? sides / ROOM : 0));
    if (size[0] == cuts[0].length) {
      cuts[0] = java.util.Arrays.copyOf(cuts[0], 2 * size[0]);
    }
    cuts[0][size[0]++] = to;
  }

  /** How far the two sides of the stroke stray from their chords, at three places of the step. */
  private double sideDeviation(double[] x, double[] y, double from, double to) {
    double largest = 0;
    for (int side = -1; side <= 1; side += 2) {
      double[] a = beside(x, y, from, side * reach);
      double[] b = beside(x, y, to, side * reach);
      double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      for (int k = 1; k <= 3; k++) {
        double[] p = beside(x, y, from + k * (to - from) / 4, side * reach);
        double along =
            length == 0
                ? 0
                : ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1]))
                    / (length * length);
        double part = Math.max(0, Math.min(1, along));
        largest =
            Math.max(
                largest,
                Math.hypot(p[0] - a[0] - part * (b[0] - a[0]), p[1] - a[1] - part * (b[1] - a[1])));
      }
    }
    return largest;
  }

  private static double[] beside(double[] x, double[] y, double t, double distance) {
    double[] d = tangent(x, y, t);
    double length = Math.hypot(d[0], d[1]);
    double scale = length > 0 ? distance / length : 0;
    return new double[] {value(x, t) - scale * d[1], value(y, t) + scale * d[0]};
  }

  /** Moves inner vertices outwards; sagitta of a segment of length l turning by d is l d / 8. */
  private void move(double[] px, double[] py, double[] tx, double[] ty, int count) {
    double[] sagitta = new double[count];
    for (int k = 0; k < count; k++) {
      double d = turn(tx[k], ty[k], tx[k + 1], ty[k + 1]);
      double l = Math.hypot(px[k + 1] - px[k], py[k + 1] - py[k]);
      sagitta[k] = Math.abs(d) > SHARP ? 0 : l * d / 8;
    }
    double share = count < 2 ? 0 : 2.0 / 3 * count / (count - 1);
    for (int i = 1; i < count; i++) {
      double by = share * (sagitta[i - 1] + sagitta[i]) / 2;
      by = Math.max(-tolerance / ROOM, Math.min(tolerance / ROOM, by));
      worst = Math.max(worst, Math.abs(by));
      double length = Math.hypot(tx[i], ty[i]);
      if (length > 0) {
        px[i] += by * ty[i] / length;
        py[i] -= by * tx[i] / length;
      }
    }
  }

  /** Angle from one direction to another, -pi to pi. */
  static double turn(double ax, double ay, double bx, double by) {
    return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }

  private static double value(double[] p, double t) {
    double u = 1 - t;
    return u * u * u * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t * t * t * p[3];
  }

  private static double second(double[] x, double[] y, double t) {
    return Math.hypot(second(x, t), second(y, t));
  }

  private static double second(double[] p, double t) {
    return 6 * ((1 - t) * (p[2] - 2 * p[1] + p[0]) + t * (p[3] - 2 * p[2] + p[1]));
  }

  private static double first(double[] p, double t) {
    double u = 1 - t;
    return 3 * (u * u * (p[1] - p[0]) + 2 * u * t * (p[2] - p[1]) + t * t * (p[3] - p[2]));
  }

  /** Direction of the curve; where the derivative is zero, the direction just beside it. */
  private static double[] tangent(double[] x, double[] y, double t) {
    double dx = first(x, t);
    double dy = first(y, t);
    double size =
        Math.abs(x[1] - x[0])
            + Math.abs(x[2] - x[1])
            + Math.abs(x[3] - x[2])
            + Math.abs(y[1] - y[0])
            + Math.abs(y[2] - y[1])
            + Math.abs(y[3] - y[2]);
    if (Math.abs(dx) + Math.abs(dy) <= 1e-9 * size) {
      double beside = t < 0.5 ? t + 1e-5 : t - 1e-5;
      dx = first(x, beside);
      dy = first(y, beside);
    }
    return new double[] {dx, dy};
  }

  /** Larger half axis of the ellipse with conjugate half diameters u and v (singular value). */
  static double largestAxis(double ux, double uy, double vx, double vy) {
    double s = (ux * ux + uy * uy + vx * vx + vy * vy) / 2;
    double det = ux * vy - uy * vx;
    return Math.sqrt(s + Math.sqrt(Math.max(0, s * s - det * det)));
  }
}
