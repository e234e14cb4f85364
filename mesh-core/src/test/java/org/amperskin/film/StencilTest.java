package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.MaskKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a blade cuts, by hand arithmetic. */
class StencilTest {
  /** A frame 40 x 30 mm with walls of 5 mm, and a square of 6 mm in the middle of its window. */
  private static final Artwork FRAME =
      Layouts.rectangles(
          40,
          30,
          new double[] {-20, -15, 20, -10},
          new double[] {-20, 10, 20, 15},
          new double[] {-20, -15, -15, 15},
          new double[] {15, -15, 20, 15},
          new double[] {-3, -3, 3, 3});

  private static Stencil of(Artwork artwork, StencilOptions options) {
    return Stencil.of(Layouts.sheet(artwork, MaskKind.STOP_OFF), options);
  }

  @Test
  void overlappingShapesAreUnitedAndTheIslandIsTold() {
    Stencil stencil = of(FRAME, StencilOptions.USUAL);
    assertThat(stencil.covered().rings()).hasSize(3); // frame, its window, the square
    assertThat(stencil.covered().areaMm2()).isCloseTo(40 * 30 - 30 * 20 + 36, within(1e-6));
    assertThat(stencil.openAreaMm2()).isCloseTo(30 * 20 - 36, within(1e-6));
    assertThat(stencil.islands()).hasSize(1);
    assertThat(stencil.islands().get(0).areaMm2()).isCloseTo(36, within(1e-6));
    assertThat(stencil.islands().get(0).xMm()).isBetween(23.0, 29.0);
    assertThat(stencil.bridges()).isZero();
  }

  @Test
  void cutLengthIsTheSumOfAllClosedLines() {
    Stencil stencil = of(FRAME, StencilOptions.USUAL);
    double border = 2 * (52 + 42);
    double marks = 4 * 3 + 3 + 2 * Math.hypot(1.5, 3);
    assertThat(stencil.cutLengthMm()).isCloseTo(140 + 100 + 24 + border + marks, within(1e-6));
    assertThat(stencil.cuts()).isEqualTo(6);
  }

  @Test
  void aBridgeTiesTheIslandDownAndItsAreaIsTold() {
    Stencil stencil = of(FRAME, new StencilOptions(0.5, 6, 0.8, false));
    // from the square to the nearer wall: 10 - 3 = 7 mm long, 0.8 mm wide
    assertThat(stencil.bridges()).isEqualTo(1);
    assertThat(stencil.bridgedAreaMm2()).isCloseTo(7 * 0.8, within(1e-6));
    assertThat(stencil.openAreaMm2()).isCloseTo(564 - 5.6, within(1e-6));
    assertThat(stencil.covered().rings()).hasSize(2); // one piece, one window round the square
    assertThat(stencil.narrowLines()).isEmpty(); // a bridge of 0.8 mm is wide enough
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void bridgesLeaveOnePiece(long seed) {
    Random random = new Random(seed);
    double[][] boxes = new double[41][];
    boxes[0] = new double[] {-50, -50, 50, -48};
    for (int i = 1; i < boxes.length; i++) {
      double x = -48 + 90 * random.nextDouble();
      double y = -46 + 90 * random.nextDouble();
      boxes[i] = new double[] {x, y, x + 1 + 3 * random.nextDouble(), y + 1 + random.nextDouble()};
    }
    Artwork art = Layouts.rectangles(100, 100, boxes);
    Stencil loose = of(art, StencilOptions.USUAL);
    Stencil tied = of(art, new StencilOptions(0.5, 6, 0.5, false));
    assertThat(tied.bridges()).as("seed %d", seed).isEqualTo(loose.islands().size()).isPositive();
    assertThat(Polygonal.polygons(tied.covered().geometry())).as("seed %d", seed).hasSize(1);
    assertThat(tied.bridgedAreaMm2())
        .as("seed %d", seed)
        .isCloseTo(loose.openAreaMm2() - tied.openAreaMm2(), within(1e-6))
        .isPositive();
  }

  @Test
  void linesAndSpacesNarrowerThanTheBladeAreFoundWhereTheyAre() {
    Artwork art =
        Layouts.rectangles(
            40,
            40,
            new double[] {-20, -20, 20, -10},
            new double[] {-10, -10, -9.6, 15}, // a line of 0.4 mm
            new double[] {0, -10, 0.6, 15}, // a line of 0.6 mm
            new double[] {8, -10, 12, 15},
            new double[] {12.3, -10, 16, 15}); // beside a space of 0.3 mm
    Stencil stencil = of(art, StencilOptions.USUAL);
    assertThat(stencil.narrowLines()).hasSize(1);
    Stencil.Narrow line = stencil.narrowLines().get(0);
    assertThat(line.widthMm()).isCloseTo(0.4, within(0.01));
    assertThat(line.xMm()).isCloseTo(6 + 20 - 9.8, within(0.05));
    assertThat(stencil.narrowSpaces()).hasSize(1);
    assertThat(stencil.narrowSpaces().get(0).widthMm()).isCloseTo(0.3, within(0.01));
    assertThat(stencil.narrowSpaces().get(0).xMm()).isCloseTo(6 + 20 + 12.15, within(0.05));
    Stencil finer = of(art, new StencilOptions(0.29, 6, 0, false));
    assertThat(finer.narrowLines()).isEmpty();
    assertThat(finer.narrowSpaces()).isEmpty();
  }

  /** A round hole and square corners are not narrow. */
  @Test
  void cornersAndCurvesAreNotNarrow() {
    double[] ring = new double[2 * 90];
    for (int i = 0; i < 90; i++) {
      ring[2 * i] = 6 * Math.cos(i * Math.PI / 45);
      ring[2 * i + 1] = 6 * Math.sin(i * Math.PI / 45);
    }
    Artwork disc = Artwork.cleaned(20, 20, ring, new int[] {0, 90}, 0, List.of());
    Stencil stencil = of(disc, new StencilOptions(2, 6, 0, false));
    assertThat(stencil.narrowLines()).isEmpty();
    assertThat(stencil.narrowSpaces()).isEmpty();
    Stencil frame = of(FRAME, new StencilOptions(4.9, 6, 0, false));
    assertThat(frame.narrowLines()).isEmpty();
  }

  /** Two squares on two leaves of a film that only meet below: no straight way leads over. */
  @Test
  void whatBridgesCannotReachWithinTheOutlineIsTold() {
    Artwork art =
        Layouts.rectangles(40, 30, new double[] {-8, 5, -2, 11}, new double[] {2, 5, 8, 11});
    Outline leaves =
        Outline.box(new Extent(-20, -15, 20, 15)).minus(Outline.box(new Extent(-1, -5, 1, 15)));
    FilmLayout layout =
        new FilmLayout("leaves", art, leaves, List.of(), MaskKind.STOP_OFF, true, List.of());
    Stencil stencil = Stencil.of(layout, new StencilOptions(0.5, 6, 0.8, false));
    assertThat(stencil.bridges()).isEqualTo(1);
    assertThat(stencil.loose()).isEqualTo(1);
    assertThat(of(FRAME, StencilOptions.USUAL).loose()).isEqualTo(1);
    assertThat(of(FRAME, new StencilOptions(0.5, 6, 0.8, false)).loose()).isZero();
  }

  @Test
  void mirroredIsMirroredAndItsMarkTells() {
    Artwork corner = Layouts.rectangles(40, 30, new double[] {-20, -15, -10, -10});
    Stencil seen = of(corner, StencilOptions.USUAL);
    Stencil back = of(corner, new StencilOptions(0.5, 6, 0, true));
    assertThat(seen.covered().extent()).isEqualTo(new Extent(6, 6, 16, 11));
    assertThat(back.covered().extent()).isEqualTo(new Extent(36, 6, 46, 11));
    assertThat(seen.marks().extent().minX()).isEqualTo(1.5);
    assertThat(back.marks().extent().maxX()).isEqualTo(52 - 1.5);
  }

  @Test
  void marksStandBetweenFilmAndBorder() {
    Stencil stencil = of(FRAME, new StencilOptions(0.5, 5, 0, false));
    Extent marks = stencil.marks().extent();
    assertThat(stencil.border().extent().holds(marks)).isTrue();
    assertThat(marks.minY()).isGreaterThan(stencil.covered().extent().maxY());
  }

  @Test
  void nothingToCutIsRefused() {
    Artwork empty = Artwork.cleaned(40, 30, new double[0], new int[] {0}, 0, List.of());
    assertThatThrownBy(() -> of(empty, StencilOptions.USUAL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("covers 0 mm2");
    assertThatThrownBy(() -> new StencilOptions(0, 6, 0, false))
        .hasMessageContaining("0.0 mm: 0.01 to 50 mm fit");
  }
}
