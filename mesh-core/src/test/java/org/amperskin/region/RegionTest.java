package org.amperskin.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import org.amperskin.geom.Box;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;

class RegionTest {
  private static final SurfaceMesh CUBE = Shapes.box(0, 0, 0, 10, 10, 10);
  private static final Vec3 DOWN = new Vec3(0, 0, -1);

  private static Region of(SurfaceMesh mesh, RegionRule rule) {
    Skin skin =
        Skin.of(MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
    return Region.of(rule, skin, Progress.SILENT);
  }

  private static Region bounded(SurfaceMesh mesh, Selector... selectors) {
    return of(mesh, new RegionRule("r", List.of(), List.of(selectors), List.of()));
  }

  private static Artwork square(double side) {
    double h = side / 2;
    return Artwork.of(
        side, side, new double[] {-h, -h, h, -h, h, h, -h, h}, new int[] {0, 4}, 0, List.of());
  }

  @Test
  void wholeSkinIsOpen() {
    Region r = of(CUBE, RegionRule.wholeSkin("all"));
    assertThat(r.openAreaMm2()).isEqualTo(600);
    assertThat(r.split().closedAreaMm2()).isZero();
  }

  @Test
  void planeCutsTheSidesWhereItLies() {
    Region r = bounded(CUBE, new Selector.HalfSpace(new Vec3(0, 0, 7), new Vec3(0, 0, 5)));
    assertThat(r.openAreaMm2()).isCloseTo(100 + 4 * 30, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.STOPPED_OFF)).isCloseTo(100 + 4 * 70, within(1e-9));
  }

  @Test
  void boxTakesTheSkinInsideIt() {
    Region r = bounded(CUBE, new Selector.InBox(new Box(-1, 2, 3, 4, 6, 20)));
    // On x = 0: 4 x 7; on z = 10: 4 x 4. The other sides lie outside.
    assertThat(r.openAreaMm2()).isCloseTo(28 + 16, within(1e-9));
  }

  @Test
  void ballTakesACapWithinItsToldError() {
    double radius = 12;
    SurfaceMesh plate = Shapes.box(-50, -50, -3, 50, 50, 0);
    Region r = bounded(plate, new Selector.Ball(new Vec3(0, 0, 5), radius));
    double disk = Math.PI * (radius * radius - 25);
    double lower = Math.PI * (radius * radius - 64);
    assertThat(Math.abs(r.openAreaMm2() - disk - lower)).isLessThan(r.errorMm2());
    assertThat(r.errorMm2()).isLessThan(1e-3 * disk);
  }

  @Test
  void cylinderTakesADiskOfAPlate() {
    SurfaceMesh plate = Shapes.box(-50, -50, -3, 50, 50, 0);
    Region r = bounded(plate, new Selector.Rod(new Vec3(3, 4, 99), new Vec3(0, 0, 2), 9));
    assertThat(Math.abs(r.openAreaMm2() - 2 * Math.PI * 81)).isLessThan(r.errorMm2());
    assertThat(r.errorMm2()).isBetween(1e-9, 1e-3 * 2 * Math.PI * 81);
  }

  @Test
  void facingTakesWholeFacesByTheirNormal() {
    Region r = bounded(CUBE, new Selector.Facing(new Vec3(1, 0, 1), 45));
    assertThat(r.openAreaMm2()).isCloseTo(200, within(1e-9));
  }

  @Test
  void groupTakesTheFilesFacesAndAnUnknownOneIsRefused() {
    int[] groups = {0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1};
    SurfaceMesh grouped =
        SurfaceMesh.of(CUBE.positions(), CUBE.corners(), groups, List.of("base", "rest"));
    assertThat(bounded(grouped, new Selector.InGroup("base")).openAreaMm2())
        .isCloseTo(100, within(1e-12));
    assertThatThrownBy(() -> bounded(grouped, new Selector.InGroup("bass")))
        .hasMessageContaining("bass")
        .hasMessageContaining("base");
  }

  @Test
  void exceptTakesAwayWhatWithinGave() {
    RegionRule rule =
        new RegionRule(
            "r",
            List.of(),
            List.of(new Selector.HalfSpace(new Vec3(0, 0, 5), new Vec3(0, 0, 1))),
            List.of(new Selector.Facing(new Vec3(0, 0, 1), 1)));
    assertThat(of(CUBE, rule).openAreaMm2()).isCloseTo(200, within(1e-9));
  }

  @Test
  void tapeAndFilmTogetherLeaveOpenWhatLightReachesBesideTheTape() {
    MaskFilm tape =
        new MaskFilm("tape", square(6), FlatPlacement.toward(DOWN), MaskKind.STOP_OFF, false);
    MaskFilm film =
        new MaskFilm(
            "film",
            Artwork.of(8, 8, new double[0], new int[] {0}, 0, List.of()),
            FlatPlacement.toward(DOWN),
            MaskKind.POSITIVE_RESIST,
            false);
    Region r = of(CUBE, new RegionRule("r", List.of(tape, film), List.of(), List.of()));
    assertThat(r.openAreaMm2()).isCloseTo(64 - 36, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.STOPPED_OFF)).isCloseTo(36, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.MASKED)).isCloseTo(100 - 64, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.UNREACHED)).isCloseTo(500, within(1e-9));
  }

  @Test
  void twoFilmsOpenWhatEitherLights() {
    MaskFilm top = clear("top", DOWN);
    MaskFilm front = clear("front", new Vec3(0, 1, 0));
    Region r = of(CUBE, new RegionRule("r", List.of(top, front), List.of(), List.of()));
    assertThat(r.openAreaMm2()).isCloseTo(2 * 64, within(1e-9));
    assertThat(r.split().areaMm2(RegionKind.UNREACHED)).isCloseTo(400, within(1e-9));
  }

  private static MaskFilm clear(String name, Vec3 toward) {
    return new MaskFilm(
        name,
        Artwork.of(8, 8, new double[0], new int[] {0}, 0, List.of()),
        FlatPlacement.toward(toward),
        MaskKind.POSITIVE_RESIST,
        false);
  }

  @Test
  void filmsThatSpoilOneAnotherAreTold() {
    // b keeps 4..10 x 2..8 dark; a lets light to 0..8 x 1..9: they share 4 x 6 mm.
    Vec3 up = new Vec3(0, 1, 0);
    MaskFilm a =
        new MaskFilm(
            "a",
            Artwork.of(8, 8, new double[0], new int[] {0}, 0, List.of()),
            new FlatPlacement(DOWN, up, new Vec3(4, 5, 0), 0, 1, false, 1, 1),
            MaskKind.POSITIVE_RESIST,
            false);
    MaskFilm b =
        new MaskFilm(
            "b",
            Artwork.of(
                8, 8, new double[] {-3, -3, 3, -3, 3, 3, -3, 3}, new int[] {0, 4}, 0, List.of()),
            new FlatPlacement(DOWN, up, new Vec3(7, 5, 0), 0, 1, false, 1, 1),
            MaskKind.POSITIVE_RESIST,
            false);
    Region both = of(CUBE, new RegionRule("r", List.of(a, b), List.of(), List.of()));
    assertThat(both.fogMm2()).isCloseTo(24, within(1e-9));
    assertThat(both.hint().orElseThrow()).contains("films overlap: 24.0000 mm2");
    Region one = of(CUBE, new RegionRule("r", List.of(a), List.of(), List.of()));
    assertThat(one.fogMm2()).isZero();
  }

  @Test
  void tooManyFilmsAreRefused() {
    List<MaskFilm> films = java.util.Collections.nCopies(16, clear("a", DOWN));
    assertThatThrownBy(() -> new RegionRule("r", films, List.of(), List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("16 films");
  }

  @Test
  void filmsOfBothKindsOfResistAreRefused() {
    MaskFilm a = clear("a", DOWN);
    MaskFilm b = new MaskFilm("b", a.artwork(), a.placement(), MaskKind.NEGATIVE_RESIST, false);
    assertThatThrownBy(() -> new RegionRule("r", List.of(a, b), List.of(), List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("positive");
  }

  @Test
  void splitThatLosesAreaIsRefused() {
    SurfaceMesh half = SurfaceMesh.of(CUBE.positions(), new int[] {0, 2, 1});
    assertThatThrownBy(
            () ->
                new SplitMesh(
                    CUBE,
                    half,
                    new int[] {0},
                    new RegionKind[] {RegionKind.EXPOSED},
                    EnumSet.of(RegionKind.EXPOSED)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("mm2");
  }

  @Test
  void areaGrowsWithTheSquareOfScaleAndNotWithMoving() {
    Region small = of(CUBE, new RegionRule("r", List.of(clear("f", DOWN)), List.of(), List.of()));
    double[] p = CUBE.positions().clone();
    for (int i = 0; i < p.length; i++) {
      p[i] = 3 * p[i] + 7 * (i % 3) - 11;
    }
    MaskFilm big =
        new MaskFilm(
            "f",
            clear("f", DOWN).artwork(),
            new FlatPlacement(DOWN, new Vec3(0, 1, 0), null, 0, 3, false, 1, 1),
            MaskKind.POSITIVE_RESIST,
            false);
    Region large =
        of(
            SurfaceMesh.of(p, CUBE.corners()),
            new RegionRule("r", List.of(big), List.of(), List.of()));
    assertThat(large.openAreaMm2()).isCloseTo(9 * small.openAreaMm2(), within(1e-8));
    assertThat(large.edgeLengthMm()).isCloseTo(3 * small.edgeLengthMm(), within(1e-8));
    assertThat(small.edgeLengthMm()).isCloseTo(32, within(1e-9));
  }
}
