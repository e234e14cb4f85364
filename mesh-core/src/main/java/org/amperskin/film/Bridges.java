package org.amperskin.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Straight bridges that tie the islands of a stencil to its main piece.
 *
 * <p>Definition: the shortest tree that joins all pieces, each bridge along the shortest line
 * between two pieces (R. C. Prim, Bell System Technical Journal 36, 1957, from memory), slid
 * sideways by up to four widths where only a part of it would stand on a piece; square cut,
 * reaching half its width into both.
 *
 * <p>Guaranteed: one bridge an island; afterwards the stencil is one piece, or {@link #with} says
 * so by an exception. Cost: pieces squared in box comparisons, far fewer distances.
 */
final class Bridges {
  private static final int MOST_PIECES = 3000;
  private static final int SLIDES = 16;
  private static final double FULL_SEAT = 0.98;

  private Bridges() {}

  /**
   * One bridge.
   *
   * @param x0 start (mm)
   * @param y0 start (mm)
   * @param x1 end (mm)
   * @param y1 end (mm)
   */
  record Bridge(double x0, double y0, double x1, double y1) {
    double lengthMm() {
      return Math.hypot(x1 - x0, y1 - y0);
    }

    Polygon strip(double width) {
      return strip(-width / 2, lengthMm() + width / 2, width);
    }

    /** Which part of an end stands on a piece, 0 to 1. */
    double seat(double width, boolean atStart, Polygon piece) {
      double length = lengthMm();
      Polygon end =
          atStart ? strip(-width / 2, 0, width) : strip(length, length + width / 2, width);
      return OverlayNGRobust.overlay(end, piece, OverlayNG.INTERSECTION).getArea() / end.getArea();
    }

    private Polygon strip(double from, double to, double width) {
      double length = lengthMm();
      double ux = length > 0 ? (x1 - x0) / length : 1;
      double uy = length > 0 ? (y1 - y0) / length : 0;
      double h = width / 2;
      double[][] corner = {{from, -h}, {to, -h}, {to, h}, {from, h}};
      Coordinate[] ring = new Coordinate[5];
      for (int i = 0; i < 4; i++) {
        ring[i] =
            new Coordinate(
                x0 + corner[i][0] * ux - corner[i][1] * uy,
                y0 + corner[i][0] * uy + corner[i][1] * ux);
      }
      ring[4] = ring[0].copy();
      return Polygonal.FACTORY.createPolygon(ring);
    }
  }

  /**
   * Bridges from piece {@code main} to all others, directly or over other islands.
   *
   * @param widthMm how wide they will be (mm)
   */
  static List<Bridge> between(List<Polygon> pieces, int main, double widthMm) {
    int n = pieces.size();
    if (n > MOST_PIECES) {
      throw new IllegalArgumentException(
          n + " loose pieces to bridge, " + MOST_PIECES + " fit: use transfer tape");
    }
    double[] best = new double[n];
    Bridge[] way = new Bridge[n];
    int[] start = new int[n];
    boolean[] joined = new boolean[n];
    Arrays.fill(best, Double.POSITIVE_INFINITY);
    List<Bridge> bridges = new ArrayList<>();
    int last = main;
    joined[main] = true;
    for (int step = 1; step < n; step++) {
      IndexedFacetDistance from = new IndexedFacetDistance(pieces.get(last));
      int next = -1;
      for (int i = 0; i < n; i++) {
        if (joined[i]) {
          continue;
        }
        Polygon piece = pieces.get(i);
        double least = pieces.get(last).getEnvelopeInternal().distance(piece.getEnvelopeInternal());
        if (least < best[i]) {
          Coordinate[] ends = from.nearestPoints(piece);
          double found = ends[0].distance(ends[1]);
          if (found < best[i]) {
            best[i] = found;
            start[i] = last;
            way[i] = new Bridge(ends[0].x, ends[0].y, ends[1].x, ends[1].y);
          }
        }
        if (next < 0 || best[i] < best[next]) {
          next = i;
        }
      }
      joined[next] = true;
      bridges.add(seated(way[next], pieces.get(start[next]), pieces.get(next), widthMm));
      last = next;
    }
    return bridges;
  }

  /**
   * The bridge slid sideways until both ends stand on their pieces with their whole width; the best
   * place if there is none.
   */
  private static Bridge seated(Bridge bridge, Polygon from, Polygon to, double width) {
    double length = bridge.lengthMm();
    if (length == 0) {
      return bridge;
    }
    double nx = -(bridge.y1 - bridge.y0) / length;
    double ny = (bridge.x1 - bridge.x0) / length;
    Bridge best = bridge;
    double most = -1;
    for (int k = 0; k <= 2 * SLIDES; k++) {
      double slide = (k % 2 == 0 ? -k / 2 : k / 2 + 1) * width / 4;
      Bridge moved =
          new Bridge(
              bridge.x0 + slide * nx,
              bridge.y0 + slide * ny,
              bridge.x1 + slide * nx,
              bridge.y1 + slide * ny);
      double seat = Math.min(moved.seat(width, true, from), moved.seat(width, false, to));
      if (seat > most + 1e-9) {
        most = seat;
        best = moved;
      }
      if (seat >= FULL_SEAT) {
        break;
      }
    }
    return best;
  }

  /** The figure with its bridges, which stay within the outline. */
  static Geometry with(Geometry figure, List<Bridge> bridges, double widthMm, Geometry outline) {
    List<Geometry> all = new ArrayList<>(Polygonal.polygons(figure));
    for (Bridge b : bridges) {
      all.addAll(
          Polygonal.polygons(
              OverlayNGRobust.overlay(b.strip(widthMm), outline, OverlayNG.INTERSECTION)));
    }
    return OverlayNGRobust.union(all);
  }
}
