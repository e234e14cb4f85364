package org.amperskin.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Straight bridges that tie the islands of a stencil to its main piece.
 *
 * <p>Definition: the shortest tree that joins all pieces, each bridge along the shortest line
 * between two pieces (R. C. Prim, Bell System Technical Journal 36, 1957, from memory), square cut,
 * reaching half its width into both.
 *
 * <p>Guaranteed: one bridge an island; afterwards the stencil is one piece, or {@link #with} says
 * so by an exception. Cost: pieces squared in box comparisons, far fewer distances.
 */
final class Bridges {
  private static final int MOST_PIECES = 3000;

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
      double length = lengthMm();
      double ux = length > 0 ? (x1 - x0) / length : 1;
      double uy = length > 0 ? (y1 - y0) / length : 0;
      double h = width / 2;
      double[][] corner = {{-h, -h}, {length + h, -h}, {length + h, h}, {-h, h}};
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

  /** Bridges from piece {@code main} to all others, directly or over other islands. */
  static List<Bridge> between(List<Polygon> pieces, int main) {
    int n = pieces.size();
    if (n > MOST_PIECES) {
      throw new IllegalArgumentException(
          n + " loose pieces to bridge, " + MOST_PIECES + " fit: use transfer tape");
    }
    double[] best = new double[n];
    Bridge[] way = new Bridge[n];
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
            way[i] = new Bridge(ends[0].x, ends[0].y, ends[1].x, ends[1].y);
          }
        }
        if (next < 0 || best[i] < best[next]) {
          next = i;
        }
      }
      joined[next] = true;
      bridges.add(way[next]);
      last = next;
    }
    return bridges;
  }

  /** The figure with its bridges. */
  static Geometry with(Geometry figure, List<Bridge> bridges, double widthMm) {
    List<Geometry> all = new ArrayList<>(Polygonal.polygons(figure));
    bridges.forEach(b -> all.add(b.strip(widthMm)));
    Geometry joined = OverlayNGRobust.union(all);
    int left = Polygonal.polygons(joined).size();
    if (left != 1) {
      throw new IllegalArgumentException(
          "bridges of " + widthMm + " mm leave " + left + " pieces: take wider ones");
    }
    return joined;
  }
}
