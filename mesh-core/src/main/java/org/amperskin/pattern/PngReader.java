package org.amperskin.pattern;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * Reads a PNG image: pixels darker than the threshold are opaque, traced along their edges.
 *
 * <p>Lightness is that of {@link SvgColour}, laid over white by the pixel's alpha. Gamma and colour
 * profiles are not applied. Area is exact: dark pixels times the area of one.
 */
final class PngReader {
  static final long MOST_PIXELS = 64_000_000;
  private static final double MM_PER_METRE = 1000;

  private PngReader() {}

  static Artwork read(byte[] bytes, Path path, ArtworkFile.Options options)
      throws ArtworkFileException {
    PngFile png = PngFile.read(bytes, path);
    long pixels = (long) png.width() * png.height();
    if (pixels > MOST_PIXELS) {
      throw new ArtworkFileException(
          path,
          "byte 16",
          "%d x %d = %d pixels, more than the %d that are read"
              .formatted(png.width(), png.height(), pixels, MOST_PIXELS));
    }
    List<String> notes = new ArrayList<>();
    double pixelWidthMm = SvgNumbers.MM_PER_IN / options.dpi();
    double pixelHeightMm = pixelWidthMm;
    if (Double.isNaN(options.dpi())) {
      if (png.perMetreX() == 0 || png.perMetreY() == 0) {
        throw new ArtworkFileException(
            path,
            "whole file",
            "expected a resolution (chunk pHYs in pixels per metre), found none:"
                + " tell it, as '--dpi 600' or, in a job, 'dpi: 600' under the film");
      }
      pixelWidthMm = MM_PER_METRE / png.perMetreX();
      pixelHeightMm = MM_PER_METRE / png.perMetreY();
      notes.add(
          String.format(
              Locale.ROOT,
              "resolution from the file: %.2f x %.2f dpi",
              SvgNumbers.MM_PER_IN / pixelWidthMm,
              SvgNumbers.MM_PER_IN / pixelHeightMm));
    } else {
      notes.add("resolution as given: " + options.dpi() + " dpi");
    }
    double widthMm = png.width() * pixelWidthMm;
    double heightMm = png.height() * pixelHeightMm;
    if (Math.max(widthMm, heightMm) > PaintStack.LARGEST_SIDE_MM) {
      throw new ArtworkFileException(
          path,
          "whole file",
          "%s x %s mm, more than the %s mm a side may have"
              .formatted(widthMm, heightMm, PaintStack.LARGEST_SIDE_MM));
    }
    BitSet dark = dark(decode(bytes, path), png, options.threshold());
    PixelOutline outline = new PixelOutline(dark, png.width(), png.height());
    if (outline.points() > PointBudget.LARGEST) {
      throw new ArtworkFileException(
          path,
          "whole file",
          "%d corners along dark pixels, more than the %d that are read: smooth the image or lower"
                  .formatted(outline.points(), PointBudget.LARGEST)
              + " its resolution");
    }
    if (outline.specks() > 0) {
      notes.add(outline.specks() + " specks or pinholes of fewer than 4 pixels");
    }
    return Artwork.trusted(widthMm, heightMm, outline.rings(pixelWidthMm, pixelHeightMm), 0, notes);
  }

  private static BufferedImage decode(byte[] bytes, Path path) throws ArtworkFileException {
    ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
    List<String> warnings = new ArrayList<>();
    try (ImageInputStream in =
        new javax.imageio.stream.MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
      reader.setInput(in, true, true);
      reader.addIIOReadWarningListener((source, warning) -> warnings.add(warning));
      BufferedImage image = reader.read(0);
      if (!warnings.isEmpty()) {
        throw new IOException(warnings.get(0));
      }
      return image;
    } catch (IOException | RuntimeException e) {
      throw new ArtworkFileException(
          path, "whole file", "expected sound PNG data, found: " + e.getMessage());
    } finally {
      reader.dispose();
    }
  }

  /** Bit {@code j * width + i} for column i, row j counted from below. */
  private static BitSet dark(BufferedImage image, PngFile png, double threshold) {
    int w = image.getWidth();
    int h = image.getHeight();
    Raster raster = image.getRaster();
    int bands = raster.getNumBands();
    boolean palette = image.getColorModel() instanceof IndexColorModel && png.colourType() == 3;
    boolean grey = bands < 3;
    double full = (1 << raster.getSampleModel().getSampleSize(0)) - 1;
    BitSet dark = new BitSet(w * h);
    int[] row = new int[w * bands];
    for (int y = 0; y < h; y++) {
      raster.getPixels(0, y, w, 1, row);
      for (int x = 0; x < w; x++) {
        SvgColour colour;
        if (palette) {
          int argb = image.getColorModel().getRGB(row[x]);
          colour =
              SvgColour.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255, (argb >>> 24) / 255.0);
        } else {
          int at = x * bands;
          double alpha = bands == 2 || bands == 4 ? row[at + bands - 1] / full : 1;
          if (png.clear() != null && isClear(row, at, png.clear())) {
            alpha = 0;
          }
          double k = 255 / full;
          colour =
              grey
                  ? SvgColour.rgb(k * row[at], k * row[at], k * row[at], alpha)
                  : SvgColour.rgb(k * row[at], k * row[at + 1], k * row[at + 2], alpha);
        }
        double light = 1 - colour.opacity() * (1 - colour.lightness());
        if (light < threshold) {
          dark.set((h - 1 - y) * w + x);
        }
      }
    }
    return dark;
  }

  private static boolean isClear(int[] row, int at, List<Integer> clear) {
    for (int i = 0; i < clear.size(); i++) {
      if (row[at + i] != clear.get(i)) {
        return false;
      }
    }
    return true;
  }
}
