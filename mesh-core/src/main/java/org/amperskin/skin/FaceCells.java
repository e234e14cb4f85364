package org.amperskin.skin;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.geom.ConvexCut;
import org.amperskin.geom.Predicates;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Cuts a face along the faces that cross it or lie on it.
 *
 * <p>Definition: a cell is a convex polygon on the face that no other face crosses inside. Cells
 * are held in barycentric weights, {@code weights[3*i+k]} for corner i.
 *
 * <p>Guaranteed: the cells add up to the face up to rounding. Cost: proportional to the number of
 * crossing faces for each cell they pass; large faces are halved first.
 */
final class FaceCells {
  private static final int FEW = 24;
  private static final int DEEPEST = 30;

  private final SurfaceMesh mesh;
  private final double[] p;
  private int face;
  private int i;
  private int j;
  private double x0;
  private double y0;
  private double ux;
  private double uy;
  private double vx;
  private double vy;
  private double det;
  private double tolerance;
  private final List<double[]> cells = new ArrayList<>();
  private final List<Integer> flat = new ArrayList<>();

  FaceCells(SurfaceMesh mesh) {
    this.mesh = mesh;
    this.p = mesh.positions();
  }

  /** Cells of a face, in plane coordinates; see {@link #weights}. */
  List<double[]> cut(int f, int[] partners, int from, int to) {
    face = f;
    cells.clear();
    flat.clear();
    frame();
    List<double[]> segments = new ArrayList<>();
    for (int k = from; k < to; k++) {
      segments(partners[k], segments);
    }
    double[] whole = new double[6];
    for (int k = 0; k < 3; k++) {
      whole[2 * k] = p[3 * mesh.corner(f, k) + i];
      whole[2 * k + 1] = p[3 * mesh.corner(f, k) + j];
    }
    split(whole, segments, 0);
    return cells;
  }

  /** Faces that lie in the plane of the face cut last and overlap it. */
  List<Integer> flatPartners() {
    return flat;
  }

  private void frame() {
    int a = 3 * mesh.corner(face, 0);
    int b = 3 * mesh.corner(face, 1);
    int c = 3 * mesh.corner(face, 2);
    double most = -1;
    for (int k = 0; k < 3; k++) {
      int s = (k + 1) % 3;
      int t = (k + 2) % 3;
      double d =
          (p[b + s] - p[a + s]) * (p[c + t] - p[a + t])
              - (p[b + t] - p[a + t]) * (p[c + s] - p[a + s]);
      if (Math.abs(d) > most) {
        most = Math.abs(d);
        det = d;
        i = s;
        j = t;
      }
    }
    x0 = p[a + i];
    y0 = p[a + j];
    ux = p[b + i] - x0;
    uy = p[b + j] - y0;
    vx = p[c + i] - x0;
    vy = p[c + j] - y0;
    double size = Math.abs(ux) + Math.abs(uy) + Math.abs(vx) + Math.abs(vy);
    tolerance = 1e-13 * (size + Math.abs(x0) + Math.abs(y0));
  }

  /** Axis square to which the face is seen largest. */
  int axis() {
    return 3 - i - j;
  }

  /** Barycentric weights of a cell's corners. */
  double[] weights(double[] cell) {
    double[] w = new double[cell.length / 2 * 3];
    for (int k = 0; k < cell.length / 2; k++) {
      double px = cell[2 * k] - x0;
      double py = cell[2 * k + 1] - y0;
      double s = (px * vy - py * vx) / det;
      double t = (ux * py - uy * px) / det;
      w[3 * k] = 1 - s - t;
      w[3 * k + 1] = s;
      w[3 * k + 2] = t;
    }
    return w;
  }

  /** Area of a cell over that of its face. */
  double share(double[] cell) {
    return Math.abs(ConvexCut.doubledArea(cell, cell.length / 2) / det);
  }

  /** True if a point of the plane lies inside another face, seen along {@link #axis()}. */
  boolean holds(int other, double x, double y) {
    int a = 3 * mesh.corner(other, 0);
    int b = 3 * mesh.corner(other, 1);
    int c = 3 * mesh.corner(other, 2);
    int s0 = Predicates.orient2d(p[a + i], p[a + j], p[b + i], p[b + j], x, y);
    int s1 = Predicates.orient2d(p[b + i], p[b + j], p[c + i], p[c + j], x, y);
    int s2 = Predicates.orient2d(p[c + i], p[c + j], p[a + i], p[a + j], x, y);
    return s0 == s1 && s1 == s2 && s0 != 0;
  }

  private void segments(int other, List<double[]> segments) {
    int[] side = new int[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(other, k);
      boolean own = v == mesh.corner(face, 0) || v == mesh.corner(face, 1);
      own |= v == mesh.corner(face, 2);
      side[k] =
          own
              ? 0
              : Predicates.orient3d(
                  p, mesh.corner(face, 0), mesh.corner(face, 1), mesh.corner(face, 2), v);
    }
    if (side[0] == 0 && side[1] == 0 && side[2] == 0) {
      flat.add(other);
      for (int k = 0; k < 3; k++) {
        int a = 3 * mesh.corner(other, k);
        int b = 3 * mesh.corner(other, (k + 1) % 3);
        segments.add(new double[] {p[a + i], p[a + j], p[b + i], p[b + j]});
      }
      return;
    }
    double[] ends = new double[4];
    int n = 0;
    for (int k = 0; k < 3 && n < 2; k++) {
      int a = 3 * mesh.corner(other, k);
      int b = 3 * mesh.corner(other, (k + 1) % 3);
      if (side[k] == 0) {
        ends[2 * n] = p[a + i];
        ends[2 * n + 1] = p[a + j];
        n++;
      } else if (side[k] * side[(k + 1) % 3] < 0) {
        double da = Math.abs(offPlane(a));
        double db = Math.abs(offPlane(b));
        double t = da + db > 0 ? da / (da + db) : 0.5;
        ends[2 * n] = p[a + i] + t * (p[b + i] - p[a + i]);
        ends[2 * n + 1] = p[a + j] + t * (p[b + j] - p[a + j]);
        n++;
      }
    }
    if (n == 2 && Math.hypot(ends[2] - ends[0], ends[3] - ends[1]) > tolerance) {
      segments.add(ends);
    }
  }

  /** Distance of a point from the face's plane, times twice the face's area. */
  private double offPlane(int v) {
    int a = 3 * mesh.corner(face, 0);
    int b = 3 * mesh.corner(face, 1);
    int c = 3 * mesh.corner(face, 2);
    double bx = p[b] - p[a];
    double by = p[b + 1] - p[a + 1];
    double bz = p[b + 2] - p[a + 2];
    double cx = p[c] - p[a];
    double cy = p[c + 1] - p[a + 1];
    double cz = p[c + 2] - p[a + 2];
    return (by * cz - bz * cy) * (p[v] - p[a])
        + (bz * cx - bx * cz) * (p[v + 1] - p[a + 1])
        + (bx * cy - by * cx) * (p[v + 2] - p[a + 2]);
  }

  private void split(double[] piece, List<double[]> segments, int depth) {
    List<double[]> here = new ArrayList<>();
    for (double[] s : segments) {
      if (passes(piece, s)) {
        here.add(s);
      }
    }
    if (here.size() > FEW && depth < DEEPEST) {
      double minX = Double.POSITIVE_INFINITY;
      double maxX = Double.NEGATIVE_INFINITY;
      double minY = minX;
      double maxY = maxX;
      for (int k = 0; k < piece.length; k += 2) {
        minX = Math.min(minX, piece[k]);
        maxX = Math.max(maxX, piece[k]);
        minY = Math.min(minY, piece[k + 1]);
        maxY = Math.max(maxY, piece[k + 1]);
      }
      boolean across = maxX - minX >= maxY - minY;
      double c = across ? -(minX + maxX) / 2 : -(minY + maxY) / 2;
      double[] low = part(piece, across ? 1 : 0, across ? 0 : 1, c, -1);
      double[] high = part(piece, across ? 1 : 0, across ? 0 : 1, c, 1);
      if (low != null && high != null) {
        split(low, here, depth + 1);
        split(high, here, depth + 1);
        return;
      }
    }
    List<double[]> pieces = new ArrayList<>();
    pieces.add(piece);
    for (double[] s : here) {
      List<double[]> next = new ArrayList<>();
      for (double[] q : pieces) {
        double[] line = line(s);
        double[] left = passes(q, s) ? part(q, line[0], line[1], line[2], 1) : null;
        double[] right = left == null ? null : part(q, line[0], line[1], line[2], -1);
        if (right == null) {
          next.add(q);
        } else {
          next.add(left);
          next.add(right);
        }
      }
      pieces = next;
    }
    cells.addAll(pieces);
  }

  /** True if a segment runs through the inside of a polygon. */
  private boolean passes(double[] q, double[] s) {
    int n = q.length / 2;
    double sense = Math.signum(ConvexCut.doubledArea(q, n));
    double t0 = 0;
    double t1 = 1;
    for (int k = 0; k < n; k++) {
      int m = (k + 1) % n;
      double ex = q[2 * m] - q[2 * k];
      double ey = q[2 * m + 1] - q[2 * k + 1];
      double l = Math.hypot(ex, ey);
      if (l == 0) {
        continue;
      }
      double d0 = sense * (ex * (s[1] - q[2 * k + 1]) - ey * (s[0] - q[2 * k])) / l;
      double d1 = sense * (ex * (s[3] - q[2 * k + 1]) - ey * (s[2] - q[2 * k])) / l;
      if (d0 <= tolerance && d1 <= tolerance) {
        return false;
      }
      if (d0 < 0) {
        t0 = Math.max(t0, d0 / (d0 - d1));
      } else if (d1 < 0) {
        t1 = Math.min(t1, d0 / (d0 - d1));
      }
    }
    return (t1 - t0) * Math.hypot(s[2] - s[0], s[3] - s[1]) > tolerance;
  }

  private static double[] line(double[] s) {
    double dx = s[2] - s[0];
    double dy = s[3] - s[1];
    double l = Math.hypot(dx, dy);
    double a = -dy / l;
    double b = dx / l;
    return new double[] {a, b, -(a * s[0] + b * s[1])};
  }

  private double[] part(double[] q, double a, double b, double c, int side) {
    double[] out = new double[q.length + 2];
    int n = ConvexCut.part(q, q.length / 2, a, b, c, tolerance, side, out);
    return n == 0 ? null : Arrays.copyOf(out, 2 * n);
  }
}
