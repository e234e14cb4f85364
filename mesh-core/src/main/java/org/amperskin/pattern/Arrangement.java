package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.index.intervalrtree.SortedPackedIntervalRTree;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;

/**
 * The planar arrangement of many closed rings, and the outline of those of its faces that a judge
 * calls opaque.
 *
 * <p>Definition: rings belong to figures; every face of the arrangement has one winding number per
 * figure. The judge hears each change of a winding number while the walk goes from face to face,
 * and is asked about the face it stands in.
 *
 * <p>Guaranteed: the outline's rings are simple, do not cross or overlap, have opaque on their
 * left.
 *
 * <p>Method: snap rounding (Hobby 1999, as in JTS {@code SnapRoundingNoder}) of all but {@link
 * FreeRings}; edges sorted around each vertex with exact orientation tests; one depth-first walk
 * over vertices, turning once around each, so that every winding number is undone on the way back;
 * one ray per connected part for the face it lies in. Rings follow the inner side at touching
 * points and are then cut apart there.
 *
 * <p>Cost: O(n log n) plus crossings, plus parts times edges level with their leftmost vertex.
 */
final class Arrangement {
  /** Decides about faces. */
  interface Judge {
    /** The walk has entered a face where this figure winds so often. */
    void winding(int figure, int winding);

    /** Whether the face the walk stands in is opaque. */
    boolean opaque();
  }

  private final Judge judge;
  private final int[] windings;
  private final int[] net;
  private Coordinate[] points = new Coordinate[0];
  private Spokes spokes;
  // edge e runs from a[e] to b[e]; its passes are entryFigure/entrySign[entryStart[e] ..]
  private int[] a;
  private int[] b;
  private int[] entryStart;
  private int[] entryFigure;
  private byte[] entrySign;
  private int edgeCount;

  /** The first so many segments are those of free rings, which have nothing inside them. */
  private int freeSegments;

  private final BitSet freeEdges = new BitSet();
  private boolean[] leftOpaque;
  private boolean[] rightOpaque;

  Arrangement(List<List<double[]>> figures, Judge judge) {
    this.judge = judge;
    this.windings = new int[figures.size()];
    this.net = new int[figures.size()];
    gather(node(figures));
  }

  /** The outline of all opaque faces. */
  RingSet outline() {
    if (edgeCount == 0) {
      return RingSet.of(List.of());
    }
    spokes = new Spokes(points, a, b, edgeCount);
    leftOpaque = new boolean[edgeCount];
    rightOpaque = new boolean[edgeCount];
    walkAll();
    return RingSet.of(
        new OutlineTrace(points, a, b, edgeCount, leftOpaque, rightOpaque, spokes).rings());
  }

  private Collection<SegmentString> node(List<List<double[]>> figures) {
    PrecisionModel grid = new PrecisionModel(1 / PaintStack.GRID_MM);
    List<Coordinate[]> rings = new ArrayList<>();
    List<Integer> owners = new ArrayList<>();
    for (int f = 0; f < figures.size(); f++) {
      for (double[] ring : figures.get(f)) {
        Coordinate[] closed = snapped(ring, grid);
        if (closed.length >= 4) {
          rings.add(closed);
          owners.add(f);
        }
      }
    }
    BitSet free = FreeRings.of(rings);
    List<SegmentString> done = new ArrayList<>();
    List<SegmentString> strings = new ArrayList<>();
    for (int r = 0; r < rings.size(); r++) {
      (free.get(r) ? done : strings).add(new NodedSegmentString(rings.get(r), owners.get(r)));
    }
    for (SegmentString ring : done) {
      freeSegments += ring.size() - 1;
    }
    if (!strings.isEmpty()) {
      SnapRoundingNoder noder = new SnapRoundingNoder(grid);
      noder.computeNodes(strings);
      for (Object each : noder.getNodedSubstrings()) {
        done.add((SegmentString) each);
      }
    }
    return done;
  }

  private static Coordinate[] snapped(double[] ring, PrecisionModel grid) {
    List<Coordinate> out = new ArrayList<>(ring.length / 2 + 1);
    for (int i = 0; i < ring.length; i += 2) {
      Coordinate c = new Coordinate(grid.makePrecise(ring[i]), grid.makePrecise(ring[i + 1]));
      if (out.isEmpty() || !out.get(out.size() - 1).equals2D(c)) {
        out.add(c);
      }
    }
    if (!out.get(out.size() - 1).equals2D(out.get(0))) {
      out.add(new Coordinate(out.get(0)));
    }
    return out.toArray(new Coordinate[0]);
  }

  /** Turns noded strings into distinct edges with a list of passes each. */
  private void gather(Collection<?> noded) {
    Map<Coordinate, Integer> ids = new HashMap<>();
    int segments = 0;
    for (Object each : noded) {
      SegmentString s = (SegmentString) each;
      segments += s.size() - 1;
      for (int i = 0; i < s.size(); i++) {
        ids.putIfAbsent(s.getCoordinate(i), 0);
      }
    }
    points = ids.keySet().toArray(new Coordinate[0]);
    Arrays.sort(points); // x, then y: ids follow the sweep from the left
    for (int v = 0; v < points.length; v++) {
      ids.put(points[v], v);
    }
    int[] from = new int[segments];
    long[] key = new long[segments];
    int[] figure = new int[segments];
    byte[] sign = new byte[segments];
    int[] firstOf = new int[points.length + 1];
    int n = 0;
    for (Object each : noded) {
      SegmentString s = (SegmentString) each;
      for (int i = 0; i + 1 < s.size(); i++) {
        int p = ids.get(s.getCoordinate(i));
        int q = ids.get(s.getCoordinate(i + 1));
        if (p != q) {
          from[n] = Math.min(p, q);
          key[n] = ((long) Math.max(p, q) << 32) | n;
          figure[n] = (Integer) s.getData();
          sign[n] = (byte) (p < q ? 1 : -1);
          firstOf[from[n] + 1]++;
          n++;
        }
      }
    }
    for (int v = 0; v < points.length; v++) {
      firstOf[v + 1] += firstOf[v];
    }
    long[] sorted = new long[n];
    int[] fill = Arrays.copyOf(firstOf, points.length);
    for (int i = 0; i < n; i++) {
      sorted[fill[from[i]]++] = key[i];
    }
    group(sorted, firstOf, n, figure, sign);
  }

  private void group(long[] sorted, int[] firstOf, int n, int[] figure, byte[] sign) {
    a = new int[n];
    b = new int[n];
    entryStart = new int[n + 1];
    entryFigure = new int[n];
    entrySign = new byte[n];
    for (int v = 0; v < points.length; v++) {
      Arrays.sort(sorted, firstOf[v], firstOf[v + 1]);
      int before = -1;
      for (int i = firstOf[v]; i < firstOf[v + 1]; i++) {
        int far = (int) (sorted[i] >>> 32);
        int segment = (int) sorted[i];
        if (far != before) {
          a[edgeCount] = v;
          b[edgeCount] = far;
          entryStart[edgeCount] = i;
          edgeCount++;
          before = far;
        }
        if (segment < freeSegments) {
          freeEdges.set(edgeCount - 1);
        }
        entryFigure[i] = figure[segment];
        entrySign[i] = sign[segment];
      }
    }
    entryStart[edgeCount] = n;
  }

  private void walkAll() {
    SortedPackedIntervalRTree byHeight = new SortedPackedIntervalRTree();
    for (int e = 0; e < edgeCount; e++) {
      double ya = points[a[e]].y;
      double yb = points[b[e]].y;
      if (ya != yb && !freeEdges.get(e)) {
        byHeight.insert(Math.min(ya, yb), Math.max(ya, yb), e);
      }
    }
    boolean[] visited = new boolean[points.length];
    for (int v = 0; v < points.length; v++) {
      if (!visited[v]) {
        List<int[]> around = windingsAt(edgesLeftOf(v, byHeight));
        around.forEach(w -> wind(w[0], w[1]));
        walk(v, visited);
        around.forEach(w -> wind(w[0], -w[1]));
      }
    }
  }

  /** Pairs of figure and winding number, without the many that cancel out. */
  private List<int[]> windingsAt(List<Integer> crossed) {
    List<Integer> figures = new ArrayList<>();
    for (int e : crossed) {
      int direction = crossesUpward(e) ? -1 : 1;
      for (int i = entryStart[e]; i < entryStart[e + 1]; i++) {
        if (net[entryFigure[i]] == 0) {
          figures.add(entryFigure[i]);
        }
        net[entryFigure[i]] += direction * entrySign[i];
      }
    }
    List<int[]> out = new ArrayList<>();
    for (int figure : figures) {
      if (net[figure] != 0) {
        out.add(new int[] {figure, net[figure]});
        net[figure] = 0;
      }
    }
    return out;
  }

  private void wind(int figure, int by) {
    windings[figure] += by;
    judge.winding(figure, windings[figure]);
  }

  private boolean crossesUpward(int e) {
    return points[b[e]].y > points[a[e]].y;
  }

  /** Edges that a ray from far left to the vertex crosses, in order of their number. */
  private List<Integer> edgesLeftOf(int v, SortedPackedIntervalRTree byHeight) {
    Coordinate p = points[v];
    List<Integer> hits = new ArrayList<>();
    byHeight.query(
        p.y,
        p.y,
        item -> {
          int e = (Integer) item;
          boolean up = crossesUpward(e);
          Coordinate low = points[up ? a[e] : b[e]];
          Coordinate high = points[up ? b[e] : a[e]];
          if (low.y <= p.y
              && p.y < high.y
              && org.locationtech.jts.algorithm.Orientation.index(low, high, p) < 0) {
            hits.add(e);
          }
        });
    return hits;
  }

  /** Steps over an edge; direction +1 from its right to its left. */
  private void cross(int e, int direction) {
    for (int i = entryStart[e]; i < entryStart[e + 1]; i++) {
      wind(entryFigure[i], direction * entrySign[i]);
    }
  }

  /**
   * Turns once around every vertex connected to the root, starting in the face left of the root.
   */
  private void walk(int root, boolean[] visited) {
    int[] stackVertex = new int[64];
    int[] stackSlot = new int[64];
    int[] stackLeft = new int[64];
    int depth = 0;
    stackVertex[0] = root;
    stackSlot[0] = spokes.first(root);
    stackLeft[0] = spokes.degree(root);
    visited[root] = true;
    boolean here = judge.opaque();
    while (depth >= 0) {
      if (stackLeft[depth] == 0) {
        depth--;
        continue;
      }
      int v = stackVertex[depth];
      int slot = stackSlot[depth];
      int e = spokes.edge(slot);
      stackLeft[depth]--;
      stackSlot[depth] = spokes.next(v, slot);
      boolean outward = a[e] == v;
      (outward ? rightOpaque : leftOpaque)[e] = here;
      cross(e, outward ? 1 : -1);
      here = judge.opaque();
      (outward ? leftOpaque : rightOpaque)[e] = here;
      int far = outward ? b[e] : a[e];
      if (!visited[far]) {
        visited[far] = true;
        depth++;
        if (depth == stackVertex.length) {
          stackVertex = Arrays.copyOf(stackVertex, 2 * depth);
          stackSlot = Arrays.copyOf(stackSlot, 2 * depth);
          stackLeft = Arrays.copyOf(stackLeft, 2 * depth);
        }
        stackVertex[depth] = far;
        stackSlot[depth] = spokes.slot(far, e);
        stackLeft[depth] = spokes.degree(far);
      }
    }
  }
}
