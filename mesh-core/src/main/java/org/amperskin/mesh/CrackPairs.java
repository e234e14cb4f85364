package org.amperskin.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which stretches of open edges belong together.
 *
 * <p>Definition: an open edge is cut into stretches by the corners that touch it and whose own open
 * edges run along it. Stretches between the same two places belong together if as many run one way
 * as the other, or if they are two whose faces do not lie on each other. A corner cuts an edge only
 * if a stretch beside it belongs to another; corners are joined only at the ends of such stretches.
 *
 * <p>Guaranteed: edges that find no other are left as they are. Cost: linear in the open edges
 * concerned, times a few rounds.
 */
final class CrackPairs {
  private static final int MOST_ROUNDS = 16;
  private static final int[] NONE = {};

  private final SurfaceMesh mesh;
  private final OpenBoundary boundary;
  private final boolean[] concerned;
  private final boolean[] refused;
  private int[][] inside;
  private int[] joined;
  private boolean any;

  // Stretches of one round: edge, the two corners, the next stretch between the same places.
  private int stretches;
  private int[] edge;
  private int[] begin;
  private int[] finish;
  private int[] next;
  private boolean[] paired;

  CrackPairs(SurfaceMesh mesh, OpenBoundary boundary) {
    this.mesh = mesh;
    this.boundary = boundary;
    this.concerned = new boolean[boundary.count()];
    this.refused = new boolean[boundary.count()];
    boolean[] busy = boundary.busyPlaces();
    for (int e = 0; e < concerned.length; e++) {
      concerned[e] = busy[boundary.place(boundary.from(e))] || busy[boundary.place(boundary.to(e))];
    }
    boundary.touches().forEach(t -> concerned[t.edge()] = true);
  }

  /** Leaves every open edge alone that has to do with the places of these corners. */
  void refuse(int face) {
    int[] places = new int[3];
    for (int k = 0; k < 3; k++) {
      places[k] = boundary.place(mesh.corner(face, k));
    }
    for (int e = 0; e < refused.length; e++) {
      boolean here = boundary.halfEdge(e) / 3 == face;
      here |= at(places, boundary.from(e)) || at(places, boundary.to(e));
      for (int v : inside[e]) {
        here |= at(places, v);
      }
      refused[e] |= here;
    }
  }

  private boolean at(int[] places, int vertex) {
    int p = boundary.place(vertex);
    return p == places[0] || p == places[1] || p == places[2];
  }

  /** Pairs what can be paired. */
  void run() {
    inside = alongOnly(candidates());
    boolean changed = true;
    for (int round = 0; changed && round < MOST_ROUNDS; round++) {
      cutIntoStretches();
      pair();
      changed = dropIdle();
    }
    joined = new int[mesh.vertexCount()];
    Arrays.setAll(joined, v -> v);
    any = false;
    for (int s = 0; s < stretches; s++) {
      any |= paired[s];
      int other = next[s];
      if (paired[s] && other >= 0) {
        boolean same = boundary.place(begin[s]) == boundary.place(begin[other]);
        join(begin[s], same ? begin[other] : finish[other]);
        join(finish[s], same ? finish[other] : begin[other]);
      }
    }
    for (int v = 0; v < joined.length; v++) {
      joined[v] = root(v);
    }
  }

  private void join(int v, int w) {
    int a = root(v);
    int b = root(w);
    joined[Math.max(a, b)] = Math.min(a, b);
  }

  private int root(int v) {
    int i = v;
    while (joined[i] != i) {
      joined[i] = joined[joined[i]];
      i = joined[i];
    }
    return i;
  }

  /** One corner for each place inside each edge, in order along it. */
  private int[][] candidates() {
    int[][] corners = new int[boundary.count()][];
    Arrays.fill(corners, NONE);
    List<OpenBoundary.Touch> touches = boundary.touches();
    int i = 0;
    while (i < touches.size()) {
      int e = touches.get(i).edge();
      Map<Integer, Integer> seen = new HashMap<>();
      List<Integer> kept = new ArrayList<>();
      seen.put(boundary.place(boundary.from(e)), 0);
      seen.put(boundary.place(boundary.to(e)), 0);
      for (; i < touches.size() && touches.get(i).edge() == e; i++) {
        int v = touches.get(i).vertex();
        if (seen.putIfAbsent(boundary.place(v), v) == null) {
          kept.add(v);
        }
      }
      if (!refused[e]) {
        corners[e] = kept.stream().mapToInt(Integer::intValue).toArray();
      }
    }
    return corners;
  }

  /** Without corners none of whose open edges runs along the edge: they only touch it. */
  private int[][] alongOnly(int[][] corners) {
    long[] all = new long[(int) Arrays.stream(corners).mapToLong(c -> c.length).sum()];
    int n = 0;
    for (int e = 0; e < corners.length; e++) {
      for (int v : corners[e]) {
        all[n++] = key(e, boundary.place(v));
      }
    }
    Arrays.sort(all);
    int[][] at = boundary.edgesAtPlaces();
    int[][] along = new int[corners.length][];
    for (int e = 0; e < corners.length; e++) {
      int own = e;
      along[e] =
          corners[e].length == 0
              ? NONE
              : Arrays.stream(corners[e]).filter(v -> runsAlong(own, v, at, all)).toArray();
    }
    return along;
  }

  private boolean runsAlong(int e, int v, int[][] at, long[] all) {
    int place = boundary.place(v);
    int a = boundary.place(boundary.from(e));
    int b = boundary.place(boundary.to(e));
    for (int i = at[0][place]; i < at[0][place + 1]; i++) {
      int g = at[1][i];
      int far = boundary.place(boundary.from(g));
      far = far == place ? boundary.place(boundary.to(g)) : far;
      if (far == a || far == b || has(all, e, far) || has(all, g, a) || has(all, g, b)) {
        return true;
      }
    }
    return false;
  }

  private static boolean has(long[] all, int e, int place) {
    return Arrays.binarySearch(all, key(e, place)) >= 0;
  }

  private static long key(int high, int low) {
    return (long) high << 32 | low;
  }

  private void cutIntoStretches() {
    int n = 0;
    for (int e = 0; e < concerned.length; e++) {
      n += concerned[e] && !refused[e] ? inside[e].length + 1 : 0;
    }
    edge = new int[n];
    begin = new int[n];
    finish = new int[n];
    next = new int[n];
    paired = new boolean[n];
    stretches = 0;
    for (int e = 0; e < concerned.length; e++) {
      if (concerned[e] && !refused[e]) {
        int from = boundary.from(e);
        for (int v : inside[e]) {
          stretch(e, from, v);
          from = v;
        }
        stretch(e, from, boundary.to(e));
      }
    }
  }

  private void stretch(int e, int from, int to) {
    edge[stretches] = e;
    begin[stretches] = from;
    finish[stretches++] = to;
  }

  private void pair() {
    Map<Long, Integer> last = new HashMap<>(2 * stretches);
    for (int s = 0; s < stretches; s++) {
      int p = boundary.place(begin[s]);
      int q = boundary.place(finish[s]);
      Integer before = last.put(key(Math.min(p, q), Math.max(p, q)), s);
      next[s] = before == null ? -1 : before;
    }
    for (int s : last.values()) {
      int forward = 0;
      int backward = 0;
      for (int t = s; t >= 0; t = next[t]) {
        boolean rising = boundary.place(begin[t]) < boundary.place(finish[t]);
        forward += rising ? 1 : 0;
        backward += rising ? 0 : 1;
      }
      boolean two = forward + backward == 2;
      if (two ? !folded(edge[s], edge[next[s]]) : forward == backward) {
        for (int t = s; t >= 0; t = next[t]) {
          paired[t] = true;
        }
      }
    }
  }

  /** True if the faces at two edges lie on each other: layers, not neighbours. */
  private boolean folded(int e, int g) {
    int o = boundary.from(e);
    double[] along = between(o, boundary.to(e));
    double[] u = across(o, along, apex(e));
    double[] v = across(boundary.from(g), along, apex(g));
    double lu = Math.sqrt(dot(u, u));
    double lv = Math.sqrt(dot(v, v));
    double apart = 0;
    for (int k = 0; k < 3; k++) {
      double d = u[k] / lu - v[k] / lv;
      apart += d * d;
    }
    return dot(u, v) > 0 && Math.min(lu, lv) * Math.sqrt(apart) <= 4 * boundary.toleranceMm();
  }

  private int apex(int e) {
    int h = boundary.halfEdge(e);
    return mesh.corner(h / 3, (h % 3 + 2) % 3);
  }

  private double[] between(int a, int b) {
    return new double[] {mesh.x(b) - mesh.x(a), mesh.y(b) - mesh.y(a), mesh.z(b) - mesh.z(a)};
  }

  private double[] across(int from, double[] along, int to) {
    double[] d = between(from, to);
    double share = dot(d, along) / dot(along, along);
    for (int k = 0; k < 3; k++) {
      d[k] -= share * along[k];
    }
    return d;
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  /** Takes out corners with no paired stretch beside them; true if there were any. */
  private boolean dropIdle() {
    boolean dropped = false;
    int s = 0;
    for (int e = 0; e < concerned.length; e++) {
      if (!concerned[e] || refused[e]) {
        continue;
      }
      int n = inside[e].length;
      int kept = 0;
      for (int i = 0; i < n; i++) {
        if (paired[s + i] || paired[s + i + 1]) {
          inside[e][kept++] = inside[e][i];
        }
      }
      s += n + 1;
      if (kept < n) {
        inside[e] = Arrays.copyOf(inside[e], kept);
        dropped = true;
      }
    }
    return dropped;
  }

  /** True if anything was paired. */
  boolean any() {
    return any;
  }

  /** The corners that cut an open edge, along it. */
  int[] inside(int e) {
    return inside[e];
  }

  /** The corner that stands for this one from now on. */
  int joined(int vertex) {
    return joined[vertex];
  }
}
