package org.amperskin.demo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Triangles as a file holds them, with the slow plain checks the demo parts have to pass. Shares no
 * code with the product or the generator, so that both can be checked against it.
 */
final class TriangleSoup {
  private final double[] corners;
  private final int[] index;
  private final int vertexCount;

  private TriangleSoup(double[] corners) {
    this.corners = corners;
    this.index = new int[corners.length / 3];
    Map<List<Double>, Integer> seen = new HashMap<>();
    for (int c = 0; c < index.length; c++) {
      List<Double> key =
          List.of(corners[3 * c] + 0.0, corners[3 * c + 1] + 0.0, corners[3 * c + 2] + 0.0);
      Integer known = seen.putIfAbsent(key, seen.size());
      index[c] = known == null ? seen.size() - 1 : known;
    }
    this.vertexCount = seen.size();
  }

  /** Nine coordinates a face, mm. Corners with equal coordinates are one vertex. */
  static TriangleSoup of(double[] corners) {
    return new TriangleSoup(corners);
  }

  int faceCount() {
    return index.length / 3;
  }

  private Map<Long, Integer> sides() {
    Map<Long, Integer> sides = new HashMap<>();
    for (int c = 0; c < index.length; c++) {
      sides.merge(side(index[c], index[c - c % 3 + (c + 1) % 3]), 1, Integer::sum);
    }
    return sides;
  }

  private static long side(int from, int to) {
    return ((long) from << 32) | to;
  }

  int sidesWithoutOneOppositeTwin() {
    Map<Long, Integer> sides = sides();
    int bad = 0;
    for (Map.Entry<Long, Integer> one : sides.entrySet()) {
      long key = one.getKey();
      Integer twin = sides.get(side((int) key, (int) (key >>> 32)));
      bad += one.getValue() == 1 && twin != null && twin == 1 ? 0 : 1;
    }
    return bad;
  }

  int eulerCharacteristic() {
    return vertexCount - sides().size() / 2 + faceCount();
  }

  int bodies() {
    int[] parent = new int[vertexCount];
    Arrays.setAll(parent, i -> i);
    for (int c = 0; c < index.length; c++) {
      parent[root(parent, index[c])] = root(parent, index[c - c % 3]);
    }
    Set<Integer> roots = new HashSet<>();
    for (int v = 0; v < vertexCount; v++) {
      roots.add(root(parent, v));
    }
    return roots.size();
  }

  private static int root(int[] parent, int v) {
    int r = v;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  /** Vertices where two fans of faces touch in a point only. */
  int verticesWithMoreThanOneFan() {
    Map<Long, Integer> faceOfSide = new HashMap<>();
    int[] degree = new int[vertexCount];
    int[] some = new int[vertexCount];
    for (int c = 0; c < index.length; c++) {
      faceOfSide.put(side(index[c], index[c - c % 3 + (c + 1) % 3]), c);
      degree[index[c]]++;
      some[index[c]] = c;
    }
    int bad = 0;
    for (int v = 0; v < vertexCount; v++) {
      int c = some[v];
      int steps = 0;
      do {
        int before = index[c - c % 3 + (c + 2) % 3];
        c = faceOfSide.getOrDefault(side(v, before), some[v]);
        steps++;
      } while (c != some[v] && steps <= degree[v]);
      bad += steps == degree[v] ? 0 : 1;
    }
    return bad;
  }

  int repeatedFaces() {
    Set<List<Integer>> seen = new HashSet<>();
    for (int f = 0; f < faceCount(); f++) {
      int[] v = {index[3 * f], index[3 * f + 1], index[3 * f + 2]};
      Arrays.sort(v);
      seen.add(List.of(v[0], v[1], v[2]));
    }
    return faceCount() - seen.size();
  }

  private double[] p(int f, int k) {
    int at = 9 * f + 3 * k;
    return new double[] {corners[at], corners[at + 1], corners[at + 2]};
  }

  private double[] twiceArea(int f) {
    return cross(minus(p(f, 1), p(f, 0)), minus(p(f, 2), p(f, 0)));
  }

  double smallestFaceMm2() {
    double least = Double.MAX_VALUE;
    for (int f = 0; f < faceCount(); f++) {
      double[] n = twiceArea(f);
      least = Math.min(least, Math.sqrt(dot(n, n)) / 2);
    }
    return least;
  }

  double areaMm2() {
    double sum = 0;
    for (int f = 0; f < faceCount(); f++) {
      double[] n = twiceArea(f);
      sum += Math.sqrt(dot(n, n)) / 2;
    }
    return sum;
  }

  double volumeMm3() {
    double sum = 0;
    for (int f = 0; f < faceCount(); f++) {
      sum += dot(p(f, 0), cross(p(f, 1), p(f, 2))) / 6;
    }
    return sum;
  }

  /** Lowest or highest corner of the box (mm). */
  double[] corner(boolean high) {
    double[] best = p(0, 0);
    for (int i = 0; i < corners.length; i++) {
      best[i % 3] = high ? Math.max(best[i % 3], corners[i]) : Math.min(best[i % 3], corners[i]);
    }
    return best;
  }

  boolean frontFaceLooksTowardMinusY() {
    int front = 0;
    for (int f = 0; f < faceCount(); f++) {
      front = p(f, 0)[1] < p(front, 0)[1] ? f : front;
    }
    double[] n = twiceArea(front);
    return n[1] < -0.9 * Math.sqrt(dot(n, n));
  }

  /** Way through the material from every {@code every}-th face, along its inward normal (mm). */
  double[] thicknessesMm(int every) {
    List<Double> ways = new ArrayList<>();
    for (int f = 0; f < faceCount(); f += every) {
      double[] n = twiceArea(f);
      double length = Math.sqrt(dot(n, n));
      double[] in = {-n[0] / length, -n[1] / length, -n[2] / length};
      double[] from = new double[3];
      for (int k = 0; k < 3; k++) {
        for (int a = 0; a < 3; a++) {
          from[a] += p(f, k)[a] / 3;
        }
      }
      double nearest = Double.MAX_VALUE;
      for (int g = 0; g < faceCount(); g++) {
        if (g != f) {
          double t = hit(from, in, g);
          nearest = t > 1e-6 ? Math.min(nearest, t) : nearest;
        }
      }
      ways.add(nearest);
    }
    return ways.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Where a ray meets a face, as a multiple of its direction; NaN if it does not. */
  private double hit(double[] from, double[] way, int f) {
    double[] e1 = minus(p(f, 1), p(f, 0));
    double[] e2 = minus(p(f, 2), p(f, 0));
    double[] h = cross(way, e2);
    double det = dot(e1, h);
    if (Math.abs(det) < 1e-14) {
      return Double.NaN;
    }
    double[] s = minus(from, p(f, 0));
    double u = dot(s, h) / det;
    double[] q = cross(s, e1);
    double v = dot(way, q) / det;
    return u < 0 || v < 0 || u + v > 1 ? Double.NaN : dot(e2, q) / det;
  }

  /** Pairs of faces that share no vertex, or one, and still cut each other. */
  Set<String> crossings() {
    double cellMm = 3;
    double[] low = corner(false);
    Map<List<Integer>, List<Integer>> cells = new HashMap<>();
    for (int f = 0; f < faceCount(); f++) {
      int[] from = new int[3];
      int[] to = new int[3];
      for (int a = 0; a < 3; a++) {
        double lo = Math.min(p(f, 0)[a], Math.min(p(f, 1)[a], p(f, 2)[a]));
        double hi = Math.max(p(f, 0)[a], Math.max(p(f, 1)[a], p(f, 2)[a]));
        from[a] = (int) Math.floor((lo - low[a]) / cellMm);
        to[a] = (int) Math.floor((hi - low[a]) / cellMm);
      }
      for (int x = from[0]; x <= to[0]; x++) {
        for (int y = from[1]; y <= to[1]; y++) {
          for (int z = from[2]; z <= to[2]; z++) {
            cells.computeIfAbsent(List.of(x, y, z), k -> new ArrayList<>()).add(f);
          }
        }
      }
    }
    Set<String> found = new TreeSet<>();
    for (List<Integer> cell : cells.values()) {
      for (int a : cell) {
        for (int b : cell) {
          if (a != b && cuts(a, b)) {
            found.add(Math.min(a, b) + " and " + Math.max(a, b));
          }
        }
      }
    }
    return found;
  }

  /** True if a side of {@code a} that has no vertex in common with {@code b} goes through it. */
  private boolean cuts(int a, int b) {
    for (int k = 0; k < 3; k++) {
      int from = index[3 * a + k];
      int to = index[3 * a + (k + 1) % 3];
      boolean shares = false;
      for (int c = 0; c < 3; c++) {
        shares |= index[3 * b + c] == from || index[3 * b + c] == to;
      }
      if (!shares) {
        double[] start = p(a, k);
        double t = hit(start, minus(p(a, (k + 1) % 3), start), b);
        if (t >= 0 && t <= 1) {
          return true;
        }
      }
    }
    return false;
  }

  private static double[] minus(double[] a, double[] b) {
    return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }
}
