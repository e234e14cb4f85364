package org.amperskin.pattern.motif;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Rings of one radius on a circle about the origin, and which passes over which.
 *
 * <p>Method: crossings alternate along every ring; for curves in a plane that cross in single
 * points such an order always exists (common knowledge of knot diagrams) and is found by walking
 * from crossing to crossing. A ring is drawn in runs from one crossing where it is under to the
 * next; at both ends the other ring's band, widened by the gap, is taken away.
 */
final class Lacing {
  /**
   * Room for the bend of the lines, which the straight estimate of a crossing's size leaves out.
   */
  private static final double ROOM = 0.9;

  /**
   * Two rings meeting.
   *
   * @param over the ring on top
   * @param under the other
   * @param x place (mm)
   * @param y place (mm)
   */
  record Crossing(int over, int under, double x, double y) {}

  /** A crossing as seen from one ring. */
  private record Visit(int pair, int other, double angle) {}

  private final int rings;
  private final double away;
  private final double radius;
  private final List<List<Visit>> visits = new ArrayList<>();
  private final int[] first;
  private final int[] second;
  private final boolean[] firstOver;
  private int pairs;

  /**
   * @param rings how many
   * @param away from the origin to a ring's middle (mm)
   * @param radius of a ring (mm)
   */
  Lacing(int rings, double away, double radius) {
    this.rings = rings;
    this.away = away;
    this.radius = radius;
    this.first = new int[rings * rings];
    this.second = new int[rings * rings];
    this.firstOver = new boolean[rings * rings];
    for (int a = 0; a < rings; a++) {
      visits.add(new ArrayList<>());
    }
    for (int a = 0; a < rings; a++) {
      for (int b = a + 1; b < rings; b++) {
        meet(a, b);
      }
    }
    visits.forEach(v -> v.sort(Comparator.comparingDouble(Visit::angle)));
    alternate();
  }

  private double x(int ring) {
    return away * Math.cos(Math.PI / 2 + 2 * Math.PI * ring / rings);
  }

  private double y(int ring) {
    return away * Math.sin(Math.PI / 2 + 2 * Math.PI * ring / rings);
  }

  private void meet(int a, int b) {
    double dx = x(b) - x(a);
    double dy = y(b) - y(a);
    double between = Math.hypot(dx, dy);
    if (between >= 2 * radius) {
      return;
    }
    double line = Math.atan2(dy, dx);
    double half = Math.acos(between / 2 / radius);
    for (int side = -1; side <= 1; side += 2) {
      first[pairs] = a;
      second[pairs] = b;
      visits.get(a).add(new Visit(pairs, b, turned(line + side * half)));
      visits.get(b).add(new Visit(pairs, a, turned(line + Math.PI - side * half)));
      pairs++;
    }
  }

  private static double turned(double angle) {
    double t = angle % (2 * Math.PI);
    return t < 0 ? t + 2 * Math.PI : t;
  }

  private void alternate() {
    boolean[] known = new boolean[pairs];
    for (int start = 0; start < pairs; start++) {
      if (known[start]) {
        continue;
      }
      known[start] = true;
      firstOver[start] = true;
      Deque<Integer> open = new ArrayDeque<>(List.of(start));
      while (!open.isEmpty()) {
        int pair = open.remove();
        for (int ring : new int[] {first[pair], second[pair]}) {
          List<Visit> along = visits.get(ring);
          int at = 0;
          while (along.get(at).pair != pair) {
            at++;
          }
          int next = along.get((at + 1) % along.size()).pair;
          if (!known[next]) {
            known[next] = true;
            firstOver[next] = (first[next] == ring) != over(pair, ring);
            open.add(next);
          }
        }
      }
    }
  }

  private boolean over(int pair, int ring) {
    return (first[pair] == ring) == firstOver[pair];
  }

  /** All crossings. */
  List<Crossing> crossings() {
    List<Crossing> all = new ArrayList<>();
    for (int ring = 0; ring < rings; ring++) {
      for (Visit v : visits.get(ring)) {
        if (over(v.pair, ring)) {
          double px = x(ring) + radius * Math.cos(v.angle);
          double py = y(ring) + radius * Math.sin(v.angle);
          all.add(new Crossing(ring, v.other, px, py));
        }
      }
    }
    return all;
  }

  /** Whether every ring passes over and under by turns. */
  boolean alternates() {
    for (int ring = 0; ring < rings; ring++) {
      List<Visit> along = visits.get(ring);
      for (int i = 0; i < along.size(); i++) {
        int next = along.get((i + 1) % along.size()).pair;
        if (over(along.get(i).pair, ring) == over(next, ring)) {
          return false;
        }
      }
    }
    return true;
  }

  /** Lines must stay below this (mm), so that crossings with their gaps stay apart. */
  double widestLineMm(double gapMm) {
    double widest = radius;
    for (int ring = 0; ring < rings; ring++) {
      List<Visit> along = visits.get(ring);
      for (int i = 0; i < along.size(); i++) {
        Visit a = along.get(i);
        Visit b = along.get((i + 1) % along.size());
        double room = radius * turned(b.angle - a.angle);
        double sin = 0;
        double share = 0;
        for (Visit v : List.of(a, b)) {
          double between = Math.hypot(x(v.other) - x(ring), y(v.other) - y(ring));
          double cos = 1 - between * between / (2 * radius * radius);
          double s = Math.sqrt(1 - cos * cos);
          sin += 1 / s;
          share += (1 + Math.abs(cos)) / (2 * s);
        }
        widest = Math.min(widest, (ROOM * room - gapMm * sin) / share);
      }
    }
    return widest;
  }

  /** Draws one rosette about the origin. */
  void draw(double lineMm, double gapMm, Pencil pencil) {
    GeometryFactory maker = new GeometryFactory();
    for (int ring = 0; ring < rings; ring++) {
      List<Visit> along = visits.get(ring);
      int n = along.size();
      for (int i = 0; i < n; i++) {
        if (over(along.get(i).pair, ring)) {
          continue;
        }
        Visit from = along.get(i);
        Visit to = along.get((i + 2) % n);
        double sweep = turned(to.angle - from.angle);
        sweep = n == 2 ? 2 * Math.PI : sweep;
        Geometry run = band(maker, pencil, ring, from.angle, sweep, lineMm / 2);
        for (Visit end : List.of(from, to)) {
          Geometry bridge = bridge(maker, pencil, end, lineMm / 2 + gapMm);
          run = OverlayNGRobust.overlay(run, bridge, OverlayNG.DIFFERENCE);
        }
        for (int g = 0; g < run.getNumGeometries(); g++) {
          pencil.ring(counterClockwise((Polygon) run.getGeometryN(g)));
        }
      }
    }
  }

  /** The stretch of the other ring that lies over this crossing, half way to its neighbours. */
  private Geometry bridge(GeometryFactory maker, Pencil pencil, Visit v, double half) {
    List<Visit> along = visits.get(v.other);
    int n = along.size();
    int at = 0;
    while (along.get(at).pair != v.pair) {
      at++;
    }
    double here = along.get(at).angle;
    double before = turned(here - along.get((at + n - 1) % n).angle) / 2;
    double after = turned(along.get((at + 1) % n).angle - here) / 2;
    return band(maker, pencil, v.other, here - before, before + after, half);
  }

  private Polygon band(
      GeometryFactory maker, Pencil pencil, int ring, double from, double sweep, double half) {
    double[] outer = pencil.arc(x(ring), y(ring), radius + half, from, sweep);
    double[] inner = pencil.arc(x(ring), y(ring), radius - half, from + sweep, -sweep);
    int n = (outer.length + inner.length) / 2;
    Coordinate[] points = new Coordinate[n + 1];
    for (int i = 0; i < n; i++) {
      double[] side = 2 * i < outer.length ? outer : inner;
      int at = 2 * i < outer.length ? 2 * i : 2 * i - outer.length;
      points[i] = new Coordinate(side[at], side[at + 1]);
    }
    points[n] = points[0];
    return maker.createPolygon(points);
  }

  private static double[] counterClockwise(Polygon polygon) {
    LinearRing ring = polygon.getExteriorRing();
    Coordinate[] points = ring.getCoordinates();
    boolean turned = !Orientation.isCCW(points);
    int n = points.length - 1;
    double[] xy = new double[2 * n];
    for (int i = 0; i < n; i++) {
      Coordinate p = points[turned ? n - i : i];
      xy[2 * i] = p.x;
      xy[2 * i + 1] = p.y;
    }
    return xy;
  }
}
