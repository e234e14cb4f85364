package org.amperskin.pattern.motif;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.pattern.Artwork;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Artwork as figures of a general-purpose geometry library, to compare by area. */
final class Figures {
  private static final GeometryFactory MAKER = new GeometryFactory();

  private Figures() {}

  /** Outlines less holes, moved. */
  static Geometry of(Artwork a, double dx, double dy) {
    List<Geometry> outlines = new ArrayList<>();
    List<Geometry> holes = new ArrayList<>();
    for (int r = 0; r < a.ringCount(); r++) {
      int n = a.ringStarts()[r + 1] - a.ringStarts()[r];
      Coordinate[] c = new Coordinate[n + 1];
      for (int i = 0; i < n; i++) {
        int p = 2 * (a.ringStarts()[r] + i);
        c[i] = new Coordinate(a.xy()[p] + dx, a.xy()[p + 1] + dy);
      }
      c[n] = c[0];
      double twice = 0;
      for (int i = 0; i < n; i++) {
        twice += c[i].x * c[i + 1].y - c[i + 1].x * c[i].y;
      }
      (twice > 0 ? outlines : holes).add(MAKER.createPolygon(c));
    }
    Geometry solid = OverlayNGRobust.union(MAKER.buildGeometry(outlines));
    return holes.isEmpty()
        ? solid
        : OverlayNGRobust.overlay(
            solid, OverlayNGRobust.union(MAKER.buildGeometry(holes)), OverlayNG.DIFFERENCE);
  }

  /** Area where two figures differ inside a window (mm2). */
  static double differenceMm2(Geometry a, Geometry b, Motif.Window w) {
    Geometry window =
        MAKER.createPolygon(
            new Coordinate[] {
              new Coordinate(w.left(), w.bottom()),
              new Coordinate(w.right(), w.bottom()),
              new Coordinate(w.right(), w.top()),
              new Coordinate(w.left(), w.top()),
              new Coordinate(w.left(), w.bottom())
            });
    Geometry difference = OverlayNGRobust.overlay(a, b, OverlayNG.SYMDIFFERENCE);
    return OverlayNGRobust.overlay(difference, window, OverlayNG.INTERSECTION).getArea();
  }
}
