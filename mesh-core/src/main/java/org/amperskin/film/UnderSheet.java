package org.amperskin.film;

import org.amperskin.geom.ConvexCut;
import org.amperskin.region.LaidFilm;

/** The part of a piece of skin that lies under the sheet, and the gaps over it. */
final class UnderSheet {
  private static final int FINEST = 6;
  private static final double STEPS = 64;

  private UnderSheet() {}

  /**
   * Adds the gaps over the part of a piece that lies under the sheet, by area.
   *
   * @param share weight of its area, 0 to 1
   * @return area of that part on the skin (mm2)
   */
  static double gaps(
      LaidFilm laid, int f, double halfWidth, double halfHeight, double share, Spread.Sum into) {
    double[] p = new double[16];
    double[] q = new double[16];
    for (int k = 0; k < 3; k++) {
      p[2 * k] = laid.x(f, k);
      p[2 * k + 1] = laid.y(f, k);
    }
    double whole = ConvexCut.doubledArea(p, 3);
    double x0 = p[0];
    double y0 = p[1];
    double ux = p[2] - x0;
    double uy = p[3] - y0;
    double vx = p[4] - x0;
    double vy = p[5] - y0;
    double tolerance = 1e-12 * (halfWidth + halfHeight);
    int n = ConvexCut.part(p, 3, 1, 0, halfWidth, tolerance, 1, q);
    n = n == 0 ? 0 : ConvexCut.part(q, n, -1, 0, halfWidth, tolerance, 1, p);
    n = n == 0 ? 0 : ConvexCut.part(p, n, 0, 1, halfHeight, tolerance, 1, q);
    n = n == 0 ? 0 : ConvexCut.part(q, n, 0, -1, halfHeight, tolerance, 1, p);
    if (n == 0) {
      return 0;
    }
    double[] gap = new double[n];
    for (int i = 0; i < n; i++) {
      double px = p[2 * i] - x0;
      double py = p[2 * i + 1] - y0;
      double s = (px * vy - py * vx) / whole;
      double t = (ux * py - uy * px) / whole;
      gap[i] =
          Math.max(0, (1 - s - t) * laid.gapMm(f, 0) + s * laid.gapMm(f, 1) + t * laid.gapMm(f, 2));
    }
    double onSkin = laid.mesh().faceAreaMm2(f);
    double sum = 0;
    for (int i = 1; i + 1 < n; i++) {
      double part =
          (p[2 * i] - p[0]) * (p[2 * i + 3] - p[1]) - (p[2 * i + 1] - p[1]) * (p[2 * i + 2] - p[0]);
      double area = onSkin * Math.abs(part / whole);
      sum += area;
      if (share > 1e-9) {
        // fine enough that a slanting plane of two faces has its gaps told apart
        double step = Math.max(into.range(), 0.02) / STEPS;
        fine(gap[0], gap[i], gap[i + 1], share * area, step, FINEST, into);
        into.reach(gap[0]);
        into.reach(gap[i]);
        into.reach(gap[i + 1]);
      }
    }
    return sum;
  }

  private static void fine(
      double a, double b, double c, double area, double step, int deeper, Spread.Sum into) {
    double range = Math.max(a, Math.max(b, c)) - Math.min(a, Math.min(b, c));
    if (deeper == 0 || range <= step) {
      into.add((a + b + c) / 3, area);
      return;
    }
    double ab = (a + b) / 2;
    double bc = (b + c) / 2;
    double ca = (c + a) / 2;
    fine(a, ab, ca, area / 4, step, deeper - 1, into);
    fine(ab, b, bc, area / 4, step, deeper - 1, into);
    fine(ca, bc, c, area / 4, step, deeper - 1, into);
    fine(ab, bc, ca, area / 4, step, deeper - 1, into);
  }
}
