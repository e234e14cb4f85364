package org.amperskin.demo;

import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.InputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Clear share of a drawing, by the JDK's own shape arithmetic: rectangles, circles, polygons and
 * cubic paths painted in order, black opaque and white clear.
 */
record ArtworkAreas(double widthMm, double heightMm, int edges, double clearFraction) {
  static ArtworkAreas read(InputStream in) throws Exception {
    Document svg = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in);
    Element root = svg.getDocumentElement();
    double width = millimetres(root.getAttribute("width"));
    double height = millimetres(root.getAttribute("height"));
    String[] box = root.getAttribute("viewBox").split(" ");
    if (Double.parseDouble(box[2]) != width || Double.parseDouble(box[3]) != height) {
      throw new IllegalStateException("viewBox is not in mm: " + root.getAttribute("viewBox"));
    }
    Rectangle2D sheet = new Rectangle2D.Double(0, 0, width, height);
    Area black = new Area();
    int edges = 0;
    for (Node n = root.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element e && e.hasAttribute("fill")) {
        Area shape = shape(e);
        edges += segments(shape);
        if (e.getAttribute("fill").equals("#000000")) {
          black.add(shape);
        } else {
          black.subtract(shape);
        }
      }
    }
    black.intersect(new Area(sheet));
    return new ArtworkAreas(width, height, edges, 1 - area(black) / (width * height));
  }

  private static double millimetres(String text) {
    if (!text.endsWith("mm")) {
      throw new IllegalStateException("not in mm: " + text);
    }
    return Double.parseDouble(text.substring(0, text.length() - 2));
  }

  private static Area shape(Element e) {
    switch (e.getTagName()) {
      case "rect":
        return new Area(
            new Rectangle2D.Double(at(e, "x"), at(e, "y"), at(e, "width"), at(e, "height")));
      case "circle":
        double r = at(e, "r");
        return new Area(new Ellipse2D.Double(at(e, "cx") - r, at(e, "cy") - r, 2 * r, 2 * r));
      case "polygon":
        return new Area(path("M" + e.getAttribute("points").replaceFirst(" ", " L") + " Z"));
      case "path":
        return new Area(path(e.getAttribute("d")));
      default:
        throw new IllegalStateException("unknown shape " + e.getTagName());
    }
  }

  private static Path2D path(String d) {
    Path2D path = new Path2D.Double();
    String[] words = d.replaceAll("([MLCZ])", " $1 ").trim().split("[ ,]+");
    String command = "";
    for (int i = 0; i < words.length; ) {
      if (words[i].matches("[MLCZ]")) {
        command = words[i++];
      }
      switch (command) {
        case "M" -> path.moveTo(number(words, i), number(words, i + 1));
        case "L" -> path.lineTo(number(words, i), number(words, i + 1));
        case "C" ->
            path.curveTo(
                number(words, i),
                number(words, i + 1),
                number(words, i + 2),
                number(words, i + 3),
                number(words, i + 4),
                number(words, i + 5));
        default -> path.closePath();
      }
      i += command.equals("Z") ? 0 : command.equals("C") ? 6 : 2;
    }
    return path;
  }

  private static double number(String[] words, int i) {
    return Double.parseDouble(words[i]);
  }

  private static double at(Element e, String name) {
    return Double.parseDouble(e.getAttribute(name));
  }

  private static int segments(Area shape) {
    int count = 0;
    double[] c = new double[6];
    for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
      int kind = i.currentSegment(c);
      count += kind == PathIterator.SEG_MOVETO ? 0 : 1;
    }
    return count;
  }

  private static double area(Area shape) {
    double twice = 0;
    double[] c = new double[6];
    double sx = 0;
    double sy = 0;
    double x = 0;
    double y = 0;
    for (PathIterator i = shape.getPathIterator(new AffineTransform(), 1e-4);
        !i.isDone();
        i.next()) {
      int kind = i.currentSegment(c);
      if (kind == PathIterator.SEG_MOVETO) {
        sx = c[0];
        sy = c[1];
      } else {
        double tx = kind == PathIterator.SEG_CLOSE ? sx : c[0];
        double ty = kind == PathIterator.SEG_CLOSE ? sy : c[1];
        twice += x * ty - tx * y;
        c[0] = tx;
        c[1] = ty;
      }
      x = c[0];
      y = c[1];
    }
    return Math.abs(twice) / 2;
  }
}
