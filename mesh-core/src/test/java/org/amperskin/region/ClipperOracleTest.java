package org.amperskin.region;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.unroll.ConeFit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * The cut against brute force: every face, taken to the film, is clipped with all of the artwork by
 * JTS OverlayNG, a general-purpose library.
 */
class ClipperOracleTest {
  private static final GeometryFactory JTS = new GeometryFactory();

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 12);
  }

  /** Overlapping triangles; where two lie on each other even-odd makes a hole. */
  private static Geometry art(Random random, double size) {
    Geometry all = JTS.createPolygon();
    for (int i = 0; i < 14; i++) {
      Coordinate[] c = new Coordinate[4];
      double x = (random.nextDouble() - 0.5) * size;
      double y = (random.nextDouble() - 0.5) * size;
      for (int k = 0; k < 3; k++) {
        c[k] =
            new Coordinate(
                x + (random.nextDouble() - 0.5) * size / 2,
                y + (random.nextDouble() - 0.5) * size / 2);
      }
      c[3] = c[0];
      all = OverlayNGRobust.overlay(all, JTS.createPolygon(c), OverlayNG.SYMDIFFERENCE);
    }
    return all;
  }

  private static Artwork artwork(Geometry g, double size) {
    java.util.ArrayList<Coordinate[]> rings = new java.util.ArrayList<>();
    for (int i = 0; i < g.getNumGeometries(); i++) {
      org.locationtech.jts.geom.Polygon p = (org.locationtech.jts.geom.Polygon) g.getGeometryN(i);
      rings.add(p.getExteriorRing().getCoordinates());
      for (int h = 0; h < p.getNumInteriorRing(); h++) {
        rings.add(p.getInteriorRingN(h).getCoordinates());
      }
    }
    int n = rings.stream().mapToInt(r -> r.length - 1).sum();
    double[] xy = new double[2 * n];
    int[] starts = new int[rings.size() + 1];
    int to = 0;
    for (int r = 0; r < rings.size(); r++) {
      for (int k = 0; k + 1 < rings.get(r).length; k++) {
        xy[2 * to] = rings.get(r)[k].x;
        xy[2 * to++ + 1] = rings.get(r)[k].y;
      }
      starts[r + 1] = to;
    }
    return Artwork.cleaned(4 * size, 4 * size, xy, starts, 0, List.of());
  }

  private static Region region(SurfaceMesh mesh, Artwork art, Placement place, Selector... patch) {
    MaskFilm film =
        new MaskFilm("film", art, place, MaskKind.NEGATIVE_RESIST, false, List.of(patch));
    Skin skin =
        Skin.of(MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
    return Region.of(
        new RegionRule("r", List.of(film), List.of(), List.of()), skin, Progress.SILENT);
  }

  /** Area on the faces that lies behind opaque artwork; faces seen from behind are left out. */
  private static double clipped(SurfaceMesh mesh, double[] xy, Geometry art) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      Coordinate[] c = new Coordinate[4];
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        c[k] = new Coordinate(xy[2 * v], xy[2 * v + 1]);
      }
      c[3] = c[0];
      double flat =
          ((c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[1].y - c[0].y) * (c[2].x - c[0].x)) / 2;
      if (flat > 1e-6 * mesh.faceAreaMm2(f)) {
        double part =
            OverlayNGRobust.overlay(JTS.createPolygon(c), art, OverlayNG.INTERSECTION).getArea();
        sum += mesh.faceAreaMm2(f) * part / flat;
      }
    }
    return sum;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void flatFilmOnABallAgrees(long seed) {
    Geometry art = art(new Random(seed), 40);
    SurfaceMesh ball = Shapes.sphere(new Vec3(0, 0, 0), 20, 3);
    double[] xy = new double[2 * ball.vertexCount()];
    for (int v = 0; v < ball.vertexCount(); v++) {
      xy[2 * v] = ball.x(v);
      xy[2 * v + 1] = ball.y(v);
    }
    double truth = clipped(ball, xy, art);
    FlatPlacement place =
        new FlatPlacement(
            new Vec3(0, 0, -1), new Vec3(0, 1, 0), new Vec3(0, 0, 0), 0, 1, false, 1, 1);
    Region r = region(ball, artwork(art, 40), place);
    assertThat(Math.abs(r.split().areaMm2(RegionKind.EXPOSED) - truth))
        .as("seed %d, truth %s", seed, truth)
        .isLessThan(1e-7 * truth + r.errorMm2());
    assertThat(r.errorMm2()).isLessThan(1e-6 * truth);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void wrappedFilmOnACylinderAgrees(long seed) {
    Geometry art = art(new Random(seed), 40);
    SurfaceMesh tube = Shapes.turnedSolid(150, 10, 0, 20, 0, 20, 13, 20, 27, 20, 40, 10, 40);
    double[] xy = new double[2 * tube.vertexCount()];
    for (int v = 0; v < tube.vertexCount(); v++) {
      xy[2 * v] = 20 * Math.atan2(tube.y(v), tube.x(v));
      xy[2 * v + 1] = tube.z(v) - 20;
    }
    double truth = 0;
    boolean[] side = new boolean[tube.faceCount()];
    for (int f = 0; f < side.length; f++) {
      double[] n = tube.unitNormal(f);
      side[f] = Math.abs(n[2]) < 0.5;
    }
    java.util.List<Integer> corners = new java.util.ArrayList<>();
    for (int f = 0; f < side.length; f++) {
      double span = 0;
      for (int k = 0; k < 3; k++) {
        span =
            Math.max(
                span, Math.abs(xy[2 * tube.corner(f, k)] - xy[2 * tube.corner(f, (k + 1) % 3)]));
      }
      // Artwork is 60 mm wide at most, so faces at the far side, where the turn jumps, bear none.
      if (side[f] && span < 20) {
        for (int k = 0; k < 3; k++) {
          corners.add(tube.corner(f, k));
        }
      }
    }
    SurfaceMesh wall =
        SurfaceMesh.of(tube.positions(), corners.stream().mapToInt(Integer::intValue).toArray());
    truth = clipped(wall, xy, art);
    WrappedPlacement place =
        new WrappedPlacement(
            null, ConeFit.Form.CYLINDER, new Vec3(0, 0, 1), new Vec3(20, 0, 20), 0, 1, false, 1, 1);
    Region r = region(tube, artwork(art, 40), place, new Selector.Grown(new Vec3(20, 0, 20), 20));
    assertThat(Math.abs(r.split().areaMm2(RegionKind.EXPOSED) - truth))
        .as("seed %d, truth %s, told error %s", seed, truth, r.errorMm2())
        .isLessThan(1e-9 * truth);
  }
}
