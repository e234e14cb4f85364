package org.amperskin.pattern;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/** Small drawings of our own for tests, and artwork as JTS geometry for checks. */
final class Drawings {
  static final GeometryFactory JTS = new GeometryFactory();

  private Drawings() {}

  /** A sheet of 100 x 100 mm whose user unit is 1 mm. */
  static String sheet(String body) {
    return "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'"
        + " width='100mm' height='100mm' viewBox='0 0 100 100'>\n"
        + body
        + "\n</svg>";
  }

  static Artwork read(String svg) {
    return read(svg, ArtworkFile.Options.standard());
  }

  static Artwork read(String svg, ArtworkFile.Options options) {
    try {
      return ArtworkFile.read(
          svg.getBytes(StandardCharsets.UTF_8), Path.of("drawing.svg"), options);
    } catch (ArtworkFileException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** All rings as polygons with their holes, assembled by containment; independent of tracing. */
  static Geometry geometry(Artwork artwork) {
    List<Polygon> shells = new ArrayList<>();
    List<Coordinate[]> holes = new ArrayList<>();
    for (int r = 0; r < artwork.ringCount(); r++) {
      Coordinate[] ring = ring(artwork, r);
      if (Orientation.isCCW(ring)) {
        shells.add(JTS.createPolygon(ring));
      } else {
        holes.add(ring);
      }
    }
    shells.sort((a, b) -> Double.compare(a.getArea(), b.getArea()));
    List<List<org.locationtech.jts.geom.LinearRing>> inside = new ArrayList<>();
    shells.forEach(s -> inside.add(new ArrayList<>()));
    for (Coordinate[] hole : holes) {
      Polygon body = JTS.createPolygon(hole);
      for (int s = 0; s < shells.size(); s++) {
        if (shells.get(s).getArea() > body.getArea()
            && PreparedGeometryFactory.prepare(shells.get(s)).covers(body.getInteriorPoint())) {
          inside.get(s).add(JTS.createLinearRing(hole));
          break;
        }
      }
    }
    Polygon[] polygons = new Polygon[shells.size()];
    for (int s = 0; s < polygons.length; s++) {
      polygons[s] =
          JTS.createPolygon(
              shells.get(s).getExteriorRing(),
              inside.get(s).toArray(new org.locationtech.jts.geom.LinearRing[0]));
    }
    return JTS.createMultiPolygon(polygons);
  }

  private static Coordinate[] ring(Artwork artwork, int r) {
    int first = artwork.ringStarts()[r];
    int n = artwork.ringStarts()[r + 1] - first;
    Coordinate[] ring = new Coordinate[n + 1];
    for (int p = 0; p < n; p++) {
      ring[p] = new Coordinate(artwork.xy()[2 * (first + p)], artwork.xy()[2 * (first + p) + 1]);
    }
    ring[n] = new Coordinate(ring[0]);
    return ring;
  }

  static boolean same(Artwork a, Artwork b) {
    return Arrays.equals(a.xy(), b.xy()) && Arrays.equals(a.ringStarts(), b.ringStarts());
  }
}
