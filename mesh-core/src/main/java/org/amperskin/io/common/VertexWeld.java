package org.amperskin.io.common;

import java.util.Arrays;

/**
 * Gives equal points one index.
 *
 * <p>Definition: two points are equal if all coordinates are the same number (-0 is 0). Nothing is
 * merged by distance: that could close real gaps.
 *
 * <p>Method: open addressing with linear probing over vertex indices; a block of slots is touched
 * before it is probed, so that cache misses overlap.
 *
 * <p>Cost: about 20 ns a point; 24 bytes a distinct point and 4 to 8 bytes a slot.
 */
public final class VertexWeld {
  private static final int BLOCK = 256;
  private static final double LOAD = 0.5;

  private double[] positions;
  private int[] table;
  private int mask;
  private int count;
  private final int[] hashes = new int[BLOCK];

  /** Written only so that the compiler keeps the reads that warm the cache. */
  private int touched;

  /**
   * An empty weld.
   *
   * @param expected number of distinct points to make room for
   */
  public VertexWeld(int expected) {
    int size =
        Integer.highestOneBit(Math.max(64, (int) Math.min(1 << 29, expected / LOAD)) - 1) << 1;
    positions = new double[3 * Math.max(16, expected)];
    table = new int[size];
    Arrays.fill(table, -1);
    mask = size - 1;
  }

  /**
   * Welds a run of points.
   *
   * @param xyz {@code xyz[3*i+k]}
   * @param points number of points
   * @param out receives the index of point i at {@code out[offset+i]}
   * @param offset where to start in {@code out}
   */
  public void addAll(double[] xyz, int points, int[] out, int offset) {
    for (int from = 0; from < points; from += BLOCK) {
      int n = Math.min(BLOCK, points - from);
      reserve(n);
      int seen = 0;
      for (int i = 0; i < n; i++) {
        int p = 3 * (from + i);
        int h = hash(xyz[p] + 0.0, xyz[p + 1] + 0.0, xyz[p + 2] + 0.0) & mask;
        hashes[i] = h;
        seen += table[h];
      }
      touched = seen;
      for (int i = 0; i < n; i++) {
        int p = 3 * (from + i);
        out[offset + from + i] = place(hashes[i], xyz[p] + 0.0, xyz[p + 1] + 0.0, xyz[p + 2] + 0.0);
      }
    }
  }

  /** Welds one point and returns its index. */
  public int add(double x, double y, double z) {
    reserve(1);
    double a = x + 0.0;
    double b = y + 0.0;
    double c = z + 0.0;
    return place(hash(a, b, c) & mask, a, b, c);
  }

  /** Number of distinct points so far. */
  public int count() {
    return count;
  }

  /** The distinct points, {@code [3*v+k]}, exactly as long as needed. */
  public double[] positions() {
    return Arrays.copyOf(positions, 3 * count);
  }

  private int place(int start, double x, double y, double z) {
    int slot = start;
    while (true) {
      int v = table[slot];
      if (v < 0) {
        table[slot] = count;
        positions[3 * count] = x;
        positions[3 * count + 1] = y;
        positions[3 * count + 2] = z;
        return count++;
      }
      if (positions[3 * v] == x && positions[3 * v + 1] == y && positions[3 * v + 2] == z) {
        return v;
      }
      slot = slot + 1 & mask;
    }
  }

  private void reserve(int more) {
    if (3L * (count + more) > positions.length) {
      long wanted = Math.max(3L * (count + more), positions.length + (long) positions.length / 2);
      positions = Arrays.copyOf(positions, (int) Math.min(wanted, Integer.MAX_VALUE - 8));
    }
    if (count + more > LOAD * table.length) {
      int[] old = table;
      table = new int[old.length << 1];
      Arrays.fill(table, -1);
      mask = table.length - 1;
      for (int v = 0; v < count; v++) {
        int slot = hash(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]) & mask;
        while (table[slot] >= 0) {
          slot = slot + 1 & mask;
        }
        table[slot] = v;
      }
    }
  }

  private static int hash(double x, double y, double z) {
    long h = Double.doubleToRawLongBits(x) * 0x9E3779B97F4A7C15L;
    h = (h ^ h >>> 32) + Double.doubleToRawLongBits(y) * 0xC2B2AE3D27D4EB4FL;
    h = (h ^ h >>> 29) + Double.doubleToRawLongBits(z) * 0x165667B19E3779F9L;
    h *= 0x9E3779B97F4A7C15L;
    return (int) (h >>> 32 ^ h >>> 15);
  }
}
