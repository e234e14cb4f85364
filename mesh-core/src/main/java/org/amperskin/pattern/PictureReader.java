package org.amperskin.pattern;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads a PNG or JPEG picture: pixels darker than the threshold are opaque.
 *
 * <p>Without smoothing the outline runs along the pixels' edges and the area is exact: dark pixels
 * times the area of one. With smoothing see {@link SmoothOutline}; what it changes is told.
 */
final class PictureReader {
  private PictureReader() {}

  static Artwork read(byte[] bytes, Path path, ArtworkFile.Options options)
      throws ArtworkFileException {
    PictureFile file = PictureFile.read(bytes, path, Picture.MOST_PIXELS);
    Picture picture = file.picture();
    List<String> notes = new ArrayList<>();
    double pixelWidthMm = SvgNumbers.MM_PER_IN / options.dpi();
    double pixelHeightMm = pixelWidthMm;
    if (Double.isNaN(options.dpi())) {
      if (!(file.perMmX() > 0 && file.perMmY() > 0)) {
        throw new ArtworkFileException(
            path,
            "whole file",
            "expected a resolution (in a PNG chunk pHYs in pixels per metre, in a JPEG the JFIF or"
                + " Exif density), found none: tell it, as '--dpi 600' or, in a job, 'dpi: 600' under the film");
      }
      pixelWidthMm = 1 / file.perMmX();
      pixelHeightMm = 1 / file.perMmY();
      notes.add(
          String.format(
              Locale.ROOT,
              "resolution from the file: %.2f x %.2f dpi",
              SvgNumbers.MM_PER_IN / pixelWidthMm,
              SvgNumbers.MM_PER_IN / pixelHeightMm));
    } else {
      notes.add("resolution as given: " + options.dpi() + " dpi");
    }
    notes.addAll(file.notes());
    double widthMm = picture.width() * pixelWidthMm;
    double heightMm = picture.height() * pixelHeightMm;
    if (Math.max(widthMm, heightMm) > PaintStack.LARGEST_SIDE_MM) {
      throw new ArtworkFileException(
          path,
          "whole file",
          "%s x %s mm, more than the %s mm a side may have"
              .formatted(widthMm, heightMm, PaintStack.LARGEST_SIDE_MM));
    }
    PictureTrace trace;
    try {
      trace = PictureTrace.of(picture, pixelWidthMm, pixelHeightMm, options);
    } catch (SvgFault tooMuch) {
      throw new ArtworkFileException(path, "whole file", tooMuch.getMessage());
    }
    notes.addAll(trace.notes());
    List<double[]> placed = new ArrayList<>();
    for (double[] ring : trace.rings()) {
      double[] mm = new double[ring.length];
      for (int k = 0; k < ring.length; k += 2) {
        mm[k] = (ring[k] - picture.width() / 2.0) * pixelWidthMm;
        mm[k + 1] = (ring[k + 1] - picture.height() / 2.0) * pixelHeightMm;
      }
      placed.add(mm);
    }
    return Artwork.trusted(widthMm, heightMm, RingSet.of(placed), 0, notes);
  }
}
