package org.amperskin.pattern;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.util.BitSet;
import java.util.List;

/**
 * A decoded PNG or JPEG: lightness over white and opacity of each pixel, row by row.
 *
 * <p>Lightness is that of {@link SvgColour}, laid over white by the pixel's alpha. Gamma and colour
 * profiles are not applied.
 */
final class Picture {
  static final long MOST_PIXELS = 64_000_000;

  private final BufferedImage image;
  private final boolean palette;
  private final List<Integer> clear;

  /**
   * A picture.
   *
   * @param palette whether samples are numbers of a palette
   * @param clear the sample values that are transparent, or null
   */
  Picture(BufferedImage image, boolean palette, List<Integer> clear) {
    this.image = image;
    this.palette = palette && image.getColorModel() instanceof IndexColorModel;
    this.clear = clear;
  }

  int width() {
    return image.getWidth();
  }

  int height() {
    return image.getHeight();
  }

  /**
   * Reads row y, counted from above.
   *
   * @param light lightness over white, 0 to 1; length width
   * @param cover opacity, 0 to 1; length width
   */
  void row(int y, double[] light, double[] cover) {
    Raster raster = image.getRaster();
    int bands = raster.getNumBands();
    int w = image.getWidth();
    double full = (1 << raster.getSampleModel().getSampleSize(0)) - 1;
    int[] row = raster.getPixels(0, y, w, 1, (int[]) null);
    for (int x = 0; x < w; x++) {
      SvgColour colour;
      if (palette) {
        int argb = image.getColorModel().getRGB(row[x]);
        colour =
            SvgColour.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255, (argb >>> 24) / 255.0);
      } else {
        int at = x * bands;
        double alpha = bands == 2 || bands == 4 ? row[at + bands - 1] / full : 1;
        if (clear != null && isClear(row, at)) {
          alpha = 0;
        }
        double k = 255 / full;
        colour =
            bands < 3
                ? SvgColour.rgb(k * row[at], k * row[at], k * row[at], alpha)
                : SvgColour.rgb(k * row[at], k * row[at + 1], k * row[at + 2], alpha);
      }
      light[x] = 1 - colour.opacity() * (1 - colour.lightness());
      cover[x] = colour.opacity();
    }
  }

  private boolean isClear(int[] row, int at) {
    for (int i = 0; i < clear.size(); i++) {
      if (row[at + i] != clear.get(i)) {
        return false;
      }
    }
    return true;
  }

  /** Pixels darker than the threshold: bit {@code j * width + i}, row j counted from below. */
  BitSet dark(double threshold) {
    BitSet dark = new BitSet(width() * height());
    double[] light = new double[width()];
    double[] cover = new double[width()];
    for (int y = 0; y < height(); y++) {
      row(y, light, cover);
      for (int x = 0; x < light.length; x++) {
        if (light[x] < threshold) {
          dark.set((height() - 1 - y) * width() + x);
        }
      }
    }
    return dark;
  }

  /** Pixels that hide what lies under them, by half or more; order as in {@link #dark}. */
  BitSet covering() {
    BitSet covering = new BitSet(width() * height());
    double[] light = new double[width()];
    double[] cover = new double[width()];
    for (int y = 0; y < height(); y++) {
      row(y, light, cover);
      for (int x = 0; x < light.length; x++) {
        if (cover[x] >= 0.5) {
          covering.set((height() - 1 - y) * width() + x);
        }
      }
    }
    return covering;
  }

  /** Lightness over white at {@code j * width + i}, row j counted from below. */
  float[] lightness() {
    float[] out = new float[width() * height()];
    double[] light = new double[width()];
    double[] cover = new double[width()];
    for (int y = 0; y < height(); y++) {
      row(y, light, cover);
      for (int x = 0; x < light.length; x++) {
        out[(height() - 1 - y) * width() + x] = (float) light[x];
      }
    }
    return out;
  }
}
