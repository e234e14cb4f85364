package org.amperskin.mesh;

import java.util.Arrays;

/**
 * Which faces meet along which edges.
 *
 * <p>Definition: half-edge {@code 3*f+k} runs from corner {@code k} of face {@code f} to the next
 * one. Two half-edges are mates if they are the only ones on their edge.
 *
 * <p>Method: half-edges are bucketed by their smaller vertex (counting sort), then matched inside
 * the bucket; this touches memory in order, which a hash table does not.
 *
 * <p>Cost: linear; 24 bytes a face kept, 36 while building.
 */
final class EdgeTable {
  /** {@code mate[h]} when the edge has one face. */
  static final int OPEN = -1;

  /** {@code mate[h]} when the edge has more than two faces. */
  static final int CROWDED = -2;

  /** {@code mate[h]} when the face was left out. */
  static final int LEFT_OUT = -3;

  private static final int SMALL_BUCKET = 48;

  private final SurfaceMesh mesh;
  private final boolean[] skip;
  private final int[] mates;
  private final int[] duplicateOf;
  private long openEdges;
  private long crowdedEdges;
  private long flippedEdges;
  private long unbalancedEdges;
  private long duplicates;
  private int firstOpen = -1;
  private int firstCrowded = -1;
  private int firstFlipped = -1;

  /**
   * Matches the half-edges of all faces not in {@code skip}.
   *
   * @param skip {@code skip[f]}, faces to leave out
   * @param duplicateOf {@code duplicateOf[f]}, filled with an earlier face on the same three
   *     vertices where there is one; null to not look
   */
  EdgeTable(SurfaceMesh mesh, boolean[] skip, int[] duplicateOf) {
    this.mesh = mesh;
    this.skip = skip;
    this.duplicateOf = duplicateOf;
    this.mates = new int[3 * mesh.faceCount()];
    Arrays.fill(mates, LEFT_OUT);
    match();
  }

  private void match() {
    int[] corners = mesh.corners();
    int faces = mesh.faceCount();
    int[] start = new int[mesh.vertexCount() + 1];
    for (int f = 0; f < faces; f++) {
      if (!skip[f]) {
        int a = corners[3 * f];
        int b = corners[3 * f + 1];
        int c = corners[3 * f + 2];
        start[Math.min(a, b)]++;
        start[Math.min(b, c)]++;
        start[Math.min(c, a)]++;
      }
    }
    int sum = 0;
    for (int v = 0; v < start.length; v++) {
      int n = start[v];
      start[v] = sum;
      sum += n;
    }
    int[] bucket = new int[sum];
    for (int f = 0; f < faces; f++) {
      if (!skip[f]) {
        for (int k = 0; k < 3; k++) {
          int h = 3 * f + k;
          int v = Math.min(corners[h], corners[3 * f + (k + 1) % 3]);
          bucket[start[v]++] = h;
        }
      }
    }
    int from = 0;
    long[] scratch = new long[SMALL_BUCKET];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      int to = start[v];
      if (to - from > scratch.length) {
        scratch = new long[2 * (to - from)];
      }
      matchBucket(bucket, from, to, scratch);
      from = to;
    }
  }

  private void matchBucket(int[] bucket, int from, int to, long[] keys) {
    int n = to - from;
    int[] corners = mesh.corners();
    for (int i = 0; i < n; i++) {
      int h = bucket[from + i];
      int other = Math.max(corners[h], corners[next(h)]);
      keys[i] = (long) other << 32 | h;
    }
    if (n <= SMALL_BUCKET) {
      for (int i = 1; i < n; i++) {
        long key = keys[i];
        int j = i - 1;
        while (j >= 0 && keys[j] > key) {
          keys[j + 1] = keys[j];
          j--;
        }
        keys[j + 1] = key;
      }
    } else {
      Arrays.sort(keys, 0, n);
    }
    int i = 0;
    while (i < n) {
      int j = i + 1;
      while (j < n && keys[j] >> 32 == keys[i] >> 32) {
        j++;
      }
      matchEdge(keys, i, j);
      i = j;
    }
  }

  private void matchEdge(long[] keys, int from, int to) {
    int h = (int) keys[from];
    int n = to - from;
    if (n == 1) {
      mates[h] = OPEN;
      openEdges++;
      unbalancedEdges++;
      firstOpen = earlier(firstOpen, h);
      return;
    }
    int forward = 0;
    for (int i = from; i < to; i++) {
      int e = (int) keys[i];
      forward += mesh.corners()[e] < mesh.corners()[next(e)] ? 1 : -1;
      if (duplicateOf != null) {
        markDuplicates(keys, i, to);
      }
    }
    if (forward != 0) {
      unbalancedEdges++;
    }
    if (n == 2) {
      int g = (int) keys[from + 1];
      mates[h] = g;
      mates[g] = h;
      if (forward != 0) {
        flippedEdges++;
        firstFlipped = earlier(firstFlipped, h);
      }
      return;
    }
    for (int i = from; i < to; i++) {
      mates[(int) keys[i]] = CROWDED;
    }
    crowdedEdges++;
    firstCrowded = earlier(firstCrowded, h);
  }

  private void markDuplicates(long[] keys, int i, int to) {
    int e = (int) keys[i];
    int apex = apex(e);
    for (int j = i + 1; j < to; j++) {
      int g = (int) keys[j];
      if (apex(g) == apex && duplicateOf[g / 3] < 0) {
        duplicateOf[g / 3] = e / 3;
        duplicates++;
      }
    }
  }

  private int apex(int h) {
    return mesh.corners()[next(next(h))];
  }

  private static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }

  private static int earlier(int first, int h) {
    return first < 0 ? h : Math.min(first, h);
  }

  int mate(int halfEdge) {
    return mates[halfEdge];
  }

  long openEdges() {
    return openEdges;
  }

  long crowdedEdges() {
    return crowdedEdges;
  }

  long flippedEdges() {
    return flippedEdges;
  }

  /** Edges run more often in one direction than in the other: none if the surface is closed. */
  long unbalancedEdges() {
    return unbalancedEdges;
  }

  long duplicates() {
    return duplicates;
  }

  int firstOpen() {
    return firstOpen;
  }

  int firstCrowded() {
    return firstCrowded;
  }

  int firstFlipped() {
    return firstFlipped;
  }
}
