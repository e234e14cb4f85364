package org.amperskin.pattern;

import java.awt.geom.AffineTransform;

/** The map from a viewBox to its viewport: W3C SVG 2 sections 8.2 and 8.6. */
record SvgViewBox(double x, double y, double width, double height) {
  /** The viewBox of an element, or null if it has none. */
  static SvgViewBox of(SvgNode node) {
    String text = node.get("viewBox", null);
    if (text == null) {
      return null;
    }
    double[] n = SvgNumbers.list(text);
    SvgFault.unless(
        n.length == 4 && n[2] > 0 && n[3] > 0,
        "a viewBox of four numbers, width and height above 0",
        text);
    return new SvgViewBox(n[0], n[1], n[2], n[3]);
  }

  /** Map to a viewport whose corner lies at the origin. */
  AffineTransform onto(double viewportWidth, double viewportHeight, String preserveAspectRatio) {
    String[] words = preserveAspectRatio.strip().split("\\s+");
    String align = words[0];
    double sx = viewportWidth / width;
    double sy = viewportHeight / height;
    double dx = 0;
    double dy = 0;
    if (!align.equals("none")) {
      SvgFault.unless(
          align.matches("x(Min|Mid|Max)Y(Min|Mid|Max)")
              && (words.length == 1 || words[1].equals("meet") || words[1].equals("slice")),
          "preserveAspectRatio such as xMidYMid meet, or none",
          preserveAspectRatio);
      boolean slice = words.length > 1 && words[1].equals("slice");
      double s = slice ? Math.max(sx, sy) : Math.min(sx, sy);
      sx = s;
      sy = s;
      dx = part(align.substring(1, 4)) * (viewportWidth - s * width);
      dy = part(align.substring(5, 8)) * (viewportHeight - s * height);
    }
    return new AffineTransform(sx, 0, 0, sy, dx - sx * x, dy - sy * y);
  }

  private static double part(String word) {
    return word.equals("Min") ? 0 : word.equals("Mid") ? 0.5 : 1;
  }
}
