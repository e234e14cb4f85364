package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ArtworkTest {
  private static final double[] FRAME = {
    -5, -5, 5, -5, 5, 5, -5, 5, // outline, counter-clockwise
    -2, -2, -2, 2, 2, 2, 2, -2 // hole, clockwise
  };

  @Test
  void countsAreaLengthAndFraction() {
    Artwork art = Artwork.of(20, 10, FRAME, new int[] {0, 4, 8}, 0, List.of("made by hand"));
    assertThat(art.opaqueAreaMm2()).isEqualTo(84);
    assertThat(art.opaqueFraction()).isEqualTo(0.42);
    assertThat(art.edgeLengthMm()).isEqualTo(56);
    assertThat(art.ringCount()).isEqualTo(2);
    assertThat(art.edgeCount()).isEqualTo(8);
    assertThat(art.notes()).containsExactly("made by hand");
    assertThat(art).isEqualTo(Artwork.of(20, 10, FRAME, new int[] {0, 4, 8}, 0, art.notes()));
  }

  @Test
  void laterChangesOfTheCallersArraysDoNotReachIt() {
    double[] xy = FRAME.clone();
    Artwork art = Artwork.of(20, 10, xy, new int[] {0, 4, 8}, 0, List.of());
    xy[0] = 0;
    assertThat(art.opaqueAreaMm2()).isEqualTo(84);
  }

  @Test
  void emptyArtworkIsAllClear() {
    Artwork art = Artwork.of(20, 10, new double[0], new int[] {0}, 0, List.of());
    assertThat(art.opaqueAreaMm2()).isZero();
    assertThat(art.ringCount()).isZero();
  }

  @Test
  void ringsThatAreNotCleanAreRefused() {
    double[] clockwise = {-5, -5, -5, 5, 5, 5, 5, -5};
    double[] bow = {-5, -5, 5, 4, 5, -5, -5, 5};
    double[] overlapping = {-5, -5, 2, -5, 2, 5, -5, 5, 0, -4, 4, -4, 4, 4, 0, 4};
    refused(clockwise, "wrong way", 0, 4);
    refused(bow, "rings cross", 0, 4);
    refused(overlapping, "overlap", 0, 4, 8);
    refused(new double[] {-11, 0, 0, 0, 0, 1}, "on the sheet", 0, 3);
    refused(new double[] {0, 0, 1, 0, 1, Double.NaN}, "coordinate (mm) cannot be NaN", 0, 3);
    refused(new double[] {0, 0, 1, 0}, "points of ring 0", 0, 2);
    refused(FRAME, "last ring start for 8.0 points", 0, 4);
    assertThatThrownBy(() -> Artwork.of(0, 1, new double[0], new int[] {0}, 0, List.of()))
        .hasMessage("width (mm) cannot be 0.0");
  }

  private static void refused(double[] xy, String message, int... starts) {
    assertThatThrownBy(() -> Artwork.of(20, 10, xy, starts, 0, List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(message);
  }

  @Test
  void cleanedTakesCrossingRingsByWindingNumber() {
    double[] overlapping = {-5, -5, 2, -5, 2, 5, -5, 5, 0, 4, 4, 4, 4, -40, 0, -40};
    Artwork art = Artwork.cleaned(20, 10, overlapping, new int[] {0, 4, 8}, 0, List.of());
    // left 7 x 10; right 4 x 9 runs clockwise: where both lie the winding is 1 - 1 = 0
    assertThat(art.opaqueAreaMm2()).isCloseTo(70 + 36 - 2 * 18, within(1e-6));
    assertThat(Drawings.geometry(art).isValid()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void optionsRefuseWhatCannotBe(double value) {
    ArtworkFile.Options standard = ArtworkFile.Options.standard();
    assertThatThrownBy(() -> standard.withThreshold(value)).hasMessageContaining("threshold");
    assertThatThrownBy(() -> standard.withUnitlessMm(value)).hasMessageContaining("unit (mm)");
    assertThatThrownBy(() -> standard.withFlatteningMm(value)).hasMessageContaining("flattening");
    if (!Double.isNaN(value)) {
      assertThatThrownBy(() -> standard.withDpi(value)).hasMessageContaining("dpi");
    }
  }

  /** A wide bound on a shared machine: the work itself takes about a tenth of it. */
  @Test
  void fiveThousandEdgesReadInWellUnderASecond() {
    StringBuilder svg = new StringBuilder();
    for (int i = 0; i < 110; i++) {
      double x = 2 + 4 * (i % 25);
      double y = 2 + 4 * (i / 25);
      svg.append("<circle cx='%s' cy='%s' r='1.5' fill='%s'/>".formatted(x, y, "#000"));
      svg.append("<circle cx='%s' cy='%s' r='.5' fill='%s'/>".formatted(x, y, "#fff"));
    }
    String drawing = Drawings.sheet(svg.toString());
    Artwork first = Drawings.read(drawing);
    long begin = System.nanoTime();
    Artwork second = Drawings.read(drawing);
    double seconds = (System.nanoTime() - begin) / 1e9;
    assertThat(first.edgeCount()).isGreaterThan(5000);
    assertThat(first.opaqueAreaMm2()).isCloseTo(110 * Math.PI * (2.25 - .25), within(1e-4));
    assertThat(second).isEqualTo(first);
    assertThat(seconds).isLessThan(1);
  }
}
