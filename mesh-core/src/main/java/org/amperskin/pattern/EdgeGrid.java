package org.amperskin.pattern;

/**
 * The edges of artwork sorted into square cells, to find the first edge that a ray meets.
 *
 * <p>Definition: edge e runs from {@code ends[4*e], ends[4*e+1]} to {@code ends[4*e+2],
 * ends[4*e+3]} (mm), opaque on its left.
 *
 * <p>Cost: a ray looks at the cells it crosses; about as many cells as edges.
 */
final class EdgeGrid {
  private static final int MOST_CELLS = 1 << 22;

  private final double[] ends;
  private final double left;
  private final double bottom;
  private final double cell;
  private final int columns;
  private final int rows;
  private final int[] starts;
  private final int[] inCell;

  EdgeGrid(double[] ends, double widthMm, double heightMm) {
    this.ends = ends;
    int count = ends.length / 4;
    // a little more than the sheet, so that no edge lies on the grid's border
    double margin = 1e-6 * (widthMm + heightMm);
    double cells = Math.max(1, Math.min(MOST_CELLS, 2.0 * count));
    cell = Math.sqrt((widthMm + 2 * margin) * (heightMm + 2 * margin) / cells);
    left = -widthMm / 2 - margin;
    bottom = -heightMm / 2 - margin;
    columns = 1 + (int) ((widthMm + 2 * margin) / cell);
    rows = 1 + (int) ((heightMm + 2 * margin) / cell);
    starts = new int[columns * rows + 1];
    int[] next = starts.clone();
    for (int e = 0; e < count; e++) {
      walk(e, next, null);
    }
    for (int c = 0; c < columns * rows; c++) {
      starts[c + 1] = starts[c] + next[c];
    }
    inCell = new int[starts[columns * rows]];
    System.arraycopy(starts, 0, next, 0, starts.length);
    for (int e = 0; e < count; e++) {
      walk(e, next, inCell);
    }
  }

  private int column(double x) {
    return Math.max(0, Math.min(columns - 1, (int) Math.floor((x - left) / cell)));
  }

  private int row(double y) {
    return Math.max(0, Math.min(rows - 1, (int) Math.floor((y - bottom) / cell)));
  }

  /** Counts, or enters, an edge in every cell that it meets, row by row. */
  private void walk(int e, int[] next, int[] into) {
    double x0 = ends[4 * e];
    double y0 = ends[4 * e + 1];
    double x1 = ends[4 * e + 2];
    double y1 = ends[4 * e + 3];
    int r0 = row(Math.min(y0, y1));
    int r1 = row(Math.max(y0, y1));
    double slack = 1e-9 * cell;
    for (int r = r0; r <= r1; r++) {
      double low = Math.max(Math.min(y0, y1), bottom + r * cell - slack);
      double high = Math.min(Math.max(y0, y1), bottom + (r + 1) * cell + slack);
      double a = x0;
      double b = x1;
      if (r0 < r1) {
        a = x0 + (low - y0) / (y1 - y0) * (x1 - x0);
        b = x0 + (high - y0) / (y1 - y0) * (x1 - x0);
      }
      int c1 = column(Math.max(a, b) + slack);
      for (int c = column(Math.min(a, b) - slack); c <= c1; c++) {
        int at = r * columns + c;
        if (into != null) {
          into[next[at]] = e;
        }
        next[at]++;
      }
    }
  }

  /** The first edge that a ray meets. */
  static final class Hit {
    int edge;
    double distance;
    double along;
  }

  /**
   * Follows a ray.
   *
   * @param dx direction, a unit vector
   * @param not an edge that is passed over: the one it starts on
   * @param reach how far it is followed (mm)
   * @param hit receives the edge, the distance (mm) and the place along the edge, 0 to 1
   * @return false if nothing is met
   */
  boolean first(double x, double y, double dx, double dy, int not, double reach, Hit hit) {
    hit.edge = -1;
    hit.distance = reach;
    int c = column(x);
    int r = row(y);
    int stepC = dx > 0 ? 1 : -1;
    int stepR = dy > 0 ? 1 : -1;
    double far = Double.POSITIVE_INFINITY;
    double nextC = dx == 0 ? far : (left + (c + (dx > 0 ? 1 : 0)) * cell - x) / dx;
    double nextR = dy == 0 ? far : (bottom + (r + (dy > 0 ? 1 : 0)) * cell - y) / dy;
    double overC = dx == 0 ? far : cell / Math.abs(dx);
    double overR = dy == 0 ? far : cell / Math.abs(dy);
    double from = 0;
    while (c >= 0 && c < columns && r >= 0 && r < rows && from <= hit.distance) {
      for (int i = starts[r * columns + c]; i < starts[r * columns + c + 1]; i++) {
        if (inCell[i] != not) {
          meet(inCell[i], x, y, dx, dy, hit);
        }
      }
      if (nextC < nextR) {
        from = nextC;
        nextC += overC;
        c += stepC;
      } else {
        from = nextR;
        nextR += overR;
        r += stepR;
      }
    }
    return hit.edge >= 0;
  }

  private void meet(int e, double x, double y, double dx, double dy, Hit hit) {
    double ex = ends[4 * e + 2] - ends[4 * e];
    double ey = ends[4 * e + 3] - ends[4 * e + 1];
    double det = dx * ey - dy * ex;
    if (Math.abs(det) < 1e-12 * (Math.abs(ex) + Math.abs(ey))) {
      return;
    }
    double px = ends[4 * e] - x;
    double py = ends[4 * e + 1] - y;
    double t = (px * ey - py * ex) / det;
    double s = (px * dy - py * dx) / det;
    if (t > 0 && t < hit.distance && s >= -1e-12 && s <= 1 + 1e-12) {
      hit.edge = e;
      hit.distance = t;
      hit.along = s;
    }
  }
}
