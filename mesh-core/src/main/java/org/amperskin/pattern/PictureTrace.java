package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;

/**
 * The outline of a picture's dark part, along its pixels or smoothed.
 *
 * @param rings in pixels from the lower left corner, dark on their left
 * @param notes specks, and what smoothing changed
 */
record PictureTrace(List<double[]> rings, List<String> notes) {
  /** Most pixels that are smoothed; it takes 16 bytes for each. */
  static final long MOST_SMOOTHED = 25_000_000;

  /** Least and largest standard deviation of the blur (pixels). */
  private static final double LEAST_SIGMA = 0.75;

  private static final double LARGEST_SIGMA = 50;

  static PictureTrace of(
      Picture picture, double pixelWidthMm, double pixelHeightMm, ArtworkFile.Options options) {
    BitSet dark = picture.dark(options.threshold());
    PixelOutline outline = new PixelOutline(dark, picture.width(), picture.height());
    SvgFault.unless(
        outline.points() <= PointBudget.LARGEST,
        "at most " + PointBudget.LARGEST + " corners along dark pixels",
        outline.points() + " and more: clean the picture or lower its resolution");
    List<String> notes = new ArrayList<>();
    if (options.smoothMm() == 0) {
      if (outline.specks() > 0) {
        notes.add(outline.specks() + " specks or pinholes of fewer than 4 pixels");
      }
      return new PictureTrace(outline.rings(), notes);
    }
    long pixels = (long) picture.width() * picture.height();
    SvgFault.unless(
        pixels <= MOST_SMOOTHED,
        "at most " + MOST_SMOOTHED + " pixels to smooth",
        pixels + " pixels");
    double sigmaX = options.smoothMm() / 2 / pixelWidthMm;
    double sigmaY = options.smoothMm() / 2 / pixelHeightMm;
    SvgFault.unless(
        Math.max(sigmaX, sigmaY) <= LARGEST_SIGMA,
        "smoothing over at most " + 2 * LARGEST_SIGMA + " pixels",
        2 * Math.max(sigmaX, sigmaY) + " pixels");
    SmoothOutline smooth =
        new SmoothOutline(
            picture.lightness(),
            picture.width(),
            picture.height(),
            Math.max(LEAST_SIGMA, sigmaX),
            Math.max(LEAST_SIGMA, sigmaY),
            options.threshold());
    SvgFault.unless(
        smooth.points() <= PointBudget.LARGEST,
        "at most " + PointBudget.LARGEST + " points of smoothed outlines",
        smooth.points() + " and more");
    double cellMm2 = pixelWidthMm * pixelHeightMm;
    double before = dark.cardinality() * cellMm2;
    double after = area(smooth.rings()) * cellMm2;
    notes.add(
        String.format(
            Locale.ROOT,
            "smoothed over %.4g mm (%.3g pixels)%s: dark area %.6g mm2 along the pixels, %.6g mm2"
                + " smoothed (%+.3f %%), %d outlines and holes of %d left",
            options.smoothMm(),
            2 * Math.max(sigmaX, sigmaY),
            Math.min(sigmaX, sigmaY) < LEAST_SIGMA ? ", taken as 1.5 pixels" : "",
            before,
            after,
            before == 0 ? 0 : 100 * (after - before) / before,
            smooth.rings().size(),
            outline.rings().size()));
    return new PictureTrace(smooth.rings(), notes);
  }

  private static double area(List<double[]> rings) {
    double twice = 0;
    for (double[] ring : rings) {
      for (int p = 0, q = ring.length - 2; p < ring.length; q = p, p += 2) {
        twice += ring[q] * ring[p + 1] - ring[p] * ring[q + 1];
      }
    }
    return twice / 2;
  }
}
