package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;

class JpegTest {
  private static final Path NAME = Path.of("picture.jpg");
  private static final ArtworkFile.Options OPTIONS = ArtworkFile.Options.standard();

  /** 48 x 32 pixels, the left third dark, at 254 dpi: 4.8 x 3.2 mm, dark 1.6 x 3.2. */
  @Test
  void greyAndColourBaselineAndProgressiveAreRead() throws Exception {
    for (int type : new int[] {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_3BYTE_BGR}) {
      for (boolean progressive : new boolean[] {false, true}) {
        Artwork art = ArtworkFile.read(jpeg(type, progressive), NAME, OPTIONS.withDpi(254));
        assertThat(art.widthMm()).isCloseTo(4.8, within(1e-12));
        assertThat(art.opaqueAreaMm2()).isCloseTo(1.6 * 3.2, within(1e-9));
      }
    }
  }

  @Test
  void jfifAndExifDensitiesAreBelieved() throws Exception {
    byte[] bytes = jpeg(BufferedImage.TYPE_BYTE_GRAY, false);
    assertThatThrownBy(() -> ArtworkFile.read(bytes, NAME, OPTIONS))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining("tell it, as '--dpi 600' or, in a job, 'dpi: 600' under the film");
    byte[] inch = bytes.clone();
    density(inch, 1, 254);
    assertThat(ArtworkFile.read(inch, NAME, OPTIONS).widthMm()).isCloseTo(4.8, within(1e-12));
    byte[] centimetre = bytes.clone();
    density(centimetre, 2, 100);
    Artwork art = ArtworkFile.read(centimetre, NAME, OPTIONS);
    assertThat(art.widthMm()).isCloseTo(4.8, within(1e-12));
    assertThat(art.notes()).contains("resolution from the file: 254.00 x 254.00 dpi");
    for (ByteOrder order : new ByteOrder[] {ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN}) {
      Artwork exif = ArtworkFile.read(withExif(bytes, order, 508, 2, 6), NAME, OPTIONS);
      assertThat(exif.widthMm()).isCloseTo(2.4, within(1e-12));
      assertThat(exif.notes())
          .contains(
              "the picture asks to be turned (Exif orientation 6): not done, save it upright");
    }
  }

  @Test
  void whatCannotBeReadIsRefusedByName() throws Exception {
    byte[] bytes = jpeg(BufferedImage.TYPE_BYTE_GRAY, false);
    int frame = frame(bytes);
    refused(changed(bytes, frame + 1, 0xc3), "lossless, hierarchical or arithmetic");
    refused(changed(bytes, frame + 1, 0xc9), "lossless, hierarchical or arithmetic");
    refused(changed(bytes, frame + 9, 4), "4 components (CMYK): save it as RGB");
    refused(changed(bytes, frame + 4, 12), "expected 8 bits a sample, found 12");
    refused(changed(bytes, frame + 7, 0, 0), "width and height above 0, found 0 x 32");
    refused(
        changed(bytes, frame + 5, 0xff, 0xff, 0xff, 0xff),
        "65535 x 65535 = 4294836225 pixels, more than the 64000000");
  }

  @Test
  void cutAndBrokenFilesOnlyEverGiveTheOneException() throws Exception {
    byte[] sound = jpeg(BufferedImage.TYPE_3BYTE_BGR, false);
    ArtworkFile.Options options = OPTIONS.withDpi(254);
    int told = 0;
    for (int cut = 0; cut < sound.length; cut++) {
      byte[] part = Arrays.copyOf(sound, cut);
      told += fails(part, options, "cut at " + cut);
    }
    assertThat(told).isGreaterThan(sound.length / 2);
    int broken = 0;
    for (long seed = 1; seed <= 1500; seed++) {
      Random random = new Random(seed);
      byte[] changed = sound.clone();
      for (int k = 0; k < 1 + seed % 3; k++) {
        changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
      }
      broken += fails(changed, options, "seed " + seed);
    }
    assertThat(broken).isGreaterThan(200);
  }

  private static int fails(byte[] bytes, ArtworkFile.Options options, String what) {
    try {
      ArtworkFile.read(bytes, NAME, options);
      return 0;
    } catch (ArtworkFileException told) {
      return 1;
    } catch (RuntimeException e) {
      throw new AssertionError(what + ": " + e, e);
    }
  }

  private static void refused(byte[] bytes, String message) {
    assertThatThrownBy(() -> ArtworkFile.read(bytes, NAME, OPTIONS.withDpi(254)))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining(message);
  }

  private static byte[] changed(byte[] bytes, int at, int... values) {
    byte[] out = bytes.clone();
    for (int k = 0; k < values.length; k++) {
      out[at + k] = (byte) values[k];
    }
    return out;
  }

  /** Place of the marker of the frame header (baseline). */
  private static int frame(byte[] bytes) {
    int at = 2;
    while ((bytes[at + 1] & 255) != 0xc0) {
      at += 2 + ByteBuffer.wrap(bytes).getChar(at + 2);
    }
    return at;
  }

  /** The writer puts JFIF first: bytes 13 to 17 are unit and densities. */
  private static void density(byte[] bytes, int unit, int value) {
    bytes[13] = (byte) unit;
    ByteBuffer.wrap(bytes).putChar(14, (char) value).putChar(16, (char) value);
  }

  private static byte[] withExif(
      byte[] bytes, ByteOrder order, int perUnit, int unit, int orientation) {
    ByteBuffer exif = ByteBuffer.allocate(100).order(order);
    exif.put((byte) (order == ByteOrder.LITTLE_ENDIAN ? 'I' : 'M'));
    exif.put((byte) (order == ByteOrder.LITTLE_ENDIAN ? 'I' : 'M'));
    exif.putChar((char) 42).putInt(8).putChar((char) 4);
    exif.putChar((char) 274).putChar((char) 3).putInt(1).putChar((char) orientation).putChar('\0');
    exif.putChar((char) 282).putChar((char) 5).putInt(1).putInt(80);
    exif.putChar((char) 283).putChar((char) 5).putInt(1).putInt(80);
    exif.putChar((char) 296).putChar((char) 3).putInt(1).putChar((char) unit).putChar('\0');
    exif.putInt(80, perUnit * 2).putInt(84, 2);
    ByteBuffer out = ByteBuffer.allocate(bytes.length + 110);
    out.put(bytes, 0, 2).put((byte) 0xff).put((byte) 0xe1).putChar((char) 108);
    out.put("Exif\0\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII)).put(exif.array());
    return out.put(bytes, 2, bytes.length - 2).array();
  }

  private static byte[] jpeg(int type, boolean progressive) throws Exception {
    BufferedImage image = new BufferedImage(48, 32, type);
    for (int y = 0; y < 32; y++) {
      for (int x = 0; x < 48; x++) {
        image.setRGB(x, y, x < 16 ? 0x202020 : 0xe8e8e8);
      }
    }
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ImageOutputStream to = ImageIO.createImageOutputStream(out)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setProgressiveMode(
          progressive ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
      writer.setOutput(to);
      writer.write(null, new IIOImage(image, null, null), how);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }
}
