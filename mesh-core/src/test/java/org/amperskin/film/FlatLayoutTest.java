package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.MaskKind;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;

/** A flat film is laid out as it lies before the part. */
class FlatLayoutTest {
  private static final Vec3 DOWN = new Vec3(0, 0, -1);
  private static final Vec3 NORTH = new Vec3(0, 1, 0);

  /** Lower left corner black, so that any turn and mirror shows. */
  private static final Artwork CORNER = Layouts.rectangles(20, 10, new double[] {-10, -5, -4, -3});

  private static FilmLayout clear(FlatPlacement placement) {
    return FlatLayout.of("corner", CORNER, placement, MaskKind.POSITIVE_RESIST, true, cube());
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
    FilmLayout layout =
        FlatLayout.of("corner", CORNER, placement, MaskKind.POSITIVE_RESIST, false, cube());
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
    FilmLayout layout =
        FlatLayout.of("corner", CORNER, placement, MaskKind.POSITIVE_RESIST, false, cube());
    // light along -z with +y up: right of the film is +x, and the part reaches from -10 to 30
    assertThat(layout.outline().extent()).isEqualTo(new Extent(-15, -15, 35, 25));
    assertThat(layout.black().areaMm2()).isCloseTo(50 * 40 - 200 + 12, within(1e-6));
  }

  @Test
  void negativeResistCoversWhatTheFilmLeavesClear() {
    FilmLayout positive = Layouts.sheet(CORNER, MaskKind.POSITIVE_RESIST);
    FilmLayout negative = Layouts.sheet(CORNER, MaskKind.NEGATIVE_RESIST);
    assertThat(positive.covered().areaMm2()).isCloseTo(12, within(1e-9));
    assertThat(negative.covered().areaMm2()).isCloseTo(188, within(1e-9));
  }
}
