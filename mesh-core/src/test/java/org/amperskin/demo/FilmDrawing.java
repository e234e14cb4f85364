package org.amperskin.demo;

import java.util.ArrayList;
import java.util.List;

/**
 * A film sheet's artwork at true size, written as SVG.
 *
 * <p>Definition: coordinates in mm from the sheet's middle, x to the right, y up; later shapes lie
 * on earlier ones. Black is opaque, white is clear. Coordinates are written to the micrometre.
 */
final class FilmDrawing {
  /** Opaque film. */
  static final String BLACK = "#000000";

  /** Clear film. */
  static final String WHITE = "#ffffff";

  private final double widthMm;
  private final double heightMm;
  private final String title;
  private final List<String> shapes = new ArrayList<>();
  private int edges;

  FilmDrawing(String title, double widthMm, double heightMm) {
    this.title = title;
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /** Width of the sheet (mm). */
  double widthMm() {
    return widthMm;
  }

  /** Height of the sheet (mm). */
  double heightMm() {
    return heightMm;
  }

  /** Number of straight and curved edges drawn. */
  int edges() {
    return edges;
  }

  /** Covers the whole sheet. */
  void sheet(String fill) {
    shapes.add(
        "<rect x=\"0\" y=\"0\" width=\"%s\" height=\"%s\" fill=\"%s\"/>"
            .formatted(number(widthMm), number(heightMm), fill));
    edges += 4;
  }

  /** A disk. */
  void disk(String fill, double x, double y, double radiusMm) {
    shapes.add(
        "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"%s\"/>"
            .formatted(number(x + widthMm / 2), number(heightMm / 2 - y), number(radiusMm), fill));
    edges += 4;
  }

  /** A polygon {x0, y0, x1, y1, ...} cut to the sheet less a margin; nothing if it lies outside. */
  void polygon(String fill, double marginMm, double... xy) {
    double w = widthMm / 2 - marginMm;
    double h = heightMm / 2 - marginMm;
    double[] cut = cut(cut(cut(cut(xy, 1, 0, w), -1, 0, w), 0, 1, h), 0, -1, h);
    if (cut.length < 6) {
      return;
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < cut.length; i += 2) {
      text.append(i == 0 ? "" : " ")
          .append(number(cut[i] + widthMm / 2))
          .append(',')
          .append(number(heightMm / 2 - cut[i + 1]));
    }
    shapes.add("<polygon points=\"%s\" fill=\"%s\"/>".formatted(text, fill));
    edges += cut.length / 2;
  }

  /** A leaf between two tips with cubic sides that bow by {@code halfWidthMm} of control offset. */
  void leaf(String fill, double x0, double y0, double x1, double y1, double halfWidthMm) {
    double length = StrictMath.hypot(x1 - x0, y1 - y0);
    double nx = -(y1 - y0) / length * halfWidthMm;
    double ny = (x1 - x0) / length * halfWidthMm;
    double ax = x0 + 0.35 * (x1 - x0);
    double ay = y0 + 0.35 * (y1 - y0);
    double bx = x0 + 0.75 * (x1 - x0);
    double by = y0 + 0.75 * (y1 - y0);
    shapes.add(
        "<path d=\"M%s C%s %s %s C%s %s %s Z\" fill=\"%s\"/>"
            .formatted(
                pair(x0, y0),
                pair(ax + nx, ay + ny),
                pair(bx + nx, by + ny),
                pair(x1, y1),
                pair(bx - nx, by - ny),
                pair(ax - nx, ay - ny),
                pair(x0, y0),
                fill));
    edges += 2;
  }

  /** The whole file. */
  String svg() {
    return """
        <?xml version="1.0" encoding="UTF-8"?>
        <svg xmlns="http://www.w3.org/2000/svg" width="%1$smm" height="%2$smm" viewBox="0 0 %1$s %2$s">
        <title>%3$s</title>
        <desc>Lantern Lane Theatre Workshop (invented). True size, 1 unit = 1 mm. Black is opaque film, white is clear.</desc>
        """
            .formatted(number(widthMm), number(heightMm), title)
        + String.join("\n", shapes)
        + "\n</svg>\n";
  }

  private String pair(double x, double y) {
    return number(x + widthMm / 2) + "," + number(heightMm / 2 - y);
  }

  /** Sutherland-Hodgman: keeps the part where nx x + ny y stays below the limit. */
  private static double[] cut(double[] xy, double nx, double ny, double limit) {
    List<Double> kept = new ArrayList<>();
    int n = xy.length / 2;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double a = nx * xy[2 * i] + ny * xy[2 * i + 1] - limit;
      double b = nx * xy[2 * j] + ny * xy[2 * j + 1] - limit;
      if (a <= 0) {
        kept.add(xy[2 * i]);
        kept.add(xy[2 * i + 1]);
      }
      if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
        double t = a / (a - b);
        kept.add(xy[2 * i] + t * (xy[2 * j] - xy[2 * i]));
        kept.add(xy[2 * i + 1] + t * (xy[2 * j + 1] - xy[2 * i + 1]));
      }
    }
    return kept.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** A length to the micrometre without needless zeros. */
  static String number(double mm) {
    long um = StrictMath.round(mm * 1000);
    String digits = "%04d".formatted(StrictMath.abs(um));
    int point = digits.length() - 3;
    String text = digits.substring(0, point) + "." + digits.substring(point);
    text = text.replaceFirst("\\.?0+$", "");
    return um < 0 ? "-" + text : text;
  }
}
