package org.amperskin.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlatMaskTest {
  private static final Vec3 DOWN = new Vec3(0, 0, -1);

  private static Skin skin(SurfaceMesh mesh) {
    return Skin.of(
        MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
  }

  private static Artwork rectangles(double w, double h, double... xywh) {
    double[] xy = new double[xywh.length * 2];
    int[] starts = new int[xywh.length / 4 + 1];
    for (int r = 0; r < xywh.length / 4; r++) {
      double x0 = xywh[4 * r];
      double y0 = xywh[4 * r + 1];
      double x1 = x0 + xywh[4 * r + 2];
      double y1 = y0 + xywh[4 * r + 3];
      double[] ring = {x0, y0, x1, y0, x1, y1, x0, y1};
      System.arraycopy(ring, 0, xy, 8 * r, 8);
      starts[r + 1] = 4 * (r + 1);
    }
    return Artwork.cleaned(w, h, xy, starts, 0, List.of());
  }

  private static Artwork polygonDisk(double sheet, double radius, int corners) {
    double[] xy = new double[2 * corners];
    for (int i = 0; i < corners; i++) {
      xy[2 * i] = radius * Math.cos(2 * Math.PI * i / corners);
      xy[2 * i + 1] = radius * Math.sin(2 * Math.PI * i / corners);
    }
    double sag = radius * (1 - Math.cos(Math.PI / corners));
    return Artwork.of(sheet, sheet, xy, new int[] {0, corners}, sag, List.of());
  }

  private static Region lit(SurfaceMesh mesh, Artwork artwork, MaskKind kind, FlatPlacement place) {
    MaskFilm film = new MaskFilm("film", artwork, place, kind, false);
    RegionRule rule = new RegionRule("r", List.of(film), List.of(), List.of());
    return Region.of(rule, skin(mesh), Progress.SILENT);
  }

  @Test
  void tapeOnTopOfACubeLeavesFiveSidesOpen() {
    SurfaceMesh cube = Shapes.box(0, 0, 0, 20, 20, 20);
    Region r =
        lit(
            cube,
            rectangles(20, 20, -10, -10, 20, 20),
            MaskKind.STOP_OFF,
            FlatPlacement.toward(DOWN));
    assertThat(r.openAreaMm2()).isCloseTo(2000, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.STOPPED_OFF)).isCloseTo(400, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.UNREACHED)).isCloseTo(2000, within(1e-9));
    assertThat(r.errorMm2()).isLessThan(1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 10, 37, 60, 80, 89})
  void stripesOnATiltedPlaneCoverFlatAreaOverCosine(double slope) {
    double t = Math.toRadians(slope);
    // The sheet rises away along y and is as long as needed to measure 30 x 30 mm from above.
    Vec3 up = new Vec3(0, 30, 30 * Math.tan(t));
    SurfaceMesh plane = Shapes.sheet(new Vec3(-15, -15, 3), new Vec3(30, 0, 0), up, 7);
    Artwork stripes = rectangles(30, 30, -15, -15, 4, 30, -8, -15, 1.5, 30, 3, -15, 9, 30);
    FlatPlacement place = FlatPlacement.toward(DOWN).withUp(new Vec3(0, 1, 0));
    Region r = lit(plane, stripes, MaskKind.POSITIVE_RESIST, place);
    double clear = (30 - 14.5) * 30;
    double stored = 30 * Math.hypot(30, 30 * Math.tan(t));
    assertThat(r.split().areaMm2(RegionKind.EXPOSED) / (clear * stored / 900))
        .isCloseTo(1, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.MASKED) / (14.5 * 30 * stored / 900))
        .isCloseTo(1, within(1e-9));
    // The sheet is wet on its other side too, which no light reaches.
    assertThat(r.split().areaMm2(RegionKind.UNREACHED) / stored).isCloseTo(1, within(1e-9));
    // Five borders lie inside the sheet, each as long as the slope.
    assertThat(r.edgeLengthMm()).isCloseTo(5 * stored / 30, within(1e-9 * stored));
  }

  @Test
  void capOfASphereUnderADiskConvergesToArchimedes() {
    // Archimedes, On the Sphere and Cylinder I: a cap of height h has area 2 pi R h.
    double radius = 20;
    double hole = 12;
    double cap = 2 * Math.PI * radius * (radius - Math.sqrt(radius * radius - hole * hole));
    double[] errors = new double[7];
    for (int depth = 3; depth <= 6; depth++) {
      SurfaceMesh sphere = Shapes.sphere(new Vec3(1, 2, 3), radius, depth);
      Region r =
          lit(
              sphere,
              polygonDisk(50, hole, 2000),
              MaskKind.NEGATIVE_RESIST,
              FlatPlacement.toward(DOWN));
      errors[depth] = Math.abs(r.split().areaMm2(RegionKind.EXPOSED) - cap) / cap;
    }
    // Second order: three halvings of the edges make the error about 64 times smaller.
    assertThat(errors[3] / errors[6]).isGreaterThan(30);
    assertThat(errors[6]).isLessThan(3e-4);
  }

  @Test
  void overhangCastsItsShadowExactly() {
    SurfaceMesh floor = Shapes.box(-20, -20, -1, 20, 20, 0);
    SurfaceMesh shelf = Shapes.box(-5, -7, 10, 6, 9, 11);
    Region r =
        lit(
            Shapes.together(floor, shelf),
            rectangles(100, 100),
            MaskKind.POSITIVE_RESIST,
            FlatPlacement.toward(DOWN));
    double lit = 1600 - 11 * 16 + 11 * 16;
    assertThat(r.split().areaMm2(RegionKind.EXPOSED)).isCloseTo(lit, within(1e-8));
    assertThat(r.errorMm2()).isLessThan(1e-6);
    // Under a slanting light the shelf's shadow moves aside by its height times the slope.
    Vec3 slanting = new Vec3(1, 0, -1);
    Region s =
        lit(
            Shapes.together(floor, shelf),
            rectangles(200, 200),
            MaskKind.POSITIVE_RESIST,
            new FlatPlacement(slanting, new Vec3(0, 1, 0), null, 0, 1, false, 1, 1));
    // Shelf: top 11 x 16 and side 16 x 1 facing -x; shadow on the floor: (11 + 1) x 16, from x = 5
    // to 17; floor: top less shadow, and its side facing -x of 40 x 1.
    double expected = 11 * 16 + 16 * 1 + (1600 - 12 * 16) + 40 * 1;
    assertThat(s.split().areaMm2(RegionKind.EXPOSED)).isCloseTo(expected, within(1e-8));
  }

  @Test
  void floorUnderABumpySphereIsHiddenByItsOutline() {
    SurfaceMesh floor = Shapes.box(-40, -40, -1, 40, 40, 0);
    SurfaceMesh ball = Shapes.sphere(new Vec3(3, -4, 30), 15, 5);
    Region r =
        lit(
            Shapes.together(floor, ball),
            rectangles(200, 200),
            MaskKind.POSITIVE_RESIST,
            FlatPlacement.toward(DOWN));
    SurfaceMesh upper = r.split().mesh();
    double floorLit = 0;
    for (int f = 0; f < upper.faceCount(); f++) {
      boolean onFloor = r.split().parent(f) < 12;
      if (onFloor && r.split().kind(f) == RegionKind.EXPOSED) {
        floorLit += upper.faceAreaMm2(f);
      }
    }
    // The outline of the subdivided octahedron is a regular polygon of 4 * 2^5 corners.
    int corners = 128;
    double outline = corners / 2.0 * 15 * 15 * Math.sin(2 * Math.PI / corners);
    assertThat(floorLit).isCloseTo(6400 - outline, within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void randomBoxesAgreeWithRaySampling(long seed) {
    Random random = new Random(seed);
    List<SurfaceMesh> boxes = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double x = random.nextDouble() * 40;
      double y = random.nextDouble() * 40;
      double z = random.nextDouble() * 40;
      double a = 2 + random.nextDouble() * 12;
      boxes.add(Shapes.box(x, y, z, x + a, y + 2 + random.nextDouble() * 9, z + a / 2));
    }
    SurfaceMesh all = Shapes.together(boxes.toArray(SurfaceMesh[]::new));
    Artwork art = rectangles(30, 30, -12, -10, 8, 20, 2, -13, 5, 11, 3, 4, 9, 9);
    Vec3 toward = new Vec3(0.3, -0.2, -1);
    FlatPlacement place = new FlatPlacement(toward, new Vec3(0.1, 1, 0), null, 25, 1.3, true, 1, 1);
    Region r = lit(all, art, MaskKind.POSITIVE_RESIST, place);
    RaySampling sampled = new RaySampling(all, art, place, random);
    double[] fraction = sampled.fractions(60_000);
    double seenFlat = sampled.flatAreaMm2();
    double litFlat = 0;
    double shadedFlat = 0;
    Vec3 light = toward.unit();
    for (int f = 0; f < r.split().mesh().faceCount(); f++) {
      double flat = RaySampling.flatArea(r.split().mesh(), f, light);
      litFlat += r.split().kind(f) == RegionKind.EXPOSED ? flat : 0;
      shadedFlat += r.split().kind(f) == RegionKind.MASKED ? flat : 0;
    }
    String repeat = "seed " + seed;
    assertThat(litFlat / seenFlat).as(repeat).isCloseTo(fraction[0], within(0.01));
    assertThat(shadedFlat / seenFlat).as(repeat).isCloseTo(fraction[1], within(0.01));
    // Every ray that hits the part at all lights or shades exactly one face.
    assertThat((litFlat + shadedFlat) / seenFlat)
        .as(repeat)
        .isCloseTo(fraction[0] + fraction[1], within(0.01));
  }

  @Test
  void sameBytesOnOneAndTwoThreads() throws Exception {
    SurfaceMesh mesh =
        Shapes.together(
            Shapes.sphere(new Vec3(0, 0, 0), 20, 5), Shapes.sphere(new Vec3(9, 4, 40), 10, 4));
    Artwork art = polygonDisk(60, 9, 333);
    Region one = onThreads(1, mesh, art);
    Region two = onThreads(2, mesh, art);
    assertThat(two.split().mesh().positions()).isEqualTo(one.split().mesh().positions());
    assertThat(two.split().mesh().corners()).isEqualTo(one.split().mesh().corners());
    assertThat(two.edgeLengthMm()).isEqualTo(one.edgeLengthMm());
    assertThat(two.openAreaMm2()).isEqualTo(one.openAreaMm2());
  }

  private static Region onThreads(int threads, SurfaceMesh mesh, Artwork art) throws Exception {
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      return pool.submit(() -> lit(mesh, art, MaskKind.POSITIVE_RESIST, FlatPlacement.toward(DOWN)))
          .get();
    } finally {
      pool.shutdown();
    }
  }

  @Test
  void positiveAndNegativeResistAreComplementaryWhereTheLightReaches() {
    SurfaceMesh cube = Shapes.box(-10, -10, -10, 10, 10, 10);
    Artwork art = rectangles(16, 12, -5, -3, 4, 6);
    Region p = lit(cube, art, MaskKind.POSITIVE_RESIST, FlatPlacement.toward(new Vec3(0, 1, 0)));
    Region n = lit(cube, art, MaskKind.NEGATIVE_RESIST, FlatPlacement.toward(new Vec3(0, 1, 0)));
    assertThat(p.openAreaMm2()).isCloseTo(16 * 12 - 24, within(1e-9));
    assertThat(p.split().areaMm2(RegionKind.UNREACHED)).isCloseTo(2000, within(1e-9));
    assertThat(n.split().areaMm2(RegionKind.MASKED)).isCloseTo(16 * 12 - 24, within(1e-9));
    // What light does not reach washes open with negative resist: five sides and the covered part.
    assertThat(n.openAreaMm2()).isCloseTo(2000 + 400 - (16 * 12 - 24), within(1e-9));
    assertThat(n.split().skinAreaMm2()).isCloseTo(2400, within(1e-9));
  }

  @Test
  void repeatTurnScaleAndMirrorPlaceTheArtwork() {
    SurfaceMesh plate = Shapes.box(-50, -50, -1, 50, 50, 0);
    // An L of 3 squares in the lower left, so that turns and mirrors can be told apart.
    Artwork ell = rectangles(10, 10, -5, -5, 8, 4, -5, -1, 4, 4);
    FlatPlacement base = FlatPlacement.toward(DOWN).withUp(new Vec3(0, 1, 0));
    FlatPlacement tiles =
        new FlatPlacement(base.toward(), base.up(), new Vec3(0, 0, 0), 0, 2, false, 3, 2);
    Region r = lit(plate, ell, MaskKind.STOP_OFF, tiles);
    assertThat(r.split().areaMm2(RegionKind.STOPPED_OFF)).isCloseTo(6 * 48 * 4, within(1e-7));
    assertThat(coveredAt(plate, ell, 0, false, 2.1, -4.3)).isTrue();
    assertThat(coveredAt(plate, ell, 0, false, 2.1, 1.7)).isFalse();
    // A quarter turn counter-clockwise, seen from the lamp, carries (2.1, -4.3) to (4.3, 2.1).
    assertThat(coveredAt(plate, ell, 90, false, 4.3, 2.1)).isTrue();
    assertThat(coveredAt(plate, ell, 90, false, 2.1, -4.3)).isTrue();
    assertThat(coveredAt(plate, ell, 90, false, -4.3, 2.1)).isFalse();
    assertThat(coveredAt(plate, ell, 0, true, -2.1, -4.3)).isTrue();
    assertThat(coveredAt(plate, ell, 0, true, 4.3, 1.7)).isTrue();
    assertThat(coveredAt(plate, ell, 0, true, -4.3, 1.7)).isFalse();
  }

  private static boolean coveredAt(
      SurfaceMesh plate, Artwork art, double turn, boolean mirror, double x, double y) {
    FlatPlacement place =
        new FlatPlacement(DOWN, new Vec3(0, 1, 0), new Vec3(0, 0, 0), turn, 1, mirror, 1, 1);
    Region r = lit(plate, art, MaskKind.STOP_OFF, place);
    SurfaceMesh m = r.split().mesh();
    for (int f = 0; f < m.faceCount(); f++) {
      if (RaySampling.holds(m, f, x, y)
          && m.z(m.corner(f, 0)) == 0
          && m.z(m.corner(f, 1)) == 0
          && m.z(m.corner(f, 2)) == 0) {
        return r.split().kind(f) == RegionKind.STOPPED_OFF;
      }
    }
    throw new AssertionError("no face at " + x + ", " + y);
  }
}
