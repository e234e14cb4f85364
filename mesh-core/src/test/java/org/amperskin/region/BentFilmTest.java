package org.amperskin.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

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
import org.amperskin.unroll.ConeFit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Wrapped and draped films on cylinders, cones and balls against closed forms. */
class BentFilmTest {
  private static final Vec3 UP = new Vec3(0, 0, 1);
  private static final Selector SIDE = new Selector.Grown(new Vec3(20, 0, 20), 20);

  private static Region lit(SurfaceMesh mesh, Artwork art, Placement place, Selector... patch) {
    MaskFilm film =
        new MaskFilm("film", art, place, MaskKind.POSITIVE_RESIST, false, List.of(patch));
    Skin skin =
        Skin.of(MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
    return Region.of(
        new RegionRule("r", List.of(film), List.of(), List.of()), skin, Progress.SILENT);
  }

  /** Opaque sheet with {@code count} upright clear stripes, evenly from the left border. */
  private static Artwork stripes(double w, double h, int count, double clear) {
    double pitch = w / count;
    double[] xy = new double[8 * count];
    int[] starts = new int[count + 1];
    for (int i = 0; i < count; i++) {
      double x0 = -w / 2 + i * pitch + clear / 2;
      double x1 = -w / 2 + (i + 1) * pitch - clear / 2;
      double[] ring = {x0, -h / 2, x1, -h / 2, x1, h / 2, x0, h / 2};
      System.arraycopy(ring, 0, xy, 8 * i, 8);
      starts[i + 1] = 4 * (i + 1);
    }
    return Artwork.of(w, h, xy, starts, 0, List.of());
  }

  private static SurfaceMesh cylinder(int around) {
    return Shapes.turnedSolid(around, 10, 0, 20, 0, 20, 13, 20, 27, 20, 40, 10, 40);
  }

  // A wrapped film keeps its area: a stripe of width b and height h bares b x h.
  @ParameterizedTest
  @ValueSource(ints = {90, 180, 720})
  void wrappedStripesKeepTheirAreaAndWidth(int around) {
    Artwork art = stripes(60, 30, 10, 2);
    Region r = lit(cylinder(around), art, WrappedPlacement.fitted(), SIDE);
    assertThat(r.openAreaMm2()).isCloseTo(9 * 2 * 30 + 2 * 1 * 30, within(5e-4 * 600));
    // Ten bands with two sides, the ends of the stripes above and below, the sheet's two sides.
    assertThat(r.edgeLengthMm()).isCloseTo(20 * 30 + 2 * 20 + 2 * 30, within(5e-4 * 700));
    LaidFilm laid = r.laid().get(0);
    double[] s = new double[2];
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (laid.faces(f)) {
        laid.stretch(f, s);
        assertThat(s[0]).isCloseTo(1, within(5e-4));
        assertThat(s[1]).isCloseTo(1, within(5e-4));
        // The round film stands off the facets' middles by their sagitta.
        assertThat(laid.gapMm(f)).isLessThan(20 * (1 - Math.cos(Math.PI / around)) + 1e-9);
        assertThat(laid.dose(f)).isCloseTo(1, within(5e-4));
      }
    }
  }

  @Test
  void stripesClosePeriodicallyRoundTheWholeCylinder() {
    double turn = 2 * Math.PI * 20;
    Region r = lit(cylinder(360), stripes(turn, 40, 24, 3), WrappedPlacement.fitted(), SIDE);
    assertThat(r.openAreaMm2()).isCloseTo(24 * 3 * 40, within(5e-4 * 2880));
    // 24 bands have 48 sides; the film's two ends meet and count too.
    assertThat(r.edgeLengthMm()).isCloseTo(50 * 40, within(1e-9));
  }

  // The same film flat: a stripe from x0 to x1 bares R (asin(x1/R) - asin(x0/R)) h.
  @Test
  void flatFilmOnTheCylinderFollowsTheCosineAndTheSagitta() {
    double radius = 20;
    Artwork art = stripes(20, 30, 5, 2);
    FlatPlacement place = new FlatPlacement(new Vec3(-1, 0, 0), UP, null, 0, 1, false, 1, 1);
    Region r = lit(cylinder(1440), art, place);
    double bare = 0;
    for (int i = 0; i <= 5; i++) {
      double x0 = Math.max(-10, -10 + 4 * i - 1);
      double x1 = Math.min(10, -10 + 4 * i + 1);
      bare += radius * (Math.asin(x1 / radius) - Math.asin(x0 / radius)) * 30;
    }
    assertThat(r.openAreaMm2()).isCloseTo(bare, within(1e-4 * bare));
    LaidFilm laid = r.laid().get(0);
    // Sagitta R - sqrt(R^2 - w^2): 0.64 mm at w 5, slope 14.5 deg, arc stretch 1.0107 up to there.
    double[] s = new double[2];
    int seen = 0;
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (!laid.faces(f)) {
        continue;
      }
      double x = (laid.x(f, 0) + laid.x(f, 1) + laid.x(f, 2)) / 3;
      if (Math.abs(Math.abs(x) - 5) < 0.05) {
        seen++;
        laid.stretch(f, s);
        assertThat(laid.gapMm(f)).isCloseTo(0.635, within(0.015));
        assertThat(laid.dose(f)).isCloseTo(Math.cos(Math.toRadians(14.48)), within(2e-3));
        assertThat(s[1]).isCloseTo(Math.sqrt(1 - 25.0 / 400), within(2e-3));
        assertThat(laid.widthOnSkin(f, 1, 0))
            .isCloseTo(1 / Math.sqrt(1 - 25.0 / 400), within(3e-3));
        assertThat(laid.widthOnSkin(f, 0, 1)).isCloseTo(1, within(1e-9));
      }
    }
    assertThat(seen).isPositive();
  }

  @Test
  void drapedFilmOnACylinderIsTheWrappedOne() {
    Artwork art = stripes(60, 30, 10, 2);
    Selector half = new Selector.HalfSpace(new Vec3(0, 0, 0), new Vec3(1, 0, 0));
    Region draped = lit(cylinder(180), art, DrapedPlacement.onPatch(), SIDE, half);
    assertThat(draped.openAreaMm2()).isCloseTo(600, within(5e-4 * 600));
    assertThat(draped.split().areaMm2(RegionKind.MASKED))
        .isCloseTo(Math.PI * 20 * 40 - 600, within(1e-3 * 2000));
  }

  @ParameterizedTest
  @CsvSource({"14, 8", "10, 18"})
  void conesKeepAreaToo(double top, double bottom) {
    SurfaceMesh cone =
        Shapes.turnedSolid(
            360, bottom / 2, 0, bottom, 0, (top + bottom) / 2, 15, top, 30, top / 2, 30);
    Selector side = new Selector.Grown(new Vec3((top + bottom) / 2, 0, 15), 20);
    Region r = lit(cone, stripes(20, 20, 5, 1.5), WrappedPlacement.fitted(), side);
    assertThat(r.openAreaMm2()).isCloseTo(5 * 1.5 * 20, within(5e-4 * 150));
    assertThat(((FilmForm.Bent) r.laid().get(0).form()).film().isCylinder()).isFalse();
  }

  @Test
  void drapedDiskOnABallHasTheAreaThatItsStretchAllows() {
    SurfaceMesh ball = Shapes.sphere(new Vec3(0, 0, 0), 30, 5);
    Selector cap = new Selector.HalfSpace(new Vec3(0, 0, 30 * Math.cos(Math.toRadians(32))), UP);
    Artwork art = stripes(24, 24, 6, 2);
    Region r = lit(ball, art, new DrapedPlacement(new Vec3(0, 1, 0), null, 0, 1, false, 1, 1), cap);
    double[] s = new double[2];
    LaidFilm laid = r.laid().get(0);
    double most = 0;
    double least = 9;
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (laid.faces(f)) {
        laid.stretch(f, s);
        most = Math.max(most, s[0]);
        least = Math.min(least, s[1]);
      }
    }
    assertThat(most / least).isBetween(1.02, 1.08);
    double bare = 6 * 2 * 24;
    assertThat(r.openAreaMm2()).isBetween(bare / (most * most), bare / (least * least));
  }

  @Test
  void boreIsCoveredFromInside() {
    SurfaceMesh tube =
        Shapes.turnedSolid(360, 12, 0, 20, 0, 20, 30, 12, 30, 12, 20, 12, 10, 12, 0.001);
    Selector inside = new Selector.Grown(new Vec3(12, 0, 15), 20);
    Region r = lit(tube, stripes(20, 20, 5, 1.5), WrappedPlacement.fitted(), inside);
    FilmForm.Bent bent = (FilmForm.Bent) r.laid().get(0).form();
    assertThat(bent.film().inside()).isTrue();
    assertThat(bent.film().radiusMm()).isCloseTo(12, within(0.02));
    assertThat(r.openAreaMm2()).isCloseTo(5 * 1.5 * 20, within(1e-3 * 150));
  }

  @Test
  void bossOverTheSideShadesIt() {
    // A rib round the cylinder, wider than its foot, hides the skin below its overhang.
    SurfaceMesh ribbed =
        Shapes.turnedSolid(
            360, 10, 0, 20, 0, 20, 15, 20, 20, 24, 18, 24, 24, 20, 22, 20, 40, 10, 40);
    WrappedPlacement round =
        new WrappedPlacement(
            new WrappedPlacement.Axis(new Vec3(0, 0, 0), UP),
            ConeFit.Form.CYLINDER,
            UP,
            new Vec3(20, 0, 20),
            0,
            1,
            false,
            1,
            1);
    Artwork clear = stripes(10, 60, 1, 10);
    Region r = lit(ribbed, clear, round);
    LaidFilm laid = r.laid().get(0);
    assertThat(((FilmForm.Bent) laid.form()).film().radiusMm()).isCloseTo(24, within(1e-9));
    // 10 mm of film at radius 24 covers the angle 10/24; the rib's flanks from z 18 to 24 hide what
    // lies behind them; flank areas are those of cone bands.
    double angle = 10.0 / 24;
    double cylinder = 20 * angle * (18 + 16);
    double ridge = 24 * angle * 6;
    assertThat(r.openAreaMm2()).isCloseTo(cylinder + ridge, within(2e-3 * 600));
  }

  @Test
  void turningAndMovingThePartChangesNothing() {
    for (int seed = 1; seed <= 5; seed++) {
      Random random = new Random(seed);
      Vec3 a = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      Vec3 b = a.cross(new Vec3(random.nextGaussian(), 1, 0)).unit();
      Vec3 c = a.cross(b);
      SurfaceMesh still = cylinder(120);
      double[] p = still.positions().clone();
      for (int v = 0; v < still.vertexCount(); v++) {
        Vec3 q = a.times(still.x(v)).plus(b.times(still.y(v))).plus(c.times(still.z(v)));
        p[3 * v] = q.x() + 40;
        p[3 * v + 1] = q.y() - 7;
        p[3 * v + 2] = q.z() + 3;
      }
      SurfaceMesh moved = SurfaceMesh.of(p, still.corners());
      Vec3 on = a.times(20).plus(c.times(20)).plus(new Vec3(40, -7, 3));
      WrappedPlacement place =
          new WrappedPlacement(null, ConeFit.Form.BEST, c, on, 0, 1, false, 1, 1);
      Region r = lit(moved, stripes(60, 30, 10, 2), place, new Selector.Grown(on, 20));
      assertThat(r.openAreaMm2()).as("seed %d", seed).isCloseTo(600, within(5e-4 * 600));
    }
  }

  @Test
  void sameBytesOnOneAndTwoThreads() throws Exception {
    double[] areas = new double[2];
    for (int threads = 1; threads <= 2; threads++) {
      ForkJoinPool pool = new ForkJoinPool(threads);
      areas[threads - 1] =
          pool.submit(
                  () ->
                      lit(cylinder(90), stripes(60, 30, 10, 2), WrappedPlacement.fitted(), SIDE)
                          .openAreaMm2())
              .get();
      pool.shutdown();
    }
    assertThat(areas[0]).isEqualTo(areas[1]);
  }

  @Test
  void filmWithoutAPatchIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> lit(cylinder(12), stripes(9, 9, 1, 1), WrappedPlacement.fitted()))
        .withMessageContaining("patch");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                lit(
                    cylinder(12),
                    stripes(9, 9, 1, 1),
                    DrapedPlacement.onPatch(),
                    new Selector.Facing(UP, 1),
                    new Selector.Facing(UP.times(-1), 1)))
        .withMessageContaining("patch is empty");
  }
}
