package org.amperskin.pattern;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * A PNG or JPEG with its size and resolution, checked before a single pixel is decoded.
 *
 * @param picture the pixels
 * @param perMmX pixels per mm, 0 if the file does not say
 * @param perMmY pixels per mm, 0 if the file does not say
 * @param notes what was assumed or left undone
 */
record PictureFile(Picture picture, double perMmX, double perMmY, List<String> notes) {
  static boolean looksLikeOne(byte[] bytes) {
    return PngFile.looksLike(bytes) || JpegFile.looksLike(bytes);
  }

  /** Reads a file; at most {@code mostPixels} pixels. */
  static PictureFile read(byte[] bytes, Path path, long mostPixels) throws ArtworkFileException {
    if (PngFile.looksLike(bytes)) {
      PngFile png = PngFile.read(bytes, path);
      size(path, "byte 16", png.width(), png.height(), mostPixels);
      Picture picture = new Picture(decode(bytes, path, "png"), png.colourType() == 3, png.clear());
      return new PictureFile(picture, png.perMetreX() / 1e3, png.perMetreY() / 1e3, List.of());
    }
    JpegFile jpeg = JpegFile.read(bytes, path);
    size(path, "byte " + jpeg.frameAt(), jpeg.width(), jpeg.height(), mostPixels);
    BufferedImage image = decode(bytes, path, "jpeg");
    if (image.getWidth() != jpeg.width() || image.getHeight() != jpeg.height()) {
      throw new ArtworkFileException(
          path,
          "byte " + jpeg.frameAt(),
          "expected %d x %d pixels, found %d x %d"
              .formatted(jpeg.width(), jpeg.height(), image.getWidth(), image.getHeight()));
    }
    return new PictureFile(
        new Picture(image, false, null), jpeg.perMmX(), jpeg.perMmY(), jpeg.notes());
  }

  private static void size(Path path, String place, int width, int height, long most)
      throws ArtworkFileException {
    long pixels = (long) width * height;
    if (pixels > most) {
      throw new ArtworkFileException(
          path,
          place,
          "%d x %d = %d pixels, more than the %d that are read"
              .formatted(width, height, pixels, most));
    }
  }

  private static BufferedImage decode(byte[] bytes, Path path, String format)
      throws ArtworkFileException {
    ImageReader reader = ImageIO.getImageReadersByFormatName(format).next();
    List<String> warnings = new ArrayList<>();
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
      reader.setInput(in, true, true);
      reader.addIIOReadWarningListener((source, warning) -> warnings.add(warning));
      BufferedImage image = reader.read(0);
      if (!warnings.isEmpty()) {
        throw new IOException(warnings.get(0));
      }
      return image;
    } catch (IOException | RuntimeException e) {
      throw new ArtworkFileException(
          path,
          "whole file",
          "expected sound "
              + format.toUpperCase(java.util.Locale.ROOT)
              + " data, found: "
              + e.getMessage());
    } finally {
      reader.dispose();
    }
  }
}
