package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.FaceField;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.MaskFilm;
import org.amperskin.region.MaskKind;
import org.amperskin.region.Placement;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.region.RegionRule;
import org.amperskin.region.Selector;
import org.amperskin.region.WrappedPlacement;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Films on ramps and cylinders against closed forms. */
class FilmCheckTest {
  private static final Light FIVE = new Light(5, OptionalDouble.empty());
  private static final Vec3 UP = new Vec3(0, 0, 1);

  private static FilmCheck check(
      SurfaceMesh mesh, Artwork art, Placement place, FilmStock stock, Selector... patch) {
    MaskFilm film =
        new MaskFilm("film", art, place, MaskKind.POSITIVE_RESIST, false, List.of(patch));
    Skin skin =
        Skin.of(MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
    Region region =
        Region.of(new RegionRule("r", List.of(film), List.of(), List.of()), skin, Progress.SILENT);
    return FilmCheck.of(region, 0, FIVE, stock, Resist.USUAL);
  }

  /** A ramp of 45 deg, 30 x 20 mm seen from above, in {@code n} steps of faces along it. */
  private static SurfaceMesh ramp(int n) {
    int points = n + 3;
    double[] p = new double[6 * points];
    for (int i = 0; i < points; i++) {
      double x = i == 0 || i == points - 1 ? 30.0 * (i == 0 ? 1 : 0) : 30.0 * (n + 1 - i) / n;
      double z = i == 0 || i == points - 1 ? -10 : x;
      for (int side = 0; side < 2; side++) {
        int at = 3 * (i + side * points);
        p[at] = x;
        p[at + 1] = 20 * side;
        p[at + 2] = z;
      }
    }
    int[] c = new int[3 * (2 * points + 2 * (points - 2))];
    int to = 0;
    for (int i = 0; i < points; i++) {
      int j = (i + 1) % points;
      for (int v : new int[] {i, points + i, j, j, points + i, points + j}) {
        c[to++] = v;
      }
    }
    for (int i = 1; i + 1 < points; i++) {
      for (int v : new int[] {0, i, i + 1, points, points + i + 1, points + i}) {
        c[to++] = v;
      }
    }
    return SurfaceMesh.of(p, c);
  }

  /** Ten clear spaces of 1 mm along x, nine opaque lines of 1 mm between them; 30 x 20 mm. */
  private static Artwork lengthwise() {
    double[] xy = new double[8 * 11];
    int[] starts = new int[12];
    for (int i = 0; i <= 10; i++) {
      double y0 = i == 0 ? -10 : -10.5 + 2 * i;
      double y1 = i == 10 ? 10 : -9.5 + 2 * i;
      double[] ring = {-15, y0, 15, y0, 15, y1, -15, y1};
      System.arraycopy(ring, 0, xy, 8 * i, 8);
      starts[i + 1] = 4 * (i + 1);
    }
    return Artwork.of(30, 20, xy, starts, 0, List.of());
  }

  private static final FlatPlacement DOWN = FlatPlacement.toward(new Vec3(0, 0, -1));

  // The film touches the top; the gap at x is 30 - x, the slope 45 deg, so a line of 1 mm
  // vanishes where 2 x gap x tan 5 deg is 1 mm or more: below x = 30 - 1 / (2 tan 5 deg).
  @ParameterizedTest
  @ValueSource(ints = {1, 30})
  void linesOnARampVanishFromTheGapThatTheirWidthTells(int steps) {
    FilmCheck check = check(ramp(steps), lengthwise(), DOWN, FilmStock.USUAL);
    double gone = 30 - 1 / (2 * Math.tan(Math.toRadians(5)));
    assertThat(check.litMm2()).isCloseTo(600 * Math.sqrt(2), within(1e-6));
    assertThat(check.shadowMm2()).isCloseTo(0, within(1e-9));
    assertThat(check.gapMm().most()).isCloseTo(30, within(1e-9));
    assertThat(check.gapMm().least()).isCloseTo(0, within(1e-9));
    assertThat(check.gapMm().mean()).isCloseTo(15, within(1e-6));
    assertThat(check.gapMm().high()).isCloseTo(28.5, within(0.5));
    assertThat(check.blurMm().most()).isCloseTo(30 * Math.tan(Math.toRadians(5)), within(1e-9));
    assertThat(check.dose().least()).isCloseTo(Math.sqrt(0.5), within(1e-9));
    assertThat(check.stretch().most()).isCloseTo(Math.sqrt(2), within(1e-9));
    assertThat(check.stretch().least()).isCloseTo(1, within(1e-9));
    // Ten spaces of two sides and two ends are all the outline; nine lines have two sides.
    assertThat(check.lines().outlineMm()).isCloseTo(620, within(1e-6));
    assertThat(check.lines().vanishingMm()).isCloseTo(18 * gone, within(18 * 0.2));
    assertThat(check.spaces().vanishingMm()).isCloseTo(20 * gone, within(20 * 0.4));
    assertThat(check.lines().vanishingShare()).isCloseTo(18 * gone / 620, within(0.01));
    Feature worst = check.lines().worst().orElseThrow();
    assertThat(worst.skinMm()).isCloseTo(1, within(1e-9));
    assertThat(worst.gapMm()).isCloseTo(30, within(0.2));
    assertThat(worst.at().x()).isCloseTo(0, within(0.2));
    assertThat(worst.at().z()).isCloseTo(worst.at().x(), within(1e-9));
    assertThat(worst.sharpMm()).isZero();
    double places = 0;
    for (Fates.Place place : check.lines().places()) {
      places += place.lengthMm();
      assertThat(place.narrowest().fate()).isEqualTo(Feature.Fate.VANISHES);
    }
    assertThat(check.lines().places()).hasSize(5);
    assertThat(places).isBetween(0.0, check.lines().vanishingMm());
  }

  @Test
  void linesAtRiskLieInTheBandThatDiffractionTakes() {
    FilmCheck check = check(ramp(1), lengthwise(), DOWN, FilmStock.USUAL);
    // w = 2 g tan 5 deg + 1.5 sqrt(365 nm (g + 4 um)), solved for the gap g.
    double t = 2 * Math.tan(Math.toRadians(5));
    double gap = 1 / t;
    for (int i = 0; i < 50; i++) {
      gap = (1 - 1.5 * Math.sqrt(365e-6 * (gap + 0.004))) / t;
    }
    assertThat(check.lines().riskMm()).isCloseTo(18 * (1 / t - gap), within(18 * 0.2));
    assertThat(check.lines().riskMm()).isPositive();
  }

  // Lines across the slope are wider on the skin by 1 / cos 45 deg, and so is their blur.
  @Test
  void linesAcrossTheSlopeAreWiderOnTheSkin() {
    FlatPlacement turned =
        new FlatPlacement(new Vec3(0, 0, -1), new Vec3(0, 1, 0), null, 90, 1, false, 1, 1);
    FilmCheck check = check(ramp(1), lengthwise(), turned, FilmStock.USUAL);
    Feature smallest = check.lines().smallest().orElseThrow();
    assertThat(smallest.filmMm()).isCloseTo(1, within(1e-9));
    assertThat(smallest.skinMm()).isCloseTo(Math.sqrt(2), within(1e-9));
    assertThat(smallest.shiftMm())
        .isCloseTo(Math.sqrt(2) * smallest.gapMm() * Math.tan(Math.toRadians(5)), within(1e-9));
  }

  @Test
  void vanishingLinesArePaintedWhereTheyAre() {
    FilmCheck check = check(ramp(60), lengthwise(), DOWN, FilmStock.USUAL);
    double gone = 30 - 1 / (2 * Math.tan(Math.toRadians(5)));
    FaceField fates = check.fates();
    double lines = 0;
    double spaces = 0;
    for (int f = 0; f < fates.mesh().faceCount(); f++) {
      RegionKind kind = check.region().split().kind(f);
      double area = fates.value(f) == 2 ? fates.mesh().faceAreaMm2(f) : 0;
      lines += kind == RegionKind.MASKED ? area : 0;
      spaces += kind == RegionKind.EXPOSED ? area : 0;
      assertThat(Double.isNaN(fates.value(f)))
          .isEqualTo(kind != RegionKind.MASKED && kind != RegionKind.EXPOSED);
    }
    assertThat(lines).isCloseTo(9 * gone * Math.sqrt(2), within(9 * 1.0));
    assertThat(spaces).isCloseTo(10 * gone * Math.sqrt(2), within(10 * 1.5));
  }

  @Test
  void filmThatTouchesAPlateHoldsEverything() {
    SurfaceMesh plate = Shapes.box(0, 0, 0, 30, 20, 2);
    FilmCheck one = check(plate, lengthwise(), DOWN, FilmStock.USUAL);
    assertThat(one.blurMm().most()).isZero();
    assertThat(one.dose().least()).isCloseTo(1, within(1e-12));
    assertThat(one.lines().vanishingMm() + one.spaces().vanishingMm()).isZero();
    assertThat(one.lines().smallest().orElseThrow().sharpMm()).isCloseTo(1, within(1e-9));
    // Two layers laid half a millimetre apart swallow lines of 1 mm.
    FilmCheck two = check(plate, lengthwise(), DOWN, new FilmStock(2, 2, 0.1, 1.6, 0.5));
    assertThat(two.lines().vanishingMm()).isCloseTo(540, within(1.0));
  }

  private static Artwork band(double halfWidth) {
    double w = halfWidth;
    double[] xy = {-0.5, -10, 0.5, -10, 0.5, 10, -0.5, 10};
    return Artwork.of(2 * w, 20, xy, new int[] {0, 4}, 0, List.of());
  }

  // Flat film on a cylinder: sagitta R - sqrt(R2 - w2), slope asin(w/R): 0.64 mm and 14.5 deg at
  // R 20, w 5; 1.72 and 19.5 at 30, 10; 1.01 and 11.5 at 50, 10; 4.17 and 23.6 at 50, 20.
  @ParameterizedTest
  @CsvSource({
    "20, 5, 0.64, 14.5",
    "30, 10, 1.72, 19.5",
    "50, 10, 1.01, 11.5",
    "50, 20, 4.17, 23.6"
  })
  void flatFilmOnACylinderHasTheSagittaAsGap(double r, double w, double gap, double slope) {
    SurfaceMesh rod = Shapes.turnedSolid(1440, r / 2, 0, r, 0, r, 40, r / 2, 40);
    FlatPlacement place = new FlatPlacement(new Vec3(-1, 0, 0), UP, null, 0, 1, false, 1, 1);
    FilmCheck check = check(rod, band(w), place, FilmStock.USUAL);
    assertThat(check.gapMm().most()).isCloseTo(gap, within(0.006));
    assertThat(check.dose().least()).isCloseTo(Math.cos(Math.toRadians(slope)), within(2e-3));
    assertThat(check.stretch().most()).isCloseTo(1 / Math.cos(Math.toRadians(slope)), within(4e-3));
    // The arc over the sheet's width is R asin(w/R) / w as long: 1.0107, 1.0195, 1.0068, 1.0288.
    assertThat(check.litMm2() / (40 * w)).isCloseTo(r / w * Math.asin(w / r), within(5e-5));
  }

  @Test
  void wrappedFilmOnItsOwnCylinderTouchesWithoutStretch() {
    SurfaceMesh rod = Shapes.turnedSolid(1440, 10, 0, 20, 0, 20, 13, 20, 27, 20, 40, 10, 40);
    Selector side = new Selector.Grown(new Vec3(20, 0, 20), 20);
    FilmCheck check = check(rod, band(20), WrappedPlacement.fitted(), FilmStock.USUAL, side);
    // The facets' middles stand off by 20 (1 - cos(180 / 1440 deg)) = 48 nm.
    assertThat(check.gapMm().most()).isLessThan(5e-5);
    assertThat(check.blurMm().most()).isLessThan(1e-5);
    assertThat(check.stretch().least()).isCloseTo(1, within(1e-5));
    assertThat(check.stretch().most()).isCloseTo(1, within(1e-5));
    assertThat(check.dose().least()).isCloseTo(1, within(1e-5));
    assertThat(check.exposure().pane()).isFalse();
    assertThat(check.lines().smallest().orElseThrow().skinMm()).isCloseTo(1, within(1e-5));
    assertThat(check.litMm2()).isCloseTo(800, within(0.4));
  }

  @Test
  void skinInTheShadowOfOtherSkinIsToldApart() {
    SurfaceMesh two =
        Shapes.together(Shapes.box(0, 0, 0, 30, 20, 2), Shapes.box(0, 0, 10, 10, 20, 12));
    FilmCheck check = check(two, lengthwise(), DOWN, FilmStock.USUAL);
    assertThat(check.shadowMm2()).isCloseTo(200, within(1e-6));
    assertThat(check.litMm2()).isCloseTo(600, within(1e-6));
    assertThat(check.gapMm().most()).isCloseTo(10, within(1e-9));
  }

  @Test
  void filmThatMissesThePartIsRefused() {
    FlatPlacement beside =
        new FlatPlacement(
            new Vec3(0, 0, -1), new Vec3(0, 1, 0), new Vec3(500, 0, 0), 0, 1, false, 1, 1);
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> check(Shapes.box(0, 0, 0, 30, 20, 2), lengthwise(), beside, FilmStock.USUAL))
        .withMessageContaining("0.0 mm2");
  }
}
