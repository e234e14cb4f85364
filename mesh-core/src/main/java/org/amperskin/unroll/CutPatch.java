package org.amperskin.unroll;

import java.util.Arrays;

/**
 * A patch opened along seams: corners of faces numbered so that those on two sides of a seam
 * differ.
 *
 * <p>Guaranteed: two faces share numbers only if they can be walked round without crossing a seam
 * or the border.
 */
final class CutPatch {
  private final Patch patch;
  private final boolean[] seam;
  private final int[] corner;
  private final int count;

  private CutPatch(Patch patch, boolean[] seam) {
    this.patch = patch;
    this.seam = seam;
    int halves = 3 * patch.size();
    int[] root = new int[halves];
    for (int i = 0; i < halves; i++) {
      root[i] = i;
    }
    for (int i = 0; i < patch.size(); i++) {
      for (int k = 0; k < 3; k++) {
        int j = beside(i, k);
        if (j > i) {
          int m = edgeTo(j, i, k);
          join(root, 3 * i + k, 3 * j + (m + 1) % 3);
          join(root, 3 * i + (k + 1) % 3, 3 * j + m);
        }
      }
    }
    corner = new int[halves];
    int[] number = new int[halves];
    Arrays.fill(number, -1);
    int n = 0;
    for (int i = 0; i < halves; i++) {
      int r = find(root, i);
      if (number[r] < 0) {
        number[r] = n++;
      }
      corner[i] = number[r];
    }
    count = n;
  }

  /** A patch without seams. */
  static CutPatch whole(Patch patch) {
    return new CutPatch(patch, new boolean[3 * patch.size()]);
  }

  /**
   * A patch opened to a disk: seams are what is left of all edges after faces have been joined
   * outward from one of them and loose ends are taken away.
   *
   * @param centre the face to begin with, far from the seams
   */
  static CutPatch disk(Patch patch, int centre) {
    int n = patch.size();
    boolean[] seam = new boolean[3 * n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 3; k++) {
        seam[3 * i + k] = patch.beside(i, k) >= 0;
      }
    }
    double[] far = new double[n];
    Arrays.fill(far, Double.POSITIVE_INFINITY);
    java.util.PriorityQueue<double[]> queue =
        new java.util.PriorityQueue<>(
            (a, b) -> a[0] != b[0] ? Double.compare(a[0], b[0]) : Double.compare(a[1], b[1]));
    boolean[] done = new boolean[n];
    int[] through = new int[n];
    Arrays.fill(through, -1);
    far[centre] = 0;
    queue.add(new double[] {0, centre});
    while (!queue.isEmpty()) {
      int i = (int) queue.poll()[1];
      if (done[i]) {
        continue;
      }
      done[i] = true;
      if (through[i] >= 0) {
        int from = through[i];
        int j = patch.beside(from / 3, from % 3);
        seam[from] = false;
        seam[3 * j + edgeTo(patch, j, from / 3, from % 3)] = false;
      }
      for (int k = 0; k < 3; k++) {
        int j = patch.beside(i, k);
        if (j >= 0 && !done[j]) {
          double d = far[i] + patch.middle(i).minus(patch.middle(j)).length();
          if (d < far[j]) {
            far[j] = d;
            through[j] = 3 * i + k;
            queue.add(new double[] {d, j});
          }
        }
      }
    }
    prune(patch, seam);
    return new CutPatch(patch, seam);
  }

  /** Takes seam edges away as long as one ends freely inside the patch. */
  private static void prune(Patch patch, boolean[] seam) {
    java.util.Map<Integer, java.util.List<Integer>> at = new java.util.HashMap<>();
    java.util.Set<Integer> border = new java.util.HashSet<>();
    for (int half = 0; half < seam.length; half++) {
      int i = half / 3;
      int k = half % 3;
      int a = patch.corner(i, k);
      int b = patch.corner(i, (k + 1) % 3);
      if (patch.beside(i, k) < 0) {
        border.add(a);
        border.add(b);
      } else if (seam[half] && patch.beside(i, k) > i) {
        at.computeIfAbsent(a, x -> new java.util.ArrayList<>()).add(half);
        at.computeIfAbsent(b, x -> new java.util.ArrayList<>()).add(half);
      }
    }
    java.util.ArrayDeque<Integer> loose = new java.util.ArrayDeque<>();
    at.forEach(
        (v, halves) -> {
          if (halves.size() == 1 && !border.contains(v)) {
            loose.add(v);
          }
        });
    while (!loose.isEmpty()) {
      int v = loose.poll();
      java.util.List<Integer> halves = at.get(v);
      if (halves == null || halves.size() != 1) {
        continue;
      }
      int half = halves.get(0);
      int i = half / 3;
      int k = half % 3;
      int j = patch.beside(i, k);
      seam[half] = false;
      seam[3 * j + edgeTo(patch, j, i, k)] = false;
      for (int end : new int[] {patch.corner(i, k), patch.corner(i, (k + 1) % 3)}) {
        java.util.List<Integer> rest = at.get(end);
        rest.remove((Integer) half);
        if (rest.size() == 1 && !border.contains(end)) {
          loose.add(end);
        }
      }
    }
  }

  private static int edgeTo(Patch patch, int j, int i, int k) {
    int a = patch.corner(i, k);
    for (int m = 0; m < 3; m++) {
      if (patch.beside(j, m) == i && patch.corner(j, (m + 1) % 3) == a) {
        return m;
      }
    }
    throw new IllegalStateException("face " + j + " has no edge to face " + i);
  }

  private int edgeTo(int j, int i, int k) {
    return edgeTo(patch, j, i, k);
  }

  private static int find(int[] root, int i) {
    int r = i;
    while (root[r] != r) {
      root[r] = root[root[r]];
      r = root[r];
    }
    return r;
  }

  private static void join(int[] root, int a, int b) {
    int ra = find(root, a);
    int rb = find(root, b);
    root[Math.max(ra, rb)] = Math.min(ra, rb);
  }

  Patch patch() {
    return patch;
  }

  /** Number of the opened patch's corners. */
  int count() {
    return count;
  }

  /** Number of corner k of face i. */
  int corner(int i, int k) {
    return corner[3 * i + k];
  }

  /**
   * Map of face i to its place.
   *
   * @param flat the face in its own plane
   * @param xy places of the corners: {@code xy[2*c], xy[2*c+1]} (mm)
   */
  PlaneMap map(int i, PlaneMap.Flat flat, double[] xy) {
    int a = corner(i, 0);
    int b = corner(i, 1);
    int c = corner(i, 2);
    return PlaneMap.of(
        flat,
        xy[2 * b] - xy[2 * a],
        xy[2 * b + 1] - xy[2 * a + 1],
        xy[2 * c] - xy[2 * a],
        xy[2 * c + 1] - xy[2 * a + 1]);
  }

  /** Face over edge k of face i; -1 at border and seams. */
  int beside(int i, int k) {
    return seam[3 * i + k] ? -1 : patch.beside(i, k);
  }

  /** True if edge k of face i is a seam. */
  boolean isSeam(int i, int k) {
    return seam[3 * i + k];
  }

  /** True if there is any seam. */
  boolean hasSeams() {
    for (boolean s : seam) {
      if (s) {
        return true;
      }
    }
    return false;
  }
}
