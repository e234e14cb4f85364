package org.amperskin.film;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.index.strtree.STRtree;

/** Rings to JTS polygons and back. */
final class Polygonal {
  static final GeometryFactory FACTORY = new GeometryFactory();

  private Polygonal() {}

  /** One of the outlines, with the holes found to lie in it. */
  private record Shell(LinearRing ring, IndexedPointInAreaLocator in, List<LinearRing> holes) {}

  /** Each hole goes to the smallest outline around it. */
  static Geometry geometry(List<double[]> rings) {
    STRtree tree = new STRtree();
    List<Shell> shells = new ArrayList<>();
    for (double[] ring : rings) {
      if (Outline.areaMm2(ring) > 0) {
        LinearRing line = FACTORY.createLinearRing(closed(ring));
        Shell shell =
            new Shell(
                line,
                new IndexedPointInAreaLocator(FACTORY.createPolygon(line)),
                new ArrayList<>());
        shells.add(shell);
        tree.insert(line.getEnvelopeInternal(), shell);
      }
    }
    if (shells.isEmpty()) {
      return FACTORY.createPolygon();
    }
    for (double[] ring : rings) {
      if (Outline.areaMm2(ring) < 0) {
        LinearRing hole = FACTORY.createLinearRing(closed(ring));
        List<?> near = tree.query(hole.getEnvelopeInternal());
        near.stream()
            .map(Shell.class::cast)
            .filter(s -> s.ring.getEnvelopeInternal().covers(hole.getEnvelopeInternal()))
            .filter(s -> liesIn(hole, s))
            .min(Comparator.comparingDouble(s -> s.ring.getEnvelopeInternal().getArea()))
            .ifPresent(s -> s.holes.add(hole));
      }
    }
    Polygon[] polygons =
        shells.stream()
            .map(s -> FACTORY.createPolygon(s.ring, s.holes.toArray(new LinearRing[0])))
            .toArray(Polygon[]::new);
    Geometry all = polygons.length == 1 ? polygons[0] : FACTORY.createMultiPolygon(polygons);
    return all.isValid() ? all : GeometryFixer.fix(all);
  }

  private static boolean liesIn(LinearRing hole, Shell shell) {
    for (Coordinate c : hole.getCoordinates()) {
      int where = shell.in.locate(c);
      if (where != Location.BOUNDARY) {
        return where == Location.INTERIOR;
      }
    }
    return true;
  }

  /** All polygons of a geometry; points and lines are dropped. */
  static Outline outline(Geometry geometry) {
    List<double[]> rings = new ArrayList<>();
    for (Polygon polygon : polygons(geometry)) {
      rings.add(ring(polygon.getExteriorRing(), true));
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        rings.add(ring(polygon.getInteriorRingN(h), false));
      }
    }
    return Outline.of(rings);
  }

  /** The polygons in a geometry, in its own order, without empty ones. */
  static List<Polygon> polygons(Geometry geometry) {
    List<Polygon> found = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Geometry part = geometry.getGeometryN(i);
      if (part instanceof Polygon polygon && !polygon.isEmpty()) {
        found.add(polygon);
      } else if (part.getNumGeometries() > 1) {
        found.addAll(polygons(part));
      }
    }
    return found;
  }

  private static double[] ring(LinearRing line, boolean counterClockwise) {
    Coordinate[] c = line.getCoordinates();
    boolean turn = Orientation.isCCW(c) != counterClockwise;
    int n = c.length - 1;
    double[] out = new double[2 * n];
    for (int i = 0; i < n; i++) {
      Coordinate from = c[turn ? n - i : i];
      out[2 * i] = from.x;
      out[2 * i + 1] = from.y;
    }
    return out;
  }

  private static Coordinate[] closed(double[] ring) {
    int n = ring.length / 2;
    Coordinate[] out = new Coordinate[n + 1];
    for (int i = 0; i < n; i++) {
      out[i] = new Coordinate(ring[2 * i], ring[2 * i + 1]);
    }
    out[n] = out[0].copy();
    return out;
  }
}
