package org.amperskin.film;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.unroll.Unrolling;

/** Joins directed border lines, which share their ends exactly, to closed rings. */
final class EdgeChain {
  private EdgeChain() {}

  private record Point(double x, double y) {}

  /** The rings in the order of their first lines. */
  static List<double[]> rings(List<Unrolling.Edge> edges) {
    Map<Point, Deque<Unrolling.Edge>> from = new LinkedHashMap<>();
    for (Unrolling.Edge e : edges) {
      from.computeIfAbsent(new Point(e.x0(), e.y0()), k -> new ArrayDeque<>()).add(e);
    }
    List<double[]> rings = new ArrayList<>();
    for (Unrolling.Edge first : edges) {
      Deque<Unrolling.Edge> start = from.get(new Point(first.x0(), first.y0()));
      if (start == null || !start.remove(first)) {
        continue;
      }
      List<Double> ring = new ArrayList<>();
      Unrolling.Edge at = first;
      while (at != null) {
        ring.add(at.x0());
        ring.add(at.y0());
        boolean closed = at.x1() == first.x0() && at.y1() == first.y0();
        Deque<Unrolling.Edge> next = closed ? null : from.get(new Point(at.x1(), at.y1()));
        if (!closed && (next == null || next.isEmpty())) {
          throw new IllegalStateException(
              "border ends at (" + at.x1() + ", " + at.y1() + ") mm without closing");
        }
        at = closed ? null : next.poll();
      }
      if (ring.size() >= 6) {
        rings.add(ring.stream().mapToDouble(d -> d).toArray());
      }
    }
    return rings;
  }
}
