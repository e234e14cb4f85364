package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Strokes against their definition (W3C SVG 2 section 13.5): every point that the pen covers,
 * square to the curve, is opaque; nothing farther from the curve than half the width is. Both are
 * asked at thousands of points of the true curve, so no other stroker is trusted.
 */
class StrokeBandTest {
  private static final int SAMPLES = 8000;

  @Test
  void strokeOfCubicsKeepsWithinTheToldDeviation() {
    for (long seed = 1; seed <= 120; seed++) {
      Random random = new Random(seed);
      double[] x = new double[4];
      double[] y = new double[4];
      for (int i = 0; i < 4; i++) {
        x[i] = 10 + random.nextInt(800) / 10.0;
        y[i] = 10 + random.nextInt(800) / 10.0;
      }
      double half = (1 + random.nextInt(8)) / 2.0;
      String d =
          String.format(
              Locale.ROOT,
              "M%s %sC%s %s %s %s %s %s",
              x[0],
              y[0],
              x[1],
              y[1],
              x[2],
              y[2],
              x[3],
              y[3]);
      Artwork art =
          Drawings.read(
              Drawings.sheet(
                  "<path fill='none' stroke='black' stroke-width='"
                      + 2 * half
                      + "' d='"
                      + d
                      + "'/>"));
      double told = art.flatteningMm() + 1e-4; // deviation is measured at three places a step
      assertThat(told).isLessThan(0.0101);
      Geometry geometry = Drawings.geometry(art);
      IndexedFacetDistance border = new IndexedFacetDistance(geometry);
      IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(geometry);
      STRtree curve = new STRtree();
      double missedMm = 0;
      for (int i = 1; i < SAMPLES; i++) {
        double t = (double) i / SAMPLES;
        double px = bezier(x, t) - 50;
        double py = 50 - bezier(y, t);
        double tx = slope(x, t);
        double ty = -slope(y, t);
        double length = Math.hypot(tx, ty);
        curve.insert(
            new org.locationtech.jts.geom.Envelope(new Coordinate(px, py)), new double[] {px, py});
        for (double s : new double[] {-1, 1}) {
          double reach = s * half;
          Coordinate edge = new Coordinate(px - reach * ty / length, py + reach * tx / length);
          boolean end = i < 20 || i > SAMPLES - 20;
          boolean onSheet = Math.abs(edge.x) < 50 && Math.abs(edge.y) < 50;
          if (!end && onSheet && locator.locate(edge) == Location.EXTERIOR) {
            missedMm = Math.max(missedMm, border.distance(Drawings.JTS.createPoint(edge)));
          }
        }
      }
      assertThat(missedMm).as("seed %d, %s, not covered by (mm)", seed, d).isLessThan(told);
      double farthest = 0;
      double[] xy = art.xy();
      for (int p = 0; p < art.edgeCount(); p++) {
        double best = Double.POSITIVE_INFINITY;
        double reach = half + 0.2;
        for (Object o :
            curve.query(
                new org.locationtech.jts.geom.Envelope(
                    xy[2 * p] - reach,
                    xy[2 * p] + reach,
                    xy[2 * p + 1] - reach,
                    xy[2 * p + 1] + reach))) {
          double[] c = (double[]) o;
          best = Math.min(best, Math.hypot(c[0] - xy[2 * p], c[1] - xy[2 * p + 1]));
        }
        farthest = Math.max(farthest, best - half);
      }
      // the curve is sampled every 0.02 mm or so: at half 0.5 that adds up to 1e-4 mm
      assertThat(farthest).as("seed %d, %s, width %s", seed, d, 2 * half).isLessThan(told + 5e-4);
    }
  }

  private static double bezier(double[] p, double t) {
    double u = 1 - t;
    return u * u * u * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t * t * t * p[3];
  }

  private static double slope(double[] p, double t) {
    double u = 1 - t;
    return u * u * (p[1] - p[0]) + 2 * u * t * (p[2] - p[1]) + t * t * (p[3] - p[2]);
  }
}
