package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The outline of a set of pixels, exactly along their edges.
 *
 * <p>Guaranteed: rings are simple with dark on their left, corners only; pixels that touch only at
 * a corner belong to separate rings that touch there.
 *
 * <p>Method: edges between dark and light pixels, followed with the sharpest left turn; a ring that
 * returns to one of its own corners is cut apart there.
 */
final class PixelOutline {
  private static final int EAST = 0;
  private static final int[] STEP_X = {1, 0, -1, 0};
  private static final int[] STEP_Y = {0, 1, 0, -1};

  private final int w;
  private final int h;
  private final byte[] out;
  private final List<int[]> rings = new ArrayList<>();
  private long points;
  private int specks;

  /** Dark pixels: bit {@code j * width + i}, rows counted from below. */
  PixelOutline(BitSet dark, int width, int height) {
    w = width;
    h = height;
    out = new byte[(w + 1) * (h + 1)];
    for (int at = dark.nextSetBit(0); at >= 0; at = dark.nextSetBit(at + 1)) {
      int i = at % w;
      int j = at / w;
      if (j == 0 || !dark.get(at - w)) {
        leave(i, j, EAST);
      }
      if (i == w - 1 || !dark.get(at + 1)) {
        leave(i + 1, j, 1);
      }
      if (j == h - 1 || !dark.get(at + w)) {
        leave(i + 1, j + 1, 2);
      }
      if (i == 0 || !dark.get(at - 1)) {
        leave(i, j + 1, 3);
      }
    }
    for (int v = 0; v < out.length; v++) {
      while (out[v] != 0 && points <= PointBudget.LARGEST) {
        follow(v);
      }
    }
  }

  /** Corners of all rings; counting stops once there are too many. */
  long points() {
    return points;
  }

  /** Rings that enclose fewer than four pixels. */
  int specks() {
    return specks;
  }

  /** Rings in pixels from the lower left corner, {@code x0, y0, x1, y1, ...}. */
  List<double[]> rings() {
    List<double[]> out = new ArrayList<>();
    for (int[] ring : rings) {
      out.add(Arrays.stream(ring).asDoubleStream().toArray());
    }
    return out;
  }

  private void leave(int i, int j, int direction) {
    out[j * (w + 1) + i] |= (byte) (1 << direction);
  }

  private void follow(int begin) {
    int[] path = new int[64];
    int size = 0;
    Map<Integer, Integer> crossings = new HashMap<>();
    int v = begin;
    int direction = Integer.numberOfTrailingZeros(out[v]);
    int firstDirection = direction;
    boolean twoWays = Integer.bitCount(out[v]) == 2;
    path[size++] = v;
    if (twoWays) {
      crossings.put(v, 0);
    }
    while (true) {
      out[v] &= (byte) ~(1 << direction);
      v += STEP_X[direction] + STEP_Y[direction] * (w + 1);
      Integer back = crossings.get(v);
      if (v == begin && (back == null || out[v] == 0)) {
        break;
      }
      if (back != null) {
        store(Arrays.copyOfRange(path, back, size));
        for (int k = back + 1; k < size; k++) {
          crossings.remove(path[k]);
        }
        size = back + 1;
      }
      int next = turn(v, direction);
      if (back == null && next != direction) {
        if (size == path.length) {
          path = Arrays.copyOf(path, 2 * size);
        }
        if (Integer.bitCount(out[v]) == 2) {
          crossings.put(v, size);
        }
        path[size++] = v;
      }
      direction = next;
    }
    store(
        direction == firstDirection
            ? Arrays.copyOfRange(path, 1, size)
            : Arrays.copyOf(path, size));
  }

  /** Left, straight on, or right: whichever edge leaves here first. */
  private int turn(int v, int direction) {
    for (int turn : new int[] {1, 0, 3}) {
      int next = (direction + turn) % 4;
      if ((out[v] & 1 << next) != 0) {
        return next;
      }
    }
    throw new IllegalStateException("outline breaks off at corner " + v);
  }

  private void store(int[] path) {
    int[] ring = new int[2 * path.length];
    long twice = 0;
    for (int k = 0; k < path.length; k++) {
      ring[2 * k] = path[k] % (w + 1);
      ring[2 * k + 1] = path[k] / (w + 1);
    }
    for (int k = 0, q = ring.length - 2; k < ring.length; q = k, k += 2) {
      twice += (long) ring[q] * ring[k + 1] - (long) ring[k] * ring[q + 1];
    }
    if (Math.abs(twice) < 8) {
      specks++;
    }
    points += path.length;
    rings.add(ring);
  }
}
