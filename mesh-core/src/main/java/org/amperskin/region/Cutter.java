package org.amperskin.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.geom.ConvexCut;
import org.amperskin.mesh.SurfaceMesh;

/** Cuts one polygon after the other along the shadows on it; one for each thread. */
final class Cutter {
  /** What the light does to a polygon. */
  enum Light {
    /** All of it is reached. */
    SEEN,
    /** None of it is reached. */
    HIDDEN,
    /** The pieces are in {@link #seen()} and {@link #hidden()}. */
    MIXED
  }

  private static final int FEW = 8;
  private static final int DEEPEST = 40;
  private static final double SLIVER = 1e-9;

  private final Shadows shadows;
  private final SurfaceMesh mesh;
  private final FilmFrame frame;
  private final int[] stamp;
  private int stampNow;
  private final List<double[]> seen = new ArrayList<>();
  private final List<double[]> hidden = new ArrayList<>();
  private double sliverArea;
  private double tolerance;
  private final double[] g = new double[3];
  private final double[] buffer = new double[64];

  Cutter(Shadows shadows) {
    this.shadows = shadows;
    this.mesh = shadows.mesh();
    this.frame = shadows.frame();
    this.stamp = new int[mesh.faceCount()];
  }

  List<double[]> seen() {
    return seen;
  }

  List<double[]> hidden() {
    return hidden;
  }

  /** Area of slivers (artwork mm2) that were given to the wrong side so far. */
  double sliverArea() {
    return sliverArea;
  }

  /**
   * Cuts a polygon.
   *
   * @param face the face of the uncut mesh it lies on
   * @param p corners {@code p[2*i], p[2*i+1]}, artwork mm
   * @param n number of corners
   */
  Light cut(int face, double[] p, int n) {
    seen.clear();
    hidden.clear();
    List<double[]> over = over(face, p, n);
    if (over.isEmpty()) {
      return Light.SEEN;
    }
    return visit(Arrays.copyOf(p, 2 * n), over, 0);
  }

  /** The polygons, nearer to the lamp, that may lie over p. */
  private List<double[]> over(int face, double[] p, int n) {
    double minX = p[0];
    double maxX = p[0];
    double minY = p[1];
    double maxY = p[1];
    for (int i = 1; i < n; i++) {
      minX = Math.min(minX, p[2 * i]);
      maxX = Math.max(maxX, p[2 * i]);
      minY = Math.min(minY, p[2 * i + 1]);
      maxY = Math.max(maxY, p[2 * i + 1]);
    }
    tolerance =
        1e-13 * Math.max(Math.max(Math.abs(minX), Math.abs(maxX)), maxX - minX + maxY - minY);
    int a = mesh.corner(face, 0);
    int b = mesh.corner(face, 1);
    int c = mesh.corner(face, 2);
    double farthest = Math.max(frame.depth(a), Math.max(frame.depth(b), frame.depth(c)));
    stampNow++;
    stamp[face] = stampNow;
    List<double[]> found = List.of();
    int c1 = shadows.columnAt(maxX);
    int r1 = shadows.rowAt(maxY);
    for (int r = shadows.rowAt(minY); r <= r1; r++) {
      for (int col = shadows.columnAt(minX); col <= c1; col++) {
        int end = shadows.cellEnd(col, r);
        for (int i = shadows.cellBegin(col, r); i < end; i++) {
          int f = shadows.faceAt(i);
          if (stamp[f] == stampNow) {
            continue;
          }
          stamp[f] = stampNow;
          int u = mesh.corner(f, 0);
          int v = mesh.corner(f, 1);
          int w = mesh.corner(f, 2);
          double nearest = Math.min(frame.depth(u), Math.min(frame.depth(v), frame.depth(w)));
          if (nearest >= farthest - shadows.gapMm()
              || Math.min(frame.x(u), Math.min(frame.x(v), frame.x(w))) >= maxX
              || Math.max(frame.x(u), Math.max(frame.x(v), frame.x(w))) <= minX
              || Math.min(frame.y(u), Math.min(frame.y(v), frame.y(w))) >= maxY
              || Math.max(frame.y(u), Math.max(frame.y(v), frame.y(w))) <= minY
              || apart(a, b, c, u, v, w)
              || apart(u, v, w, a, b, c)) {
            continue;
          }
          double[] nearer = nearer(a, b, c, u, v, w);
          if (nearer != null) {
            if (found.isEmpty()) {
              found = new ArrayList<>();
            }
            found.add(nearer);
          }
        }
      }
    }
    return found;
  }

  /**
   * True if an edge of triangle a, b, c has u, v, w on its outer side; exact for shared corners.
   */
  private boolean apart(int a, int b, int c, int u, int v, int w) {
    double sense = turn(a, b, c);
    return outside(a, b, sense, u, v, w)
        || outside(b, c, sense, u, v, w)
        || outside(c, a, sense, u, v, w);
  }

  private boolean outside(int a, int b, double sense, int u, int v, int w) {
    return turn(a, b, u) * sense <= 0 && turn(a, b, v) * sense <= 0 && turn(a, b, w) * sense <= 0;
  }

  private double turn(int a, int b, int c) {
    return (frame.x(b) - frame.x(a)) * (frame.y(c) - frame.y(a))
        - (frame.y(b) - frame.y(a)) * (frame.x(c) - frame.x(a));
  }

  /** The part of u, v, w that lies nearer to the lamp than the plane a, b, c; null if none. */
  private double[] nearer(int a, int b, int c, int u, int v, int w) {
    double xa = frame.x(a);
    double ya = frame.y(a);
    double det = turn(a, b, c);
    double db = frame.depth(b) - frame.depth(a);
    double dc = frame.depth(c) - frame.depth(a);
    double slopeX = (db * (frame.y(c) - ya) - dc * (frame.y(b) - ya)) / det;
    double slopeY = (dc * (frame.x(b) - xa) - db * (frame.x(c) - xa)) / det;
    int[] corner = {u, v, w};
    double gap = shadows.gapMm();
    boolean any = false;
    boolean all = true;
    for (int i = 0; i < 3; i++) {
      int q = corner[i];
      boolean shared = q == a || q == b || q == c;
      g[i] =
          shared
              ? 0
              : frame.depth(a)
                  + slopeX * (frame.x(q) - xa)
                  + slopeY * (frame.y(q) - ya)
                  - frame.depth(q);
      any |= g[i] > gap;
      all &= g[i] >= 0;
    }
    if (!any) {
      return null;
    }
    if (all) {
      return new double[] {frame.x(u), frame.y(u), frame.x(v), frame.y(v), frame.x(w), frame.y(w)};
    }
    int to = 0;
    for (int i = 0; i < 3; i++) {
      int j = (i + 1) % 3;
      double x = frame.x(corner[i]);
      double y = frame.y(corner[i]);
      if (g[i] >= 0) {
        buffer[to++] = x;
        buffer[to++] = y;
      }
      if (g[i] > 0 && g[j] < 0 || g[i] < 0 && g[j] > 0) {
        double t = g[i] / (g[i] - g[j]);
        buffer[to++] = x + t * (frame.x(corner[j]) - x);
        buffer[to++] = y + t * (frame.y(corner[j]) - y);
      }
    }
    return to >= 6 ? Arrays.copyOf(buffer, to) : null;
  }

  private Light visit(double[] piece, List<double[]> over, int depth) {
    double area = Math.abs(ConvexCut.doubledArea(piece, piece.length / 2));
    List<double[]> here = new ArrayList<>();
    for (double[] o : over) {
      double[] common = common(piece, o);
      double covered =
          common == null ? 0 : Math.abs(ConvexCut.doubledArea(common, common.length / 2));
      if (covered >= (1 - 1e-14) * area) {
        return Light.HIDDEN;
      }
      if (covered > 1e-15 * area) {
        here.add(o);
      }
    }
    if (here.isEmpty()) {
      return Light.SEEN;
    }
    if (here.size() > FEW && depth < DEEPEST) {
      return halve(piece, here, depth);
    }
    return subtract(piece, here, area);
  }

  private Light halve(double[] piece, List<double[]> over, int depth) {
    int n = piece.length / 2;
    double minX = Double.POSITIVE_INFINITY;
    double maxX = Double.NEGATIVE_INFINITY;
    double minY = minX;
    double maxY = maxX;
    for (int i = 0; i < n; i++) {
      minX = Math.min(minX, piece[2 * i]);
      maxX = Math.max(maxX, piece[2 * i]);
      minY = Math.min(minY, piece[2 * i + 1]);
      maxY = Math.max(maxY, piece[2 * i + 1]);
    }
    boolean across = maxX - minX >= maxY - minY;
    double a = across ? 1 : 0;
    double c = across ? -(minX + maxX) / 2 : -(minY + maxY) / 2;
    double[] first = part(piece, a, 1 - a, c, -1);
    double[] second = part(piece, a, 1 - a, c, 1);
    if (first == null || second == null) {
      return subtract(piece, over, Math.abs(ConvexCut.doubledArea(piece, n)));
    }
    Light one = visit(first, over, depth + 1);
    Light two = visit(second, over, depth + 1);
    if (one == two && one != Light.MIXED) {
      return one;
    }
    keep(one, first);
    keep(two, second);
    return Light.MIXED;
  }

  private void keep(Light light, double[] piece) {
    if (light == Light.SEEN) {
      seen.add(piece);
    } else if (light == Light.HIDDEN) {
      hidden.add(piece);
    }
  }

  private Light subtract(double[] piece, List<double[]> over, double area) {
    List<double[]> left = new ArrayList<>();
    left.add(piece);
    List<double[]> gone = new ArrayList<>();
    for (double[] o : over) {
      List<double[]> rest = new ArrayList<>();
      for (double[] p : left) {
        subtractOne(p, o, rest, gone);
      }
      left = rest;
    }
    double leftArea = total(left);
    double goneArea = total(gone);
    if (leftArea <= SLIVER * area) {
      sliverArea += leftArea / 2;
      return Light.HIDDEN;
    }
    if (goneArea <= SLIVER * area) {
      sliverArea += goneArea / 2;
      return Light.SEEN;
    }
    seen.addAll(left);
    hidden.addAll(gone);
    return Light.MIXED;
  }

  private void subtractOne(double[] p, double[] o, List<double[]> rest, List<double[]> gone) {
    double[] common = common(p, o);
    if (common == null) {
      rest.add(p);
      return;
    }
    double[] piece = p;
    int n = o.length / 2;
    double sense = Math.signum(ConvexCut.doubledArea(o, n));
    for (int i = 0; i < n && piece != null; i++) {
      double[] line = line(o, i, sense);
      if (line != null) {
        double[] outer = part(piece, line[0], line[1], line[2], -1);
        if (outer != null) {
          rest.add(outer);
        }
        piece = part(piece, line[0], line[1], line[2], 1);
      }
    }
    if (piece != null) {
      gone.add(piece);
    }
  }

  /** The polygon that both cover; null if none. */
  private double[] common(double[] p, double[] o) {
    double[] piece = p;
    int n = o.length / 2;
    double sense = Math.signum(ConvexCut.doubledArea(o, n));
    if (sense == 0) {
      return null;
    }
    for (int i = 0; i < n; i++) {
      double[] line = line(o, i, sense);
      if (line != null) {
        int side = ConvexCut.side(piece, piece.length / 2, line[0], line[1], line[2], tolerance);
        if (side < 0) {
          return null;
        }
        if (side == 0) {
          piece = part(piece, line[0], line[1], line[2], 1);
          if (piece == null) {
            return null;
          }
        }
      }
    }
    return piece;
  }

  /** Line of edge i of polygon o, its inner side positive; null for an edge without length. */
  private static double[] line(double[] o, int i, double sense) {
    int n = o.length / 2;
    int j = (i + 1) % n;
    double dx = o[2 * j] - o[2 * i];
    double dy = o[2 * j + 1] - o[2 * i + 1];
    double l = Math.sqrt(dx * dx + dy * dy);
    if (l == 0) {
      return null;
    }
    double a = -dy / l * sense;
    double b = dx / l * sense;
    return new double[] {a, b, -(a * o[2 * i] + b * o[2 * i + 1])};
  }

  private double[] part(double[] p, double a, double b, double c, int side) {
    double[] out = new double[p.length + 2];
    int n = ConvexCut.part(p, p.length / 2, a, b, c, tolerance, side, out);
    return n == 0 ? null : Arrays.copyOf(out, 2 * n);
  }

  private static double total(List<double[]> polygons) {
    double sum = 0;
    for (double[] p : polygons) {
      sum += Math.abs(ConvexCut.doubledArea(p, p.length / 2));
    }
    return sum;
  }
}
