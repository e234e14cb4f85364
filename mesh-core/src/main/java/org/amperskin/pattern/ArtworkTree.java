package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.geom.ConvexCut;

/**
 * Artwork prepared for cutting convex polygons into opaque, clear and beyond-the-sheet pieces.
 *
 * <p>Definition: a binary space partition whose lines are the sheet's borders, medians of the
 * edges' positions and the supporting lines of the edges themselves; every leaf is wholly opaque,
 * clear or beyond the sheet.
 *
 * <p>Guaranteed: the pieces add up to the polygon up to rounding, and their boundary follows the
 * artwork's edges to {@link #tolerance()}. Safe for many threads at once.
 *
 * <p>Method and source: H. Fuchs, Z. Kedem, B. Naylor, On visible surface generation by a priori
 * tree structures, SIGGRAPH 1980 (from memory).
 *
 * <p>Cost: building n log n for scattered edges; a cut walks only leaves that the polygon meets.
 */
public final class ArtworkTree {
  /** What a piece lies on. */
  public enum Cover {
    /** Black: light is stopped. */
    OPAQUE,
    /** Transparent. */
    CLEAR,
    /** Past the film's outline. */
    BEYOND
  }

  /** Receives pieces and edges. */
  public interface Sink {
    /**
     * A convex piece; the array is reused after the call.
     *
     * @param p corners {@code p[2*i], p[2*i+1]}, mm
     * @param n number of corners
     */
    void piece(Cover cover, double[] p, int n);

    /** A stretch of artwork edge that crosses or borders the polygon, mm. */
    void edge(double x0, double y0, double x1, double y1);
  }

  private static final int MANY = 6;
  private static final int LINE = 3;

  private final double tolerance;
  private double[] lines = new double[LINE * 64];
  private int[] children = new int[2 * 64];
  private double[][] stretches = new double[64][];
  private int nodes;
  private final int root;
  private final Artwork artwork;
  private final RowIndex rows;

  private ArtworkTree(Artwork artwork) {
    this.artwork = artwork;
    this.tolerance = 1e-12 * Math.max(artwork.widthMm(), artwork.heightMm());
    this.rows = new RowIndex(artwork);
    double w = artwork.widthMm() / 2;
    double h = artwork.heightMm() / 2;
    List<double[]> edges = edges();
    double[] cell = {-w, -h, w, -h, w, h, -w, h};
    int inside = build(edges, cell, 0, null);
    int top = node(0, -1, h, inside, leaf(Cover.BEYOND), null);
    int bottom = node(0, 1, h, top, leaf(Cover.BEYOND), null);
    int right = node(-1, 0, w, bottom, leaf(Cover.BEYOND), null);
    root = node(1, 0, w, right, leaf(Cover.BEYOND), null);
  }

  /** Prepares artwork. */
  public static ArtworkTree of(Artwork artwork) {
    return new ArtworkTree(artwork);
  }

  /** Distance (mm) within which a corner counts as lying on a line. */
  public double tolerance() {
    return tolerance;
  }

  private List<double[]> edges() {
    List<double[]> edges = new ArrayList<>();
    double[] xy = artwork.xy();
    int[] starts = artwork.ringStarts();
    for (int r = 0; r + 1 < starts.length; r++) {
      int last = starts[r + 1] - 1;
      for (int i = starts[r]; i <= last; i++) {
        int j = i == last ? starts[r] : i + 1;
        edges.add(new double[] {xy[2 * i], xy[2 * i + 1], xy[2 * j], xy[2 * j + 1]});
      }
    }
    return edges;
  }

  /** Builds the part of the tree for a cell; {@code known} is what an empty cell must be. */
  private int build(List<double[]> edges, double[] cell, int depth, Cover known) {
    if (edges.isEmpty()) {
      return leaf(known != null ? known : coverOf(cell));
    }
    if (edges.size() > MANY && depth < 200) {
      int byMedian = splitAtMedian(edges, cell, depth);
      if (byMedian != Integer.MIN_VALUE) {
        return byMedian;
      }
    }
    double[] e = longest(edges);
    double length = Math.hypot(e[2] - e[0], e[3] - e[1]);
    double a = -(e[3] - e[1]) / length;
    double b = (e[2] - e[0]) / length;
    double c = -(a * e[0] + b * e[1]);
    List<double[]> left = new ArrayList<>();
    List<double[]> right = new ArrayList<>();
    List<double[]> on = new ArrayList<>();
    distribute(edges, a, b, c, left, right, on);
    double[] out = new double[cell.length + 2];
    int nl = ConvexCut.part(cell, cell.length / 2, a, b, c, tolerance, 1, out);
    double[] leftCell = Arrays.copyOf(out, 2 * nl);
    int nr = ConvexCut.part(cell, cell.length / 2, a, b, c, tolerance, -1, out);
    double[] rightCell = Arrays.copyOf(out, 2 * nr);
    int l = build(left, leftCell, depth + 1, Cover.OPAQUE);
    int r = build(right, rightCell, depth + 1, Cover.CLEAR);
    double[] along = new double[2 * on.size()];
    for (int i = 0; i < on.size(); i++) {
      double[] s = on.get(i);
      double t0 = b * s[0] - a * s[1];
      double t1 = b * s[2] - a * s[3];
      along[2 * i] = Math.min(t0, t1);
      along[2 * i + 1] = Math.max(t0, t1);
    }
    return node(a, b, c, l, r, along);
  }

  private int splitAtMedian(List<double[]> edges, double[] cell, int depth) {
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    for (int i = 0; i < cell.length; i += 2) {
      x0 = Math.min(x0, cell[i]);
      x1 = Math.max(x1, cell[i]);
      y0 = Math.min(y0, cell[i + 1]);
      y1 = Math.max(y1, cell[i + 1]);
    }
    int axis = x1 - x0 >= y1 - y0 ? 0 : 1;
    double[] starts = new double[edges.size()];
    for (int i = 0; i < starts.length; i++) {
      starts[i] = edges.get(i)[axis];
    }
    Arrays.sort(starts);
    double at = starts[starts.length / 2];
    double a = axis == 0 ? -1 : 0;
    double b = axis == 0 ? 0 : -1;
    List<double[]> low = new ArrayList<>();
    List<double[]> high = new ArrayList<>();
    List<double[]> on = new ArrayList<>();
    distribute(edges, a, b, at, low, high, on);
    // A cut that puts most edges on both sides, or an edge on the line, does not help.
    if (!on.isEmpty() || 4 * Math.max(low.size(), high.size()) > 3 * edges.size() + 3) {
      return Integer.MIN_VALUE;
    }
    double[] out = new double[cell.length + 2];
    int nl = ConvexCut.part(cell, cell.length / 2, a, b, at, tolerance, 1, out);
    double[] lowCell = Arrays.copyOf(out, 2 * nl);
    int nh = ConvexCut.part(cell, cell.length / 2, a, b, at, tolerance, -1, out);
    double[] highCell = Arrays.copyOf(out, 2 * nh);
    if (nl == 0 || nh == 0) {
      return Integer.MIN_VALUE;
    }
    int l = build(low, lowCell, depth + 1, null);
    int h = build(high, highCell, depth + 1, null);
    return node(a, b, at, l, h, null);
  }

  private void distribute(
      List<double[]> edges,
      double a,
      double b,
      double c,
      List<double[]> left,
      List<double[]> right,
      List<double[]> on) {
    for (double[] e : edges) {
      double d0 = a * e[0] + b * e[1] + c;
      double d1 = a * e[2] + b * e[3] + c;
      if (Math.abs(d0) <= tolerance && Math.abs(d1) <= tolerance) {
        on.add(e);
      } else if (d0 >= -tolerance && d1 >= -tolerance) {
        left.add(e);
      } else if (d0 <= tolerance && d1 <= tolerance) {
        right.add(e);
      } else {
        double t = d0 / (d0 - d1);
        double x = e[0] + t * (e[2] - e[0]);
        double y = e[1] + t * (e[3] - e[1]);
        double[] first = {e[0], e[1], x, y};
        double[] second = {x, y, e[2], e[3]};
        (d0 > 0 ? left : right).add(first);
        (d0 > 0 ? right : left).add(second);
      }
    }
  }

  private static double[] longest(List<double[]> edges) {
    double[] best = edges.get(0);
    double most = -1;
    for (double[] e : edges) {
      double l = (e[2] - e[0]) * (e[2] - e[0]) + (e[3] - e[1]) * (e[3] - e[1]);
      if (l > most) {
        most = l;
        best = e;
      }
    }
    return best;
  }

  private Cover coverOf(double[] cell) {
    double x = 0;
    double y = 0;
    int n = cell.length / 2;
    for (int i = 0; i < n; i++) {
      x += cell[2 * i] / n;
      y += cell[2 * i + 1] / n;
    }
    return rows.opaque(x, y) ? Cover.OPAQUE : Cover.CLEAR;
  }

  private static int leaf(Cover cover) {
    return -1 - cover.ordinal();
  }

  private int node(double a, double b, double c, int left, int right, double[] along) {
    if (nodes == stretches.length) {
      lines = Arrays.copyOf(lines, 2 * lines.length);
      children = Arrays.copyOf(children, 2 * children.length);
      stretches = Arrays.copyOf(stretches, 2 * stretches.length);
    }
    lines[LINE * nodes] = a;
    lines[LINE * nodes + 1] = b;
    lines[LINE * nodes + 2] = c;
    children[2 * nodes] = left;
    children[2 * nodes + 1] = right;
    stretches[nodes] = along;
    return nodes++;
  }

  /**
   * Cuts a convex polygon.
   *
   * @param p corners {@code p[2*i], p[2*i+1]}, mm, counter-clockwise; not changed
   * @param n number of corners
   */
  public void cut(double[] p, int n, Sink sink) {
    cut(root, p, n, sink);
  }

  private void cut(int node, double[] p, int n, Sink sink) {
    int at = node;
    while (at >= 0) {
      double a = lines[LINE * at];
      double b = lines[LINE * at + 1];
      double c = lines[LINE * at + 2];
      int side = ConvexCut.side(p, n, a, b, c, tolerance);
      if (stretches[at] != null && side >= 0) {
        tellEdges(at, p, n, sink);
      }
      if (side == 0) {
        double[] left = new double[2 * n + 2];
        int nl = ConvexCut.part(p, n, a, b, c, tolerance, 1, left);
        double[] right = new double[2 * n + 2];
        int nr = ConvexCut.part(p, n, a, b, c, tolerance, -1, right);
        if (nl > 0 && nr > 0) {
          cut(children[2 * at], left, nl, sink);
          cut(children[2 * at + 1], right, nr, sink);
          return;
        }
        at = children[nr > 0 ? 2 * at + 1 : 2 * at];
      } else {
        at = children[side > 0 ? 2 * at : 2 * at + 1];
      }
    }
    sink.piece(Cover.values()[-1 - at], p, n);
  }

  /** The stretch of the node's line that the polygon covers, cut to the artwork's edges on it. */
  private void tellEdges(int node, double[] p, int n, Sink sink) {
    double a = lines[LINE * node];
    double b = lines[LINE * node + 1];
    double c = lines[LINE * node + 2];
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    double x0 = p[2 * n - 2];
    double y0 = p[2 * n - 1];
    double d0 = a * x0 + b * y0 + c;
    for (int i = 0; i < n; i++) {
      double x1 = p[2 * i];
      double y1 = p[2 * i + 1];
      double d1 = a * x1 + b * y1 + c;
      if (Math.abs(d1) <= tolerance) {
        double t = b * x1 - a * y1;
        from = Math.min(from, t);
        to = Math.max(to, t);
      } else if (d0 > tolerance && d1 < -tolerance || d0 < -tolerance && d1 > tolerance) {
        double s = d0 / (d0 - d1);
        double t = b * (x0 + s * (x1 - x0)) - a * (y0 + s * (y1 - y0));
        from = Math.min(from, t);
        to = Math.max(to, t);
      }
      x0 = x1;
      y0 = y1;
      d0 = d1;
    }
    double[] along = stretches[node];
    for (int i = 0; i < along.length; i += 2) {
      double s0 = Math.max(from, along[i]);
      double s1 = Math.min(to, along[i + 1]);
      if (s1 > s0) {
        sink.edge(b * s0 - a * c, -a * s0 - b * c, b * s1 - a * c, -a * s1 - b * c);
      }
    }
  }
}
