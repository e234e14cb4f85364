package org.amperskin.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.amperskin.geom.BoxTree;

/**
 * The open edges of a mesh, and where their corners come upon one another.
 *
 * <p>Definition: a corner of an open edge touches another open edge if it lies inside it, and meets
 * another corner if it nearly coincides with it, both within {@link #toleranceMm}. The tolerance is
 * {@value #ULPS} steps of a float at the mesh's largest coordinate. A file's rounding moves a point
 * by half a step on each axis, and an edge likewise, so the two come apart by the root of three
 * steps at most; as much again is left for the unit's factor, which may halve the step.
 *
 * <p>Guaranteed: corners that meet form a place only if any two of them are within the tolerance
 * and no face has two of them. Not guaranteed: anything for a mesh whose open edges lie all over
 * one another; {@link #givenUp()} tells.
 *
 * <p>Method: every corner looks for its edges in a {@link BoxTree}. Cost: about a microsecond for
 * an open edge; nothing else of the mesh is touched but its corner list.
 */
final class OpenBoundary {
  /** Tolerance in steps of a float at the largest coordinate. */
  static final double ULPS = 4;

  /** A float has 29 bits fewer than a double. */
  private static final double FLOAT_STEP = 1L << 29;

  /** Nodes of the tree looked at, at most: these, and so many for each open edge. */
  private static final long MOST_VISITS = 1L << 24;

  private static final long VISITS_PER_EDGE = 128;
  private static final int MOST_MEETING = 64;

  /** A corner that lies inside an open edge, at a share of its length. */
  record Touch(int edge, int vertex, double at) {}

  private final SurfaceMesh mesh;
  private final int[] halfEdges;
  private final double toleranceMm;
  private final int[] place;
  private final List<Touch> touches = new ArrayList<>();
  private boolean meeting;
  private long visits;

  private OpenBoundary(SurfaceMesh mesh, int[] halfEdges) {
    this.mesh = mesh;
    this.halfEdges = halfEdges;
    double most = 0;
    for (double p : mesh.positions()) {
      most = Math.max(most, Math.abs(p));
    }
    this.toleranceMm = ULPS * FLOAT_STEP * Math.ulp(most);
    this.place = new int[mesh.vertexCount()];
    for (int v = 0; v < place.length; v++) {
      place[v] = v;
    }
  }

  static OpenBoundary of(SurfaceMesh mesh, boolean[] leftOut, EdgeTable edges) {
    int[] open = new int[(int) edges.openEdges()];
    int n = 0;
    for (int h = 0; h < 3 * mesh.faceCount(); h++) {
      if (edges.mate(h) == EdgeTable.OPEN) {
        open[n++] = h;
      }
    }
    OpenBoundary boundary = new OpenBoundary(mesh, open);
    boundary.search(leftOut);
    return boundary;
  }

  private void search(boolean[] leftOut) {
    int n = halfEdges.length;
    double[] low = new double[6 * n];
    int[] boxes = new int[3 * n];
    boolean[] onEdge = new boolean[mesh.vertexCount()];
    for (int e = 0; e < n; e++) {
      int a = from(e);
      int b = to(e);
      onEdge[a] = true;
      onEdge[b] = true;
      for (int k = 0; k < 3; k++) {
        double u = mesh.positions()[3 * a + k];
        double v = mesh.positions()[3 * b + k];
        low[6 * e + k] = Math.min(u, v) - toleranceMm;
        low[6 * e + 3 + k] = Math.max(u, v) + toleranceMm;
      }
      boxes[3 * e] = 2 * e;
      boxes[3 * e + 1] = 2 * e + 1;
      boxes[3 * e + 2] = 2 * e + 1;
    }
    BoxTree tree = BoxTree.of(low, boxes);
    for (int v = 0; v < onEdge.length && !givenUp(); v++) {
      if (onEdge[v]) {
        int corner = v;
        visits += tree.around(mesh.x(v), mesh.y(v), mesh.z(v), e -> look(corner, e));
      }
    }
    if (givenUp()) {
      touches.clear();
      return;
    }
    touches.sort(
        Comparator.comparingInt(Touch::edge)
            .thenComparingDouble(Touch::at)
            .thenComparingInt(Touch::vertex));
    if (meeting) {
      partUnsound(leftOut);
    }
  }

  private void look(int v, int e) {
    int a = from(e);
    int b = to(e);
    if (v == a || v == b) {
      return;
    }
    if (near(v, a)) {
      join(v, a);
    } else if (near(v, b)) {
      join(v, b);
    } else {
      double ex = mesh.x(b) - mesh.x(a);
      double ey = mesh.y(b) - mesh.y(a);
      double ez = mesh.z(b) - mesh.z(a);
      double px = mesh.x(v) - mesh.x(a);
      double py = mesh.y(v) - mesh.y(a);
      double pz = mesh.z(v) - mesh.z(a);
      double t = (px * ex + py * ey + pz * ez) / (ex * ex + ey * ey + ez * ez);
      if (t > 0 && t < 1 && within(px - t * ex, py - t * ey, pz - t * ez)) {
        touches.add(new Touch(e, v, t));
      }
    }
  }

  private boolean near(int v, int w) {
    return within(mesh.x(v) - mesh.x(w), mesh.y(v) - mesh.y(w), mesh.z(v) - mesh.z(w));
  }

  private boolean within(double x, double y, double z) {
    return x * x + y * y + z * z <= toleranceMm * toleranceMm;
  }

  private void join(int v, int w) {
    int a = root(v);
    int b = root(w);
    place[Math.max(a, b)] = Math.min(a, b);
    meeting = true;
  }

  private int root(int v) {
    int i = v;
    while (place[i] != i) {
      place[i] = place[place[i]];
      i = place[i];
    }
    return i;
  }

  /** Takes places apart that are too wide, or that a face has two corners in. */
  private void partUnsound(boolean[] leftOut) {
    Map<Integer, List<Integer>> members = new TreeMap<>();
    for (int v = 0; v < place.length; v++) {
      place[v] = root(v);
      if (place[v] != v) {
        members.computeIfAbsent(place[v], k -> new ArrayList<>(List.of(k))).add(v);
      }
    }
    boolean[] unsound = new boolean[place.length];
    int[] c = mesh.corners();
    for (int i = 0; i < c.length; i += 3) {
      int a = place[c[i]];
      int b = place[c[i + 1]];
      int d = place[c[i + 2]];
      if (!leftOut[i / 3]) {
        unsound[a] |= a == b || a == d;
        unsound[b] |= b == d;
      }
    }
    members.forEach(
        (first, all) -> {
          if (unsound[first] || all.size() > MOST_MEETING || !allNear(all)) {
            all.forEach(v -> place[v] = v);
          }
        });
  }

  private boolean allNear(List<Integer> members) {
    return members.stream().allMatch(v -> members.stream().allMatch(w -> near(v, w)));
  }

  /** Number of open edges. */
  int count() {
    return halfEdges.length;
  }

  int halfEdge(int e) {
    return halfEdges[e];
  }

  int from(int e) {
    return mesh.corners()[halfEdges[e]];
  }

  int to(int e) {
    return mesh.corner(halfEdges[e] / 3, (halfEdges[e] % 3 + 1) % 3);
  }

  /** The lowest of the corners that meet where this one lies. */
  int place(int vertex) {
    return place[vertex];
  }

  /** Corners inside edges, by edge and along it. */
  List<Touch> touches() {
    return touches;
  }

  /** True if nothing comes upon anything. */
  boolean clear() {
    return touches.isEmpty() && !meeting;
  }

  /** The places at which something comes upon something. */
  boolean[] busyPlaces() {
    boolean[] busy = new boolean[place.length];
    for (int v = 0; v < place.length; v++) {
      busy[place[v]] |= place[v] != v;
    }
    touches.forEach(t -> busy[place[t.vertex()]] = true);
    return busy;
  }

  double toleranceMm() {
    return toleranceMm;
  }

  /** True if the open edges lie over one another in so many places that the search was left. */
  boolean givenUp() {
    return visits > MOST_VISITS + VISITS_PER_EDGE * halfEdges.length;
  }

  /** The open edges that begin or end at each place, {@code [start[place] .. start[place+1])}. */
  int[][] edgesAtPlaces() {
    int[] start = new int[place.length + 1];
    for (int e = 0; e < halfEdges.length; e++) {
      start[place[from(e)] + 1]++;
      start[place[to(e)] + 1]++;
    }
    for (int v = 0; v < place.length; v++) {
      start[v + 1] += start[v];
    }
    int[] next = Arrays.copyOf(start, place.length);
    int[] at = new int[2 * halfEdges.length];
    for (int e = 0; e < halfEdges.length; e++) {
      at[next[place[from(e)]]++] = e;
      at[next[place[to(e)]]++] = e;
    }
    return new int[][] {start, at};
  }
}
