package org.amperskin.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A flat net of four-sided cells in the parameters of a {@link MidSurface}, with holes.
 *
 * <p>Definition: point {@code p} is {@code points.get(p)} = {u, v}; cell {@code c} lists four
 * points, counter-clockwise. Tags travel with cells and say which part of the piece they are.
 */
final class Patch {
  private final List<double[]> points = new ArrayList<>();
  private final List<int[]> cells = new ArrayList<>();
  private final List<String> tags = new ArrayList<>();

  /** Adds a point and returns its index. */
  int point(double u, double v) {
    points.add(new double[] {u, v});
    return points.size() - 1;
  }

  /** Adds a cell of four points, counter-clockwise. */
  void cell(String tag, int a, int b, int c, int d) {
    cells.add(new int[] {a, b, c, d});
    tags.add(tag);
  }

  /** Number of points, used ones and not. */
  int pointCount() {
    return points.size();
  }

  /** Parameters of a point, {u, v}. */
  double[] pointAt(int point) {
    return points.get(point);
  }

  /** The cells, four points each. */
  List<int[]> cells() {
    return cells;
  }

  /** Tag of a cell. */
  String tag(int cell) {
    return tags.get(cell);
  }

  /**
   * Fills a window of left-out cells with rings that lead from its edge to a hole with round ends.
   *
   * @param window the window's edge points, counter-clockwise
   * @param middle the hole's middle {u, v}
   * @param halfMm half width and half height of the hole (mm)
   * @param mmPerUnit length of a unit of u and of v at the middle (mm)
   * @param rings number of rings
   */
  void ringsToHole(
      int[] window, double[] middle, double[] halfMm, double[] mmPerUnit, int rings, String tag) {
    double spanU = 0;
    double spanV = 0;
    for (int p : window) {
      spanU = StrictMath.max(spanU, StrictMath.abs(points.get(p)[0] - middle[0]));
      spanV = StrictMath.max(spanV, StrictMath.abs(points.get(p)[1] - middle[1]));
    }
    int n = window.length;
    int[] before = window;
    for (int ring = 1; ring <= rings; ring++) {
      double t = (double) ring / rings;
      int[] next = new int[n];
      for (int i = 0; i < n; i++) {
        double[] outer = points.get(window[i]);
        double dx = (outer[0] - middle[0]) / spanU * halfMm[0];
        double dy = (outer[1] - middle[1]) / spanV * halfMm[1];
        double scale =
            halfMm[0] >= halfMm[1]
                ? toSlot(StrictMath.abs(dx), StrictMath.abs(dy), halfMm[0], halfMm[1])
                : toSlot(StrictMath.abs(dy), StrictMath.abs(dx), halfMm[1], halfMm[0]);
        double u = middle[0] + scale * dx / mmPerUnit[0];
        double v = middle[1] + scale * dy / mmPerUnit[1];
        next[i] = point(outer[0] + t * (u - outer[0]), outer[1] + t * (v - outer[1]));
      }
      for (int i = 0; i < n; i++) {
        int j = (i + 1) % n;
        cell(tag, before[i], before[j], next[j], next[i]);
      }
      before = next;
    }
  }

  /** The factor that brings (along, across) to the edge of a slot with half-round ends. */
  private static double toSlot(double along, double across, double half, double radius) {
    double core = half - radius;
    if (across > 0 && radius / across * along <= core) {
      return radius / across;
    }
    double square = along * along + across * across;
    double b = along * core;
    return (b + StrictMath.sqrt(b * b - square * (core * core - radius * radius))) / square;
  }

  /** The loops of cell sides that have no neighbour, cells to the left, in order of first point. */
  List<int[]> loops() {
    Map<Long, Boolean> sides = new HashMap<>();
    for (int[] c : cells) {
      for (int k = 0; k < 4; k++) {
        sides.put(((long) c[k] << 32) | c[(k + 1) % 4], true);
      }
    }
    int[] next = new int[points.size()];
    for (int p = 0; p < next.length; p++) {
      next[p] = -1;
    }
    for (int[] c : cells) {
      for (int k = 0; k < 4; k++) {
        int from = c[k];
        int to = c[(k + 1) % 4];
        if (!sides.containsKey(((long) to << 32) | from)) {
          if (next[from] >= 0) {
            throw new IllegalStateException("two edges of the net leave point " + from);
          }
          next[from] = to;
        }
      }
    }
    List<int[]> loops = new ArrayList<>();
    for (int start = 0; start < next.length; start++) {
      List<Integer> loop = new ArrayList<>();
      for (int p = start; next[p] >= 0; ) {
        loop.add(p);
        int to = next[p];
        next[p] = -1;
        p = to;
      }
      if (!loop.isEmpty()) {
        loops.add(loop.stream().mapToInt(Integer::intValue).toArray());
      }
    }
    return loops;
  }
}
