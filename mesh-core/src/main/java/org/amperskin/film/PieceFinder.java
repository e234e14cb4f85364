package org.amperskin.film;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.region.LaidFilm;

/**
 * Finds the piece of skin that a point of the artwork falls on: the one nearest to the film.
 *
 * <p>Cost: as many cells as pieces; a piece is entered row by row into those it may meet.
 */
final class PieceFinder {
  private static final double SLACK = 1e-9;

  private final LaidFilm laid;
  private final double halfWidth;
  private final double halfHeight;
  private final int columns;
  private final int rows;
  private final int[] starts;
  private final int[] inCell;

  /**
   * Sorts pieces.
   *
   * @param halfWidth half the sheet's width (artwork mm); what lies beyond is not looked at
   * @param halfHeight half its height
   */
  PieceFinder(LaidFilm laid, double halfWidth, double halfHeight) {
    this.laid = laid;
    this.halfWidth = halfWidth;
    this.halfHeight = halfHeight;
    int meeting = 0;
    for (int f = 0; f < laid.pieceCount(); f++) {
      meeting += meets(f) ? 1 : 0;
    }
    double cell = Math.sqrt(4 * halfWidth * halfHeight / Math.max(1, Math.min(meeting, 1 << 21)));
    columns = 1 + (int) (2 * halfWidth / cell);
    rows = 1 + (int) (2 * halfHeight / cell);
    starts = new int[columns * rows + 1];
    int[] next = new int[columns * rows + 1];
    for (int f = 0; f < laid.pieceCount(); f++) {
      enter(f, next, null);
    }
    for (int c = 0; c < columns * rows; c++) {
      starts[c + 1] = starts[c] + next[c];
    }
    inCell = new int[starts[columns * rows]];
    System.arraycopy(starts, 0, next, 0, starts.length);
    for (int f = 0; f < laid.pieceCount(); f++) {
      enter(f, next, inCell);
    }
  }

  private double low(int f, boolean x) {
    return x
        ? Math.min(laid.x(f, 0), Math.min(laid.x(f, 1), laid.x(f, 2)))
        : Math.min(laid.y(f, 0), Math.min(laid.y(f, 1), laid.y(f, 2)));
  }

  private double high(int f, boolean x) {
    return x
        ? Math.max(laid.x(f, 0), Math.max(laid.x(f, 1), laid.x(f, 2)))
        : Math.max(laid.y(f, 0), Math.max(laid.y(f, 1), laid.y(f, 2)));
  }

  /** True if the film's light falls on a piece at all and the piece may lie under the sheet. */
  boolean meets(int f) {
    if (!laid.faces(f)
        || low(f, true) > halfWidth
        || high(f, true) < -halfWidth
        || low(f, false) > halfHeight
        || high(f, false) < -halfHeight) {
      return false;
    }
    return true;
  }

  private int column(double x) {
    return Math.max(0, Math.min(columns - 1, (int) ((x + halfWidth) / (2 * halfWidth) * columns)));
  }

  private int row(double y) {
    return Math.max(0, Math.min(rows - 1, (int) ((y + halfHeight) / (2 * halfHeight) * rows)));
  }

  private void enter(int f, int[] next, int[] into) {
    if (!meets(f)) {
      return;
    }
    double height = 2 * halfHeight / rows;
    int r0 = row(low(f, false));
    int r1 = row(high(f, false));
    for (int r = r0; r <= r1; r++) {
      double bottom = r == r0 ? Double.NEGATIVE_INFINITY : -halfHeight + r * height;
      double top = r == r1 ? Double.POSITIVE_INFINITY : -halfHeight + (r + 1) * height;
      double left = Double.POSITIVE_INFINITY;
      double right = Double.NEGATIVE_INFINITY;
      for (int k = 0; k < 3; k++) {
        int m = (k + 1) % 3;
        double y0 = laid.y(f, k);
        double y1 = laid.y(f, m);
        double a = Math.max(Math.min(y0, y1), bottom);
        double b = Math.min(Math.max(y0, y1), top);
        if (a > b) {
          continue;
        }
        double x0 = laid.x(f, k);
        double x1 = laid.x(f, m);
        double xa = y0 == y1 ? x0 : x0 + (a - y0) / (y1 - y0) * (x1 - x0);
        double xb = y0 == y1 ? x1 : x0 + (b - y0) / (y1 - y0) * (x1 - x0);
        left = Math.min(left, Math.min(xa, xb));
        right = Math.max(right, Math.max(xa, xb));
      }
      double slack = SLACK * (halfWidth + halfHeight);
      for (int c = column(left - slack); left <= right && c <= column(right + slack); c++) {
        int at = r * columns + c;
        if (into != null) {
          into[next[at]] = f;
        }
        next[at]++;
      }
    }
  }

  /**
   * The piece nearest to the film at a point.
   *
   * @param weights receives the weights of its three corners there
   * @return the piece, -1 if none is lit there
   */
  int at(double x, double y, double[] weights) {
    if (Math.abs(x) > halfWidth || Math.abs(y) > halfHeight) {
      return -1;
    }
    int cell = row(y) * columns + column(x);
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    double[] w = new double[3];
    for (int i = starts[cell]; i < starts[cell + 1]; i++) {
      int f = inCell[i];
      if (inside(f, x, y, w)) {
        double gap = w[0] * laid.gapMm(f, 0) + w[1] * laid.gapMm(f, 1) + w[2] * laid.gapMm(f, 2);
        if (gap < least) {
          least = gap;
          best = f;
          System.arraycopy(w, 0, weights, 0, 3);
        }
      }
    }
    return best < 0 || dark(best) ? -1 : best;
  }

  private boolean inside(int f, double x, double y, double[] w) {
    double ux = laid.x(f, 1) - laid.x(f, 0);
    double uy = laid.y(f, 1) - laid.y(f, 0);
    double vx = laid.x(f, 2) - laid.x(f, 0);
    double vy = laid.y(f, 2) - laid.y(f, 0);
    double px = x - laid.x(f, 0);
    double py = y - laid.y(f, 0);
    double det = ux * vy - uy * vx;
    w[1] = (px * vy - py * vx) / det;
    w[2] = (ux * py - uy * px) / det;
    w[0] = 1 - w[1] - w[2];
    return w[0] >= -SLACK && w[1] >= -SLACK && w[2] >= -SLACK;
  }

  /** True if the film's light reaches no part of the face. */
  boolean dark(int f) {
    return laid.unreachedShare(laid.parent(f)) >= 1 - 1e-9;
  }

  /** A point of a piece in space (mm). */
  Vec3 point(int f, double[] w) {
    Vec3 p = new Vec3(0, 0, 0);
    SurfaceMesh mesh = laid.mesh();
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(f, k);
      p = p.plus(mesh.point(v).times(w[k]));
    }
    return p;
  }
}
