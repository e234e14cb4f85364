package org.amperskin.film;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Where a figure is narrower than a length.
 *
 * <p>Definition: what a disc of that diameter cannot reach from inside (morphological opening:
 * Serra, Image Analysis and Mathematical Morphology, 1982, from memory), corners set aside: the
 * opening is sharpened at corners above 23 degrees.
 *
 * <p>Guaranteed: a parallel strip narrower than 0.998 of the length is found, one as wide is not.
 * Not guaranteed: the told width is that of the widest disc in the narrow place; narrow places
 * smaller than a fifth of the length squared are left out.
 *
 * <p>Cost: two offsets and a difference.
 */
final class NarrowPlaces {
  private static final double UNDER = 0.999;
  private static final double SLACK = 0.02;
  private static final double LEAST_AREA = 0.2;
  private static final double MITRE = 5;

  private NarrowPlaces() {}

  /**
   * A narrow place.
   *
   * @param xMm a point in the middle of it
   * @param yMm its other coordinate
   * @param widthMm width there (mm)
   * @param areaMm2 how much of the figure is so narrow (mm2)
   */
  record Place(double xMm, double yMm, double widthMm, double areaMm2) {}

  /** The narrow places, narrowest first. */
  static List<Place> of(Geometry figure, double leastMm) {
    double radius = UNDER * leastMm / 2;
    BufferParameters round = new BufferParameters(16);
    round.setSimplifyFactor(0.001);
    BufferParameters sharp =
        new BufferParameters(16, BufferParameters.CAP_ROUND, BufferParameters.JOIN_MITRE, MITRE);
    sharp.setSimplifyFactor(0.001);
    Geometry inner = new BufferOp(figure, round).getResultGeometry(-radius);
    Geometry rest = figure;
    if (!inner.isEmpty()) {
      Geometry opened = new BufferOp(inner, sharp).getResultGeometry(radius + SLACK * leastMm);
      rest = OverlayNGRobust.overlay(figure, opened, OverlayNG.DIFFERENCE);
    }
    List<Place> places = new ArrayList<>();
    for (Polygon polygon : Polygonal.polygons(rest)) {
      if (polygon.getArea() > LEAST_AREA * leastMm * leastMm) {
        MaximumInscribedCircle disc = new MaximumInscribedCircle(polygon, 0.005 * leastMm);
        Coordinate c = disc.getCenter().getCoordinate();
        places.add(new Place(c.x, c.y, 2 * disc.getRadiusLine().getLength(), polygon.getArea()));
      }
    }
    places.sort(
        Comparator.comparingDouble(Place::widthMm)
            .thenComparingDouble(Place::xMm)
            .thenComparingDouble(Place::yMm));
    return places;
  }
}
