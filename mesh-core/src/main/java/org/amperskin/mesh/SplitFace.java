package org.amperskin.mesh;

import java.util.Arrays;

/**
 * Cuts a triangle whose edges carry further corners into triangles on all of them.
 *
 * <p>Guaranteed: no piece has all its corners on one edge, so that none is without area; the
 * outline runs through every corner. Method: fans, the first from the corner across an edge, the
 * others from the corner next to where it ended.
 */
final class SplitFace {
  private int[] pieces = new int[9];
  private int used;

  private SplitFace() {}

  /**
   * The pieces, three corners each, in the sense of the triangle.
   *
   * @param corner its corners
   * @param inside {@code inside[k]}: corners along the edge from corner k to the next, in order
   */
  static int[] of(int[] corner, int[][] inside) {
    SplitFace split = new SplitFace();
    int k = 0;
    for (int i = 1; i < 3; i++) {
      k = inside[i].length > inside[k].length ? i : k;
    }
    int a = corner[k];
    int b = corner[(k + 1) % 3];
    int c = corner[(k + 2) % 3];
    int[] first = inside[k];
    if (first.length == 0) {
      return corner.clone();
    }
    int n = first.length;
    // From c over the first edge; its two outer triangles carry the corners of the other edges.
    split.fan(first[0], c, inside[(k + 2) % 3], a);
    for (int i = 0; i + 1 < n; i++) {
      split.add(c, first[i], first[i + 1]);
    }
    split.fan(first[n - 1], b, inside[(k + 1) % 3], c);
    return Arrays.copyOf(split.pieces, split.used);
  }

  private void fan(int from, int start, int[] inside, int end) {
    int last = start;
    for (int v : inside) {
      add(from, last, v);
      last = v;
    }
    add(from, last, end);
  }

  private void add(int a, int b, int c) {
    if (used == pieces.length) {
      pieces = Arrays.copyOf(pieces, 2 * used);
    }
    pieces[used++] = a;
    pieces[used++] = b;
    pieces[used++] = c;
  }
}
