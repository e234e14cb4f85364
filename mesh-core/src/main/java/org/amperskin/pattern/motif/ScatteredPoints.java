package org.amperskin.pattern.motif;

import java.util.Arrays;
import java.util.Random;

/**
 * Points on a square that closes on itself, nowhere closer than a distance and with no room for
 * many more.
 *
 * <p>Guaranteed: the same numbers give the same points; distances are taken across the borders too.
 *
 * <p>Method: Bridson, "Fast Poisson disk sampling in arbitrary dimensions", SIGGRAPH sketches 2007
 * (from memory), on a torus: new points are tried in the ring of one to two distances round old
 * ones; afterwards random darts fill what was missed. Cost: linear in the number of points.
 */
final class ScatteredPoints {
  private static final int TRIES = 40;
  private static final int DARTS_PER_CELL = 12;

  private final double side;
  private final double apart;
  private final int cells;
  private final int reach;
  private final int[] heads;
  private int[] next = new int[64];
  private double[] xy = new double[128];
  private int size;

  private ScatteredPoints(double side, double apart) {
    this.side = side;
    this.apart = apart;
    this.cells = Math.max(1, (int) Math.floor(side / apart));
    this.reach = cells < 3 ? cells : 1;
    this.heads = new int[cells * cells];
    Arrays.fill(heads, -1);
  }

  /**
   * @param sideMm side of the square (mm)
   * @param apartMm least distance (mm)
   * @return {@code xy[2*p]}, {@code xy[2*p+1]}, each 0 to {@code sideMm}
   */
  static double[] of(double sideMm, double apartMm, long seed) {
    ScatteredPoints field = new ScatteredPoints(sideMm, apartMm);
    field.scatter(new Random(seed));
    return Arrays.copyOf(field.xy, 2 * field.size);
  }

  private void scatter(Random random) {
    add(random.nextDouble() * side, random.nextDouble() * side);
    int[] open = new int[] {0};
    int count = 1;
    while (count > 0) {
      int at = random.nextInt(count);
      int p = open[at];
      boolean found = false;
      for (int t = 0; t < TRIES && !found; t++) {
        double angle = 2 * Math.PI * random.nextDouble();
        double r = apart * Math.sqrt(1 + 3 * random.nextDouble());
        double x = wrapped(xy[2 * p] + r * Math.cos(angle));
        double y = wrapped(xy[2 * p + 1] + r * Math.sin(angle));
        if (free(x, y)) {
          if (count == open.length) {
            open = Arrays.copyOf(open, 2 * count);
          }
          open[count++] = add(x, y);
          found = true;
        }
      }
      if (!found) {
        open[at] = open[--count];
      }
    }
    for (int d = 0; d < DARTS_PER_CELL * cells * cells; d++) {
      double x = random.nextDouble() * side;
      double y = random.nextDouble() * side;
      if (free(x, y)) {
        add(x, y);
      }
    }
  }

  private double wrapped(double v) {
    double w = v - side * Math.floor(v / side);
    return w < side ? w : 0;
  }

  private int cell(double v) {
    return Math.min(cells - 1, (int) (v / side * cells));
  }

  private boolean free(double x, double y) {
    int cx = cell(x);
    int cy = cell(y);
    for (int j = -reach; j <= reach; j++) {
      for (int i = -reach; i <= reach; i++) {
        int c = Math.floorMod(cy + j, cells) * cells + Math.floorMod(cx + i, cells);
        for (int p = heads[c]; p >= 0; p = next[p]) {
          double dx = Math.abs(xy[2 * p] - x);
          double dy = Math.abs(xy[2 * p + 1] - y);
          if (Math.hypot(Math.min(dx, side - dx), Math.min(dy, side - dy)) < apart) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private int add(double x, double y) {
    if (size == next.length) {
      next = Arrays.copyOf(next, 2 * size);
      xy = Arrays.copyOf(xy, 4 * size);
    }
    xy[2 * size] = x;
    xy[2 * size + 1] = y;
    int c = cell(y) * cells + cell(x);
    next[size] = heads[c];
    heads[c] = size;
    return size++;
  }
}
