package org.amperskin.pattern;

import java.util.Arrays;

/**
 * One subpath as straight segments that still know the curve they stand for: each carries the unit
 * tangents of the true curve at its two ends.
 *
 * <p>Segment k runs from point k to point k+1 (the last one of a closed chain back to point 0).
 * {@code runLength[k]} is 0 for a drawn straight line, else the number of segments its curve was
 * cut into. Points never coincide with their neighbours.
 */
final class Chain {
  final double[] x;
  final double[] y;
  final boolean closed;
  final int segments;

  /** Unit tangents: start x, start y, end x, end y of segment k at {@code 4*k}. */
  final double[] tangents;

  final int[] runLength;

  /** Whether segment k and the next belong to the same curve. */
  final boolean[] joinsOn;

  private Chain(
      double[] x, double[] y, boolean closed, double[] tangents, int[] runLength, boolean[] on) {
    this.x = x;
    this.y = y;
    this.closed = closed;
    this.segments = closed ? x.length : x.length - 1;
    this.tangents = tangents;
    this.runLength = runLength;
    this.joinsOn = on;
  }

  int points() {
    return x.length;
  }

  /** Points that end a straight line; those of curves were counted when they were cut. */
  int straightPoints() {
    int straight = 1;
    for (int k = 0; k < segments; k++) {
      straight += runLength[k] == 0 ? 1 : 0;
    }
    return straight;
  }

  /** Point after segment k. */
  int after(int k) {
    return k + 1 == x.length ? 0 : k + 1;
  }

  /** The closed ring of all points, as {@code x0, y0, x1, y1, ...}. */
  double[] ring() {
    double[] ring = new double[2 * x.length];
    for (int p = 0; p < x.length; p++) {
      ring[2 * p] = x[p];
      ring[2 * p + 1] = y[p];
    }
    return ring;
  }

  /** Builds a chain; the only mutable part of it. */
  static final class Builder {
    private double[] x = new double[16];
    private double[] y = new double[16];
    private double[] tangents = new double[64];
    private int[] run = new int[16];
    private boolean[] on = new boolean[16];
    private int size;

    Builder(double startX, double startY) {
      x[0] = startX;
      y[0] = startY;
      size = 1;
    }

    double lastX() {
      return x[size - 1];
    }

    double lastY() {
      return y[size - 1];
    }

    void line(double toX, double toY) {
      double dx = toX - lastX();
      double dy = toY - lastY();
      segment(toX, toY, dx, dy, dx, dy, 0, false);
    }

    /** Adds a segment with the curve's tangents (any length) at its ends. */
    void segment(
        double toX,
        double toY,
        double t0x,
        double t0y,
        double t1x,
        double t1y,
        int runLength,
        boolean joinsOn) {
      double dx = toX - lastX();
      double dy = toY - lastY();
      if (dx == 0 && dy == 0) {
        return;
      }
      if (size == x.length) {
        x = Arrays.copyOf(x, 2 * size);
        y = Arrays.copyOf(y, 2 * size);
        tangents = Arrays.copyOf(tangents, 8 * size);
        run = Arrays.copyOf(run, 2 * size);
        on = Arrays.copyOf(on, 2 * size);
      }
      int k = size - 1;
      unit(4 * k, t0x, t0y, dx, dy);
      unit(4 * k + 2, t1x, t1y, dx, dy);
      run[k] = runLength;
      on[k] = joinsOn;
      x[size] = toX;
      y[size] = toY;
      size++;
    }

    private void unit(int at, double tx, double ty, double dx, double dy) {
      double length = Math.hypot(tx, ty);
      boolean usable = length > 0;
      double ux = usable ? tx : dx;
      double uy = usable ? ty : dy;
      double by = usable ? length : Math.hypot(dx, dy);
      tangents[at] = ux / by;
      tangents[at + 1] = uy / by;
    }

    Chain build(boolean closed) {
      if (closed && size > 1) {
        if (lastX() == x[0] && lastY() == y[0]) {
          size--;
        } else {
          double fromX = lastX();
          double fromY = lastY();
          line(x[0], y[0]);
          if (size > 1 && (fromX != x[0] || fromY != y[0])) {
            size--;
          }
        }
      }
      boolean ring = closed && size > 1;
      int segments = ring ? size : size - 1;
      return new Chain(
          Arrays.copyOf(x, size),
          Arrays.copyOf(y, size),
          ring,
          Arrays.copyOf(tangents, 4 * Math.max(segments, 0)),
          Arrays.copyOf(run, Math.max(segments, 0)),
          Arrays.copyOf(on, Math.max(segments, 0)));
    }
  }
}
