package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.DrapedPlacement;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.MaskFilm;
import org.amperskin.region.MaskKind;
import org.amperskin.region.Placement;
import org.amperskin.region.Region;
import org.amperskin.region.RegionRule;
import org.amperskin.region.Selector;
import org.amperskin.region.WrappedPlacement;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;

/** A film is laid out in the plane as it lies on the part, by hand and by closed forms. */
class LaidLayoutTest {
  private static final Vec3 DOWN = new Vec3(0, 0, -1);
  private static final Vec3 NORTH = new Vec3(0, 1, 0);

  /** Lower left corner black, so that any turn and mirror shows. */
  private static final Artwork CORNER = Layouts.rectangles(20, 10, new double[] {-10, -5, -4, -3});

  private static FilmLayout clear(FlatPlacement placement) {
    return laid(cube(), CORNER, placement, true);
  }

  private static FilmLayout laid(
      SurfaceMesh mesh, Artwork art, Placement place, boolean clear, Selector... patch) {
    MaskFilm film =
        new MaskFilm("film", art, place, MaskKind.POSITIVE_RESIST, clear, List.of(patch));
    Skin skin =
        Skin.of(MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
    RegionRule rule = new RegionRule("r", List.of(film), List.of(), List.of());
    return LaidLayout.of(Region.of(rule, skin, Progress.SILENT).laid().get(0));
  }

  private static SurfaceMesh cube() {
    return Shapes.box(0, 0, 0, 40, 30, 20);
  }

  private static FlatPlacement place(double turn, double scale, boolean mirror, int c, int r) {
    return new FlatPlacement(DOWN, NORTH, null, turn, scale, mirror, c, r);
  }

  @Test
  void clearSurroundKeepsTheDrawingAndARim() {
    FilmLayout layout = clear(place(0, 1, false, 1, 1));
    assertThat(layout.outline().extent()).isEqualTo(new Extent(-15, -10, 15, 10));
    assertThat(layout.black().areaMm2()).isCloseTo(12, within(1e-9));
    assertThat(layout.black().extent()).isEqualTo(new Extent(-10, -5, -4, -3));
  }

  @Test
  void mirrorComesBeforeTheTurnAndScaleIsSquared() {
    Extent mirrored = clear(place(0, 1, true, 1, 1)).black().extent();
    assertThat(mirrored).isEqualTo(new Extent(4, -5, 10, -3));
    // counter-clockwise by 90 degrees: (x, y) goes to (-y, x)
    Extent turned = clear(place(90, 1, true, 1, 1)).black().extent();
    assertThat(turned).isEqualTo(new Extent(3, 4, 5, 10));
    FilmLayout half = clear(place(30, 0.5, false, 1, 1));
    assertThat(half.black().areaMm2()).isCloseTo(3, within(3e-6));
    assertThat(half.outline().extent().width())
        .isCloseTo(10 * Math.cos(Math.PI / 6) + 5 * 0.5 + 10, within(1e-9));
  }

  @Test
  void repeatsAreLaid() {
    FilmLayout layout = clear(place(0, 1, false, 3, 2));
    assertThat(layout.black().rings()).hasSize(6);
    assertThat(layout.black().areaMm2()).isCloseTo(72, within(1e-6));
  }

  @Test
  void opaqueSurroundCoversAllOfThePartThatFacesTheLight() {
    FlatPlacement placement = place(0, 1, false, 1, 1);
    FilmLayout layout = laid(cube(), CORNER, placement, false);
    // the top is 40 x 30 mm, with 5 mm beyond it on every side
    assertThat(layout.outline().extent()).isEqualTo(new Extent(-25, -20, 25, 20));
    assertThat(layout.black().areaMm2()).isCloseTo(50 * 40 - 200 + 12, within(1e-6));
    assertThat(layout.notes())
        .anyMatch(n -> n.contains("20.00 x 10.00 mm") && n.contains("40.00 x 30.00 mm"));
  }

  @Test
  void aGivenCentreShiftsThePartNotTheDrawing() {
    FlatPlacement placement =
        new FlatPlacement(DOWN, NORTH, new Vec3(10, 10, 0), 0, 1, false, 1, 1);
    FilmLayout layout = laid(cube(), CORNER, placement, false);
    // light along -z with +y up: right of the film is +x, and the part reaches from -10 to 30
    assertThat(layout.outline().extent()).isEqualTo(new Extent(-15, -15, 35, 25));
    assertThat(layout.black().areaMm2()).isCloseTo(50 * 40 - 200 + 12, within(1e-6));
  }

  /** R 20 mm, 40 mm long: the whole turn is 2 pi R, the film closes and is glued. */
  @Test
  void aFilmRoundACylinderIsItsUnrolledRectangleWithAFlap() {
    SurfaceMesh cylinder = Shapes.turnedSolid(360, 10, 0, 20, 0, 20, 13, 20, 27, 20, 40, 10, 40);
    Selector side = new Selector.Grown(new Vec3(20, 0, 20), 20);
    FilmLayout layout = laid(cylinder, CORNER, WrappedPlacement.fitted(), false, side);
    Extent e = layout.outline().extent();
    assertThat(e.width()).isCloseTo(2 * Math.PI * 20, within(1e-3 * 126));
    assertThat(e.height()).isCloseTo(40, within(1e-6));
    assertThat(layout.black().areaMm2())
        .isCloseTo(e.areaMm2() - 200 + 12, within(1e-5 * e.areaMm2()));
    assertThat(layout.flaps()).hasSize(1);
    assertThat(layout.flaps().get(0).lengthMm()).isCloseTo(40, within(1e-6));
    assertThat(layout.flaps().get(0).outline().extent().minX()).isEqualTo(e.maxX());
    Selector half = new Selector.HalfSpace(new Vec3(0, 0, 0), new Vec3(1, 0, 0));
    FilmLayout part = laid(cylinder, CORNER, WrappedPlacement.fitted(), false, side, half);
    assertThat(part.outline().extent().width()).isCloseTo(Math.PI * 20, within(1e-2 * 63));
    assertThat(part.flaps()).isEmpty();
  }

  /** Radii 18 and 10 mm, 30 mm high: lateral area pi (R + r) slant. */
  @Test
  void aFilmRoundAConeIsASectorOfItsLateralArea() {
    for (double[] r : new double[][] {{18, 10}, {10, 18}}) {
      SurfaceMesh cone =
          Shapes.turnedSolid(720, r[0] / 2, 0, r[0], 0, 14, 15, r[1], 30, r[1] / 2, 30);
      Selector side = new Selector.Grown(new Vec3(14, 0, 15), 20);
      FilmLayout layout = laid(cone, CORNER, WrappedPlacement.fitted(), false, side);
      double slant = Math.hypot(30, 8);
      double lateral = Math.PI * 28 * slant;
      assertThat(layout.outline().areaMm2()).isCloseTo(lateral, within(1e-3 * lateral));
      assertThat(layout.black().areaMm2())
          .isCloseTo(layout.outline().areaMm2() - 200 + 12, within(0.01));
      Flap flap = layout.flaps().get(0);
      assertThat(flap.lengthMm()).isCloseTo(slant, within(1e-3 * slant));
      // outside the outline, whichever way the cone widens
      assertThat(flap.outline().and(layout.outline()).areaMm2()).isLessThan(1e-6);
    }
  }

  @Test
  void aDrapedFilmIsTheOutlineOfItsPatch() {
    SurfaceMesh cylinder = Shapes.turnedSolid(180, 10, 0, 20, 0, 20, 13, 20, 27, 20, 40, 10, 40);
    Selector side = new Selector.Grown(new Vec3(20, 0, 20), 20);
    Selector half = new Selector.HalfSpace(new Vec3(0, 0, 0), new Vec3(1, 0, 0));
    FilmLayout layout = laid(cylinder, CORNER, DrapedPlacement.onPatch(), false, side, half);
    assertThat(layout.outline().rings()).hasSize(1);
    assertThat(layout.outline().areaMm2()).isCloseTo(Math.PI * 20 * 40, within(1e-3 * 2513));
    assertThat(layout.outline().lengthMm()).isCloseTo(2 * (Math.PI * 20 + 40), within(1e-2 * 205));
    assertThat(layout.black().areaMm2())
        .isCloseTo(layout.outline().areaMm2() - 200 + 12, within(0.01));
  }

  @Test
  void negativeResistCoversWhatTheFilmLeavesClear() {
    FilmLayout positive = Layouts.sheet(CORNER, MaskKind.POSITIVE_RESIST);
    FilmLayout negative = Layouts.sheet(CORNER, MaskKind.NEGATIVE_RESIST);
    assertThat(positive.covered().areaMm2()).isCloseTo(12, within(1e-9));
    assertThat(negative.covered().areaMm2()).isCloseTo(188, within(1e-9));
  }
}
