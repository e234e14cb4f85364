package org.amperskin.mesh;

import java.util.Arrays;

/**
 * Pairs of faces that cross or lie on each other, sorted.
 *
 * <p>Definition: pair {@code i} is {@code first(i) < second(i)}; pairs are in rising order of
 * first, then second. {@link #complete()} is false if there were more than could be kept.
 */
public final class FacePairs {
  /** No pair. */
  public static final FacePairs NONE = new FacePairs(new long[0], true);

  private final long[] pairs;
  private final boolean complete;

  private FacePairs(long[] pairs, boolean complete) {
    this.pairs = pairs;
    this.complete = complete;
  }

  /**
   * Sorts pairs.
   *
   * @param pairs {@code first << 32 | second} each; kept and sorted, not copied
   */
  static FacePairs of(long[] pairs, boolean complete) {
    Arrays.sort(pairs);
    return new FacePairs(pairs, complete);
  }

  static long pack(int first, int second) {
    return (long) first << 32 | second;
  }

  /** Number of pairs. */
  public int count() {
    return pairs.length;
  }

  /** Smaller face of a pair. */
  public int first(int pair) {
    return (int) (pairs[pair] >> 32);
  }

  /** Larger face of a pair. */
  public int second(int pair) {
    return (int) pairs[pair];
  }

  /** False if there were more pairs than are kept. */
  public boolean complete() {
    return complete;
  }
}
