package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** PNG: W3C Portable Network Graphics (Second Edition), 11.3.5.3 for the resolution. */
class PngTest {
  private static final Path NAME = Path.of("tile.png");

  @Test
  void areaIsTheCountOfDarkPixels() throws Exception {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      int w = 1 + random.nextInt(60);
      int h = 1 + random.nextInt(60);
      int dark = 0;
      BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
      for (int y = 0; y < h; y++) {
        for (int x = 0; x < w; x++) {
          boolean on = random.nextDouble() < 0.15 * (1 + seed % 5);
          dark += on ? 1 : 0;
          image.setRGB(x, y, on ? 0x202020 : 0xf0f0f0);
        }
      }
      Artwork art = ArtworkFile.read(png(image, 4000, 5000), NAME, ArtworkFile.Options.standard());
      double expected = dark * 0.25 * 0.2;
      assertThat(art.opaqueAreaMm2())
          .as("seed %d", seed)
          .isCloseTo(expected, within(1e-12 * Math.max(1, expected)));
      assertThat(art.widthMm()).isEqualTo(w * 0.25);
      assertThat(Drawings.geometry(art).isValid()).as("seed %d", seed).isTrue();
      assertThat(Drawings.geometry(art).getArea()).isCloseTo(expected, within(1e-9));
      Artwork checked =
          Artwork.of(art.widthMm(), art.heightMm(), art.xy(), art.ringStarts(), 0, art.notes());
      assertThat(checked).isEqualTo(art);
    }
  }

  @Test
  void topRowOfTheImageIsTheTopOfTheSheetAndCollinearPointsAreMerged() throws Exception {
    BufferedImage image = white(4, 3);
    image.setRGB(2, 0, 0xff000000);
    image.setRGB(3, 0, 0xff000000);
    Artwork art = ArtworkFile.read(png(image, 1000, 1000), NAME, ArtworkFile.Options.standard());
    assertThat(art.xy()).containsExactly(0, 0.5, 2, 0.5, 2, 1.5, 0, 1.5);
  }

  @Test
  void pixelsThatTouchAtACornerAreRingsOfTheirOwn() throws Exception {
    BufferedImage image = white(4, 4);
    for (int[] p : new int[][] {{1, 1}, {2, 2}, {1, 0}, {2, 0}, {3, 1}}) {
      image.setRGB(p[0], p[1], 0xff000000);
    }
    Artwork art = ArtworkFile.read(png(image, 1000, 1000), NAME, ArtworkFile.Options.standard());
    assertThat(art.ringCount()).isEqualTo(3);
    assertThat(art.notes()).contains("3 specks or pinholes of fewer than 4 pixels");
    assertThat(Drawings.geometry(art).isValid()).isTrue();
  }

  @Test
  void alphaIsLaidOverWhiteAndGreyIsTakenAsStored() throws Exception {
    BufferedImage rgba = new BufferedImage(3, 1, BufferedImage.TYPE_INT_ARGB);
    rgba.setRGB(0, 0, 0x00000000);
    rgba.setRGB(1, 0, 0x7f000000);
    rgba.setRGB(2, 0, 0x81000000);
    assertThat(fraction(rgba, 0.5)).isCloseTo(1 / 3., within(1e-12));
    BufferedImage grey = new BufferedImage(256, 1, BufferedImage.TYPE_BYTE_GRAY);
    BufferedImage deep = new BufferedImage(256, 1, BufferedImage.TYPE_USHORT_GRAY);
    for (int x = 0; x < 256; x++) {
      grey.getRaster().setSample(x, 0, 0, x);
      deep.getRaster().setSample(x, 0, 0, 257 * x);
    }
    assertThat(fraction(grey, 0.5)).isEqualTo(0.5);
    assertThat(fraction(deep, 0.5)).isEqualTo(0.5);
    assertThat(fraction(grey, 0.25)).isEqualTo(0.25);
    BufferedImage bits = new BufferedImage(9, 9, BufferedImage.TYPE_BYTE_BINARY);
    bits.setRGB(4, 4, 0xffffffff);
    assertThat(fraction(bits, 0.5)).isCloseTo(80 / 81., within(1e-12));
  }

  @Test
  void withoutResolutionItAsksForDpi() throws Exception {
    BufferedImage image = white(2, 2);
    image.setRGB(0, 0, 0xff000000);
    byte[] bytes = png(image, 0, 0);
    assertThatThrownBy(() -> ArtworkFile.read(bytes, NAME, ArtworkFile.Options.standard()))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining("dpi");
    Artwork art = ArtworkFile.read(bytes, NAME, ArtworkFile.Options.standard().withDpi(254));
    assertThat(art.widthMm()).isCloseTo(0.2, within(1e-15));
    assertThat(art.opaqueAreaMm2()).isCloseTo(0.01, within(1e-15));
  }

  @Test
  void hugeClaimsAreRefusedWithNumbers() throws Exception {
    byte[] bytes = png(white(2, 2), 1000, 1000);
    ByteBuffer.wrap(bytes).putInt(16, 100_000).putInt(20, 100_000);
    CRC32 crc = new CRC32();
    crc.update(bytes, 12, 17);
    ByteBuffer.wrap(bytes).putInt(29, (int) crc.getValue());
    assertThatThrownBy(() -> ArtworkFile.read(bytes, NAME, ArtworkFile.Options.standard()))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining("100000 x 100000 = 10000000000 pixels")
        .hasMessageContaining("64000000");
  }

  @Test
  void brokenFilesOnlyEverGiveTheOneException() throws Exception {
    BufferedImage image = white(20, 20);
    image.setRGB(3, 3, 0xff000000);
    byte[] sound = png(image, 1000, 1000);
    ArtworkFile.Options options = ArtworkFile.Options.standard();
    for (int cut = 0; cut < sound.length; cut++) {
      byte[] part = Arrays.copyOf(sound, cut);
      assertThatThrownBy(() -> ArtworkFile.read(part, NAME, options))
          .as("cut at %d", cut)
          .isInstanceOf(ArtworkFileException.class)
          .hasMessageContaining("tile.png");
    }
    int told = 0;
    for (long seed = 1; seed <= 1000; seed++) {
      Random random = new Random(seed);
      byte[] broken = sound.clone();
      broken[random.nextInt(broken.length)] ^= (byte) (1 << random.nextInt(8));
      try {
        ArtworkFile.read(broken, NAME, options);
      } catch (ArtworkFileException e) {
        told++;
      }
    }
    assertThat(told).isEqualTo(1000); // every flipped bit shows in a check sum or the signature
  }

  private static double fraction(BufferedImage image, double threshold) throws Exception {
    return ArtworkFile.read(
            png(image, 1000, 1000), NAME, ArtworkFile.Options.standard().withThreshold(threshold))
        .opaqueFraction();
  }

  private static BufferedImage white(int w, int h) {
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    image.createGraphics().fillRect(0, 0, w, h);
    return image;
  }

  /** PNG bytes with a pHYs chunk put in behind the header; none if x is 0. */
  static byte[] png(BufferedImage image, int perMetreX, int perMetreY) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    byte[] plain = out.toByteArray();
    if (perMetreX == 0) {
      return plain;
    }
    ByteBuffer chunk = ByteBuffer.allocate(21);
    chunk.putInt(9).put("pHYs".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    chunk.putInt(perMetreX).putInt(perMetreY).put((byte) 1);
    CRC32 crc = new CRC32();
    crc.update(chunk.array(), 4, 13);
    chunk.putInt((int) crc.getValue());
    ByteBuffer all = ByteBuffer.allocate(plain.length + 21);
    all.put(plain, 0, 33).put(chunk.array()).put(plain, 33, plain.length - 33);
    return all.array();
  }
}
