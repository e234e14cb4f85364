package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

/** Pictures of 0.1 mm a pixel, antialiased by 16 x 16 samples a pixel, against closed forms. */
class SmoothPictureTest {
  private static final Path NAME = Path.of("picture.png");
  private static final double PIXEL_MM = 0.1;

  @Test
  void diskKeepsItsAreaWithinAThousandth() throws Exception {
    for (double radius : new double[] {8, 15.3, 40.7, 70}) {
      for (double smoothPixels : new double[] {1, 2, 4}) {
        if (radius < 3.5 * smoothPixels) {
          continue; // narrower than the blur allows, see SmoothOutline
        }
        double cx = 80.37;
        double cy = 79.81;
        Artwork art =
            read(160, 160, smoothPixels, (x, y) -> Math.hypot(x - cx, y - cy) < radius ? 1 : 0);
        double expected = Math.PI * radius * radius * PIXEL_MM * PIXEL_MM;
        assertThat(art.opaqueAreaMm2())
            .as("radius %s pixels smoothed over %s", radius, smoothPixels)
            .isCloseTo(expected, within(1e-3 * expected));
        assertThat(Drawings.geometry(art).isValid()).isTrue();
        assertThat(art.ringCount()).isEqualTo(1);
      }
    }
  }

  /** A line of 12 pixels at any angle, from border to border: width times length. */
  @Test
  void lineKeepsItsWidthWithinAThousandth() throws Exception {
    for (double degrees : new double[] {0, 7, 30, 40}) {
      for (double shift = 0; shift < 1; shift += 0.23) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        double offset = shift;
        Artwork art =
            read(
                200,
                200,
                2,
                (x, y) -> Math.abs(c * (x - 100) + s * (y - 100) - offset) < 6 ? 1 : 0);
        // a band that crosses the square from bottom to top: 12 / cos wide along x, 200 high
        double expected = 12 / c * 200;
        expected *= PIXEL_MM * PIXEL_MM;
        assertThat(art.opaqueAreaMm2())
            .as("%s degrees, shifted by %s", degrees, shift)
            .isCloseTo(expected, within(1e-3 * expected));
      }
    }
  }

  @Test
  void theStaircaseGoesAndIsTold() throws Exception {
    DoubleBinaryOperator slope = (x, y) -> x + 0.2 * y < 90 ? 1 : 0;
    Artwork stairs = read(160, 160, 0, slope);
    Artwork smooth = read(160, 160, 2, slope);
    // along pixels the slanted side is as long as its two legs; smoothed as long as it is
    double side = Math.hypot(160, 32) * PIXEL_MM;
    double rest = (90 + 160 + 58) * PIXEL_MM;
    assertThat(stairs.edgeLengthMm()).isCloseTo(rest + 19.2, within(0.11));
    assertThat(smooth.edgeLengthMm()).isCloseTo(rest + side, within(0.02));
    assertThat(smooth.notes())
        .anyMatch(n -> n.startsWith("smoothed over 0.2000 mm (2.00 pixels): dark area "));
  }

  @Test
  void noiseGivesCleanRingsOnEverySeed() throws Exception {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      int w = 1 + random.nextInt(40);
      int h = 1 + random.nextInt(40);
      BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_BYTE_GRAY);
      for (int y = 0; y < h; y++) {
        for (int x = 0; x < w; x++) {
          image.getRaster().setSample(x, y, 0, random.nextInt(256));
        }
      }
      Artwork art =
          ArtworkFile.read(
              PngTest.png(image, 10_000, 10_000),
              NAME,
              ArtworkFile.Options.standard().withSmoothMm(0.1 * random.nextDouble() + 0.01));
      assertThat(Drawings.geometry(art).isValid()).as("seed %d", seed).isTrue();
      Artwork checked =
          Artwork.of(art.widthMm(), art.heightMm(), art.xy(), art.ringStarts(), 0, art.notes());
      assertThat(checked).as("seed %d", seed).isEqualTo(art);
    }
  }

  @Test
  void tooMuchSmoothingIsRefusedWithNumbers() {
    assertThatThrownBy(() -> read(20, 20, 300, (x, y) -> 1))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining("smoothing over at most 100.0 pixels")
        .hasMessageContaining("300");
    assertThatThrownBy(() -> ArtworkFile.Options.standard().withSmoothMm(-1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("smoothing (mm) cannot be -1.0");
  }

  private static Artwork read(int w, int h, double smoothPixels, DoubleBinaryOperator dark)
      throws Exception {
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_USHORT_GRAY);
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        double sum = 0;
        for (int k = 0; k < 256; k++) {
          sum += dark.applyAsDouble(x + (k % 16 + 0.5) / 16, y + (k / 16 + 0.5) / 16);
        }
        image.getRaster().setSample(x, y, 0, (int) Math.round(65535 * (1 - sum / 256)));
      }
    }
    return ArtworkFile.read(
        PngTest.png(image, 10_000, 10_000),
        NAME,
        ArtworkFile.Options.standard().withSmoothMm(smoothPixels * PIXEL_MM));
  }
}
