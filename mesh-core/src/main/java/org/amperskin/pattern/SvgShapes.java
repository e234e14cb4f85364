package org.amperskin.pattern;

/** Outlines of the basic shapes and paths: W3C SVG 2 chapters 9 and 10. */
final class SvgShapes {
  /** Lengths in user units; percent hang on the viewport. */
  interface Lengths {
    double along(SvgNode node, String attribute, char direction, double otherwise);
  }

  private SvgShapes() {}

  static boolean isShape(String name) {
    return switch (name) {
      case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon" -> true;
      default -> false;
    };
  }

  /** The outline; empty if the shape is not to be drawn. */
  static Contour outline(SvgNode node, Lengths lengths) {
    return switch (node.name) {
      case "path" -> path(node);
      case "rect" -> rect(node, lengths);
      case "circle" -> {
        double r = size(node, "r", lengths.along(node, "r", 'd', 0));
        yield ellipse(node, lengths, r, r);
      }
      case "ellipse" -> {
        double rx = size(node, "rx", lengths.along(node, "rx", 'x', 0));
        double ry = size(node, "ry", lengths.along(node, "ry", 'y', 0));
        boolean autoX = automatic(node, "rx");
        boolean autoY = automatic(node, "ry");
        yield ellipse(node, lengths, autoX ? ry : rx, autoY ? rx : ry);
      }
      case "line" -> {
        Contour line = new Contour();
        line.moveTo(lengths.along(node, "x1", 'x', 0), lengths.along(node, "y1", 'y', 0));
        line.lineTo(lengths.along(node, "x2", 'x', 0), lengths.along(node, "y2", 'y', 0));
        yield line;
      }
      default -> points(node);
    };
  }

  private static Contour path(SvgNode node) {
    String d = node.get("d", "");
    return d.equals("none") ? new Contour() : SvgPathText.read(d);
  }

  private static Contour points(SvgNode node) {
    double[] n = SvgNumbers.list(node.get("points", ""));
    SvgFault.unless(n.length % 2 == 0, "an even number of values in points", n.length + " values");
    Contour out = new Contour();
    for (int i = 0; i < n.length; i += 2) {
      if (i == 0) {
        out.moveTo(n[0], n[1]);
      } else {
        out.lineTo(n[i], n[i + 1]);
      }
    }
    if (node.name.equals("polygon") && n.length > 0) {
      out.close();
    }
    return out;
  }

  private static Contour ellipse(SvgNode node, Lengths lengths, double rx, double ry) {
    Contour out = new Contour();
    if (rx > 0 && ry > 0) {
      out.ellipse(lengths.along(node, "cx", 'x', 0), lengths.along(node, "cy", 'y', 0), rx, ry);
    }
    return out;
  }

  private static Contour rect(SvgNode node, Lengths lengths) {
    double x = lengths.along(node, "x", 'x', 0);
    double y = lengths.along(node, "y", 'y', 0);
    double w = size(node, "width", lengths.along(node, "width", 'x', 0));
    double h = size(node, "height", lengths.along(node, "height", 'y', 0));
    if (w == 0 || h == 0) {
      return new Contour();
    }
    double rx = size(node, "rx", lengths.along(node, "rx", 'x', 0));
    double ry = size(node, "ry", lengths.along(node, "ry", 'y', 0));
    double roundX = Math.min(w / 2, automatic(node, "rx") ? ry : rx);
    double roundY = Math.min(h / 2, automatic(node, "ry") ? rx : ry);
    if (roundX == 0 || roundY == 0) {
      return box(x, y, w, h);
    }
    Contour out = new Contour();
    double q = Math.PI / 2;
    out.moveTo(x + roundX, y);
    out.lineTo(x + w - roundX, y);
    out.arc(x + w - roundX, y + roundY, roundX, 0, 0, roundY, -q, q, x + w, y + roundY);
    out.lineTo(x + w, y + h - roundY);
    out.arc(x + w - roundX, y + h - roundY, roundX, 0, 0, roundY, 0, q, x + w - roundX, y + h);
    out.lineTo(x + roundX, y + h);
    out.arc(x + roundX, y + h - roundY, roundX, 0, 0, roundY, q, q, x, y + h - roundY);
    out.lineTo(x, y + roundY);
    out.arc(x + roundX, y + roundY, roundX, 0, 0, roundY, 2 * q, q, x + roundX, y);
    out.close();
    return out;
  }

  /** An upright rectangle. */
  static Contour box(double x, double y, double width, double height) {
    Contour out = new Contour();
    out.moveTo(x, y);
    out.lineTo(x + width, y);
    out.lineTo(x + width, y + height);
    out.lineTo(x, y + height);
    out.close();
    return out;
  }

  private static boolean automatic(SvgNode node, String attribute) {
    return node.get(attribute, "auto").equals("auto");
  }

  private static double size(SvgNode node, String attribute, double value) {
    SvgFault.unless(value >= 0, attribute + " of 0 or more", node.get(attribute, ""));
    return value;
  }
}
