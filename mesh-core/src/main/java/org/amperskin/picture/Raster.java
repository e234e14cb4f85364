package org.amperskin.picture;

/** Fills the rows of one band with the nearest faces. */
final class Raster {
  private static final int STEPS = View.STEPS;
  private static final int HALF = STEPS / 2;
  private static final double GUARD = 64;

  private final Painting painting;
  private final View view;
  private final float[] depth;
  private final int[] faces;
  private final int width;
  private final int top;
  private final int end;

  Raster(Painting painting, View view, float[] depth, int[] faces, int width, int top, int end) {
    this.painting = painting;
    this.view = view;
    this.depth = depth;
    this.faces = faces;
    this.width = width;
    this.top = top;
    this.end = end;
  }

  void drawAll() {
    int[] corners = painting.mesh().corners();
    int[] x = view.x;
    int[] y = view.y;
    float[] key = view.key;
    for (int f = 0, i = 0; i < corners.length; f++, i += 3) {
      int a = corners[i];
      int b = corners[i + 1];
      int c = corners[i + 2];
      if (x[a] == View.AWAY || x[b] == View.AWAY || x[c] == View.AWAY) {
        drawCut(f, a, b, c);
      } else {
        fill(f, x[a], y[a], key[a], x[b], y[b], key[b], x[c], y[c], key[c]);
      }
    }
  }

  private void fill(
      int face, int x0, int y0, double d0, int x1, int y1, double d1, int x2, int y2, double d2) {
    int firstRow = Math.max(top, rowFrom(Math.min(y0, Math.min(y1, y2))));
    int lastRow = Math.min(end - 1, rowTo(Math.max(y0, Math.max(y1, y2))));
    if (firstRow > lastRow) {
      return;
    }
    int first = Math.max(0, rowFrom(Math.min(x0, Math.min(x1, x2))));
    int last = Math.min(width - 1, rowTo(Math.max(x0, Math.max(x1, x2))));
    if (first > last) {
      return;
    }
    long area = (long) (x1 - x0) * (y2 - y0) - (long) (x2 - x0) * (y1 - y0);
    if (area == 0) {
      return;
    }
    if (area < 0) {
      int xs = x1;
      int ys = y1;
      double ds = d1;
      x1 = x2;
      y1 = y2;
      d1 = d2;
      x2 = xs;
      y2 = ys;
      d2 = ds;
      area = -area;
    }
    long px = (long) first * STEPS + HALF;
    long py = (long) firstRow * STEPS + HALF;
    long e0 = edge(x1, y1, x2, y2, px, py);
    long e1 = edge(x2, y2, x0, y0, px, py);
    long e2 = edge(x0, y0, x1, y1, px, py);
    long bias0 = bias(x1, y1, x2, y2);
    long bias1 = bias(x2, y2, x0, y0);
    long bias2 = bias(x0, y0, x1, y1);
    long right0 = (long) (y1 - y2) * STEPS;
    long right1 = (long) (y2 - y0) * STEPS;
    long right2 = (long) (y0 - y1) * STEPS;
    long down0 = (long) (x2 - x1) * STEPS;
    long down1 = (long) (x0 - x2) * STEPS;
    long down2 = (long) (x1 - x0) * STEPS;
    double slope1 = (d1 - d0) / area;
    double slope2 = (d2 - d0) / area;
    for (int row = firstRow; row <= lastRow; row++) {
      long s0 = e0;
      long s1 = e1;
      long s2 = e2;
      int at = row * width + first;
      boolean inside = false;
      for (int col = first; col <= last; col++, at++) {
        if ((s0 + bias0 | s1 + bias1 | s2 + bias2) >= 0) {
          inside = true;
          float d = (float) (d0 + s1 * slope1 + s2 * slope2);
          if (d > depth[at] || d == depth[at] && before(face, faces[at])) {
            depth[at] = d;
            faces[at] = face;
          }
        } else if (inside) {
          break;
        }
        s0 += right0;
        s1 += right1;
        s2 += right2;
      }
      e0 += down0;
      e1 += down1;
      e2 += down2;
    }
  }

  private boolean before(int face, int other) {
    if (other == Picture.NO_FACE) {
      return true;
    }
    int mine = painting.colourOf(face);
    int theirs = painting.colourOf(other);
    return mine != theirs ? mine < theirs : face < other;
  }

  /** First row or column whose centre lies at or after a coordinate. */
  private static int rowFrom(int at) {
    return Math.floorDiv(at + HALF - 1, STEPS);
  }

  /** Last row or column whose centre lies at or before a coordinate. */
  private static int rowTo(int at) {
    return Math.floorDiv(at - HALF, STEPS);
  }

  private static long edge(int ax, int ay, int bx, int by, long px, long py) {
    return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
  }

  /** Zero for a top or left edge, whose own samples count; -1 for the others. */
  private static long bias(int ax, int ay, int bx, int by) {
    int dx = bx - ax;
    int dy = by - ay;
    return dy < 0 || dy == 0 && dx > 0 ? 0 : -1;
  }

  /** Draws a face of which a corner is behind the near plane or far outside the picture. */
  private void drawCut(int face, int a, int b, int c) {
    double[][] seen = {new double[3], new double[3], new double[3]};
    view.toView(a, seen[0]);
    view.toView(b, seen[1]);
    view.toView(c, seen[2]);
    Polygon polygon = new Polygon(seen);
    polygon.cut(2, 1, view.nearMm);
    polygon.each(view::project);
    polygon.cut(0, 1, -GUARD);
    polygon.cut(0, -1, -(view.width + GUARD));
    polygon.cut(1, 1, -GUARD);
    polygon.cut(1, -1, -(view.height + GUARD));
    for (int i = 2; i < polygon.size(); i++) {
      double[] p = polygon.corner(0);
      double[] q = polygon.corner(i - 1);
      double[] r = polygon.corner(i);
      fill(
          face,
          grid(p[0]),
          grid(p[1]),
          p[2],
          grid(q[0]),
          grid(q[1]),
          q[2],
          grid(r[0]),
          grid(r[1]),
          r[2]);
    }
  }

  private static int grid(double samples) {
    return (int) Math.round(samples * STEPS);
  }
}
