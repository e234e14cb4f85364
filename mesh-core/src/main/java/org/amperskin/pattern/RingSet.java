package org.amperskin.pattern;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;

/**
 * Rings packed into two arrays, in an order that depends on nothing but their points: each ring
 * starts at its smallest point (x, then y), rings follow each other by first point, then by second,
 * and so on.
 */
final class RingSet {
  private final double[] xy;
  private final int[] starts;

  private RingSet(double[] xy, int[] starts) {
    this.xy = xy;
    this.starts = starts;
  }

  /** Packs rings {@code x0, y0, x1, y1, ...} (mm); each must have three points or more. */
  static RingSet of(List<double[]> rings) {
    double[][] turned = new double[rings.size()][];
    int total = 0;
    for (int r = 0; r < turned.length; r++) {
      turned[r] = fromSmallest(rings.get(r));
      total += turned[r].length;
    }
    Arrays.sort(turned, Comparator.nullsFirst(Arrays::compare));
    double[] xy = new double[total];
    int[] starts = new int[turned.length + 1];
    for (int r = 0, at = 0; r < turned.length; r++) {
      System.arraycopy(turned[r], 0, xy, at, turned[r].length);
      at += turned[r].length;
      starts[r + 1] = at / 2;
    }
    return new RingSet(xy, starts);
  }

  double[] xy() {
    return xy;
  }

  int[] starts() {
    return starts;
  }

  /** The ring without points that lie exactly on the straight line between their neighbours. */
  static double[] withoutCollinear(double[] ring) {
    int n = ring.length / 2;
    double[] kept = new double[ring.length];
    int size = 0;
    for (int p = 0; p < n; p++) {
      int before = (p + n - 1) % n;
      int after = (p + 1) % n;
      Coordinate a = new Coordinate(ring[2 * before], ring[2 * before + 1]);
      Coordinate b = new Coordinate(ring[2 * p], ring[2 * p + 1]);
      Coordinate c = new Coordinate(ring[2 * after], ring[2 * after + 1]);
      if (Orientation.index(a, b, c) != Orientation.COLLINEAR) {
        kept[size++] = ring[2 * p];
        kept[size++] = ring[2 * p + 1];
      }
    }
    return Arrays.copyOf(kept, size);
  }

  private static double[] fromSmallest(double[] ring) {
    int n = ring.length / 2;
    int best = 0;
    for (int p = 1; p < n; p++) {
      double dx = ring[2 * p] - ring[2 * best];
      if (dx < 0 || (dx == 0 && ring[2 * p + 1] < ring[2 * best + 1])) {
        best = p;
      }
    }
    double[] out = new double[ring.length];
    System.arraycopy(ring, 2 * best, out, 0, ring.length - 2 * best);
    System.arraycopy(ring, 0, out, ring.length - 2 * best, 2 * best);
    for (int i = 0; i < out.length; i++) {
      out[i] += 0.0; // -0.0 becomes 0.0, so equal figures compare equal
    }
    return out;
  }
}
