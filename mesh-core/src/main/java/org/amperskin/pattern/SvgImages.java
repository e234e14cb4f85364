package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;

/**
 * Embedded pictures: PNG or JPEG in a data address is read like a picture file at its place;
 * everything else is named and skipped. Nothing outside the drawing is opened.
 */
final class SvgImages {
  private final ArtworkFile.Options options;
  private final PaintStack stack;
  private final SvgInk ink;
  private final SvgNotes notes;
  private long pixelsLeft = Picture.MOST_PIXELS;

  SvgImages(ArtworkFile.Options options, PaintStack stack, SvgInk ink, SvgNotes notes) {
    this.options = options;
    this.stack = stack;
    this.ink = ink;
    this.notes = notes;
  }

  /** Where the picture lies, in user units; empty if its size is not given. */
  static Contour frame(SvgNode node, SvgShapes.Lengths lengths) {
    double width = lengths.along(node, "width", 'x', 0);
    double height = lengths.along(node, "height", 'y', 0);
    return width > 0 && height > 0
        ? SvgShapes.box(
            lengths.along(node, "x", 'x', 0), lengths.along(node, "y", 'y', 0), width, height)
        : new Contour();
  }

  void draw(SvgNode node, SvgPainter.Context context, double unitMm) {
    if (!context.style().get("visibility", "visible").equals("visible")) {
      return;
    }
    String href = node.get("href", "");
    byte[] bytes = href.regionMatches(true, 0, "data:", 0, 5) ? content(href) : null;
    if (bytes == null) {
      String what = href.length() > 60 ? href.substring(0, 57) + "..." : href;
      notes.add(
          "<image> of "
              + SvgFault.shortened(what)
              + (href.startsWith("data:") ? " skipped" : " skipped, no other file is opened"),
          node);
      return;
    }
    if (!PictureFile.looksLikeOne(bytes)) {
      notes.add(
          "<image> skipped, expected a PNG or JPEG in it, found "
              + SvgFault.shortened(href.substring(0, Math.min(30, href.length()))),
          node);
      return;
    }
    try {
      PictureFile file = PictureFile.read(bytes, Path.of("<image>"), pixelsLeft);
      pixelsLeft -= (long) file.picture().width() * file.picture().height();
      paint(file, node, context, unitMm);
    } catch (ArtworkFileException broken) {
      notes.add("<image> skipped, in it at " + broken.placeAndProblem(), node);
    }
  }

  private void paint(PictureFile file, SvgNode node, SvgPainter.Context context, double unitMm) {
    Picture picture = file.picture();
    SvgShapes.Lengths lengths = context.lengths(unitMm);
    double width = lengths.along(node, "width", 'x', Double.NaN);
    double height = lengths.along(node, "height", 'y', Double.NaN);
    // one side alone keeps the proportions; none takes a pixel as a px (W3C SVG 2 section 12.3)
    double ratio = (double) picture.width() / picture.height();
    if (Double.isNaN(width)) {
      width = Double.isNaN(height) ? picture.width() : height * ratio;
    }
    height = Double.isNaN(height) ? width / ratio : height;
    SvgFault.unless(
        width >= 0 && height >= 0, "image width and height of 0 or more", width + " x " + height);
    if (width == 0 || height == 0) {
      return;
    }
    AffineTransform map = new AffineTransform(context.toMm());
    map.translate(lengths.along(node, "x", 'x', 0), lengths.along(node, "y", 'y', 0));
    int figure = ink.figure(SvgShapes.box(0, 0, width, height).mapped(map), false);
    int clip = stack.clip(new int[] {figure}, context.clip());
    String fit = node.get("preserveAspectRatio", "xMidYMid meet").replaceFirst("^defer\\s+", "");
    map.concatenate(
        new SvgViewBox(0, 0, picture.width(), picture.height()).onto(width, height, fit));
    // rows of the trace are counted from below
    map.concatenate(new AffineTransform(1, 0, 0, -1, 0, picture.height()));
    double pixelWidthMm = Math.hypot(map.getScaleX(), map.getShearY());
    double pixelHeightMm = Math.hypot(map.getShearX(), map.getScaleY());
    if (pixelWidthMm == 0 || pixelHeightMm == 0) {
      return;
    }
    PictureTrace trace = PictureTrace.of(picture, pixelWidthMm, pixelHeightMm, options);
    PixelOutline cover = new PixelOutline(picture.covering(), picture.width(), picture.height());
    stack.paint(ink.figure(mapped(cover.rings(), map)), 1, 1, clip, context.group());
    stack.paint(ink.figure(mapped(trace.rings(), map)), 0, 1, clip, context.group());
    List<String> all = new ArrayList<>(file.notes());
    all.addAll(trace.notes());
    notes.add(
        String.format(
                Locale.ROOT,
                "<image> of %d x %d pixels, %.0f dpi here, read by the threshold",
                picture.width(),
                picture.height(),
                SvgNumbers.MM_PER_IN / pixelWidthMm)
            + (all.isEmpty() ? "" : "; " + String.join("; ", all)),
        node);
  }

  private static List<double[]> mapped(List<double[]> rings, AffineTransform map) {
    List<double[]> out = new ArrayList<>();
    for (double[] ring : rings) {
      double[] mm = new double[ring.length];
      map.transform(ring, 0, mm, 0, ring.length / 2);
      out.add(mm);
    }
    return out;
  }

  /** What a data address (RFC 2397) holds, or null if it cannot be read. */
  private static byte[] content(String href) {
    int comma = href.indexOf(',');
    if (comma < 0) {
      return null;
    }
    String data = href.substring(comma + 1);
    if (data.indexOf('%') >= 0) {
      data = unescaped(data);
    }
    if (!href.substring(0, comma).strip().toLowerCase(Locale.ROOT).endsWith("base64")) {
      return data.getBytes(StandardCharsets.ISO_8859_1);
    }
    try {
      return Base64.getMimeDecoder().decode(data);
    } catch (IllegalArgumentException notBase64) {
      return null;
    }
  }

  private static String unescaped(String text) {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      int high = c == '%' && i + 2 < text.length() ? Character.digit(text.charAt(i + 1), 16) : -1;
      int low = high >= 0 ? Character.digit(text.charAt(i + 2), 16) : -1;
      out.append(low >= 0 ? (char) (16 * high + low) : c);
      i += low >= 0 ? 2 : 0;
    }
    return out.toString();
  }
}
