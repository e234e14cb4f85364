package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;

/**
 * A path of straight lines, cubic curves and elliptical arcs, in any number of subpaths.
 *
 * <p>Arcs stay arcs (centre and two half axes that need not be perpendicular), so circles are not
 * bent into cubics; an affine map of such an arc is such an arc again, and exact.
 */
final class Contour {
  /** One piece; {@code line} and {@code cubic} carry points, an arc carries its ellipse. */
  private enum Kind {
    MOVE,
    LINE,
    CUBIC,
    ARC,
    CLOSE
  }

  private record Piece(Kind kind, List<Double> numbers) {}

  private final List<Piece> pieces = new ArrayList<>();
  private double startX;
  private double startY;
  private double x;
  private double y;
  private boolean open;

  double x() {
    return x;
  }

  double y() {
    return y;
  }

  /** Adds another path's pieces behind this one's. */
  void append(Contour other) {
    pieces.addAll(other.pieces);
    open = false;
  }

  boolean isEmpty() {
    return pieces.isEmpty();
  }

  void moveTo(double toX, double toY) {
    add(Kind.MOVE, toX, toY);
    startX = toX;
    startY = toY;
    open = true;
    go(toX, toY);
  }

  void lineTo(double toX, double toY) {
    reopen();
    add(Kind.LINE, toX, toY);
    go(toX, toY);
  }

  void quadTo(double cx, double cy, double toX, double toY) {
    cubicTo(
        x + 2 * (cx - x) / 3,
        y + 2 * (cy - y) / 3,
        toX + 2 * (cx - toX) / 3,
        toY + 2 * (cy - toY) / 3,
        toX,
        toY);
  }

  void cubicTo(double c1x, double c1y, double c2x, double c2y, double toX, double toY) {
    reopen();
    add(Kind.CUBIC, c1x, c1y, c2x, c2y, toX, toY);
    go(toX, toY);
  }

  /**
   * Arc {@code c + u cos t + v sin t} for t from t0 over sweep; it must begin where the path is.
   */
  void arc(
      double cx,
      double cy,
      double ux,
      double uy,
      double vx,
      double vy,
      double t0,
      double sweep,
      double toX,
      double toY) {
    reopen();
    add(Kind.ARC, cx, cy, ux, uy, vx, vy, t0, sweep, toX, toY);
    go(toX, toY);
  }

  /**
   * A whole ellipse, from angle 0, clockwise on a page whose y runs down, as W3C SVG 2 10.3 says.
   */
  void ellipse(double cx, double cy, double rx, double ry) {
    moveTo(cx + rx, cy);
    arc(cx, cy, rx, 0, 0, ry, 0, 2 * Math.PI, cx + rx, cy);
    close();
  }

  /** Elliptical arc by end points: W3C SVG 2, appendix B.2.4 and B.2.5 (same as SVG 1.1 F.6.5). */
  void arcTo(
      double radiusX,
      double radiusY,
      double turnDegrees,
      boolean large,
      boolean sweepUp,
      double toX,
      double toY) {
    if (x == toX && y == toY) {
      return;
    }
    double rx = Math.abs(radiusX);
    double ry = Math.abs(radiusY);
    if (rx == 0 || ry == 0) {
      lineTo(toX, toY);
      return;
    }
    double phi = Math.toRadians(turnDegrees % 360);
    double cos = Math.cos(phi);
    double sin = Math.sin(phi);
    double dx = (x - toX) / 2;
    double dy = (y - toY) / 2;
    double px = (cos * dx + sin * dy) / rx;
    double py = (-sin * dx + cos * dy) / ry;
    double lambda = px * px + py * py;
    double offset = 0;
    if (lambda > 1) {
      double grow = Math.sqrt(lambda);
      rx *= grow;
      ry *= grow;
      px /= grow;
      py /= grow;
    } else {
      offset = Math.sqrt((1 - lambda) / lambda) * (large == sweepUp ? -1 : 1);
    }
    // on the unit circle: end points (px, py) and (-px, -py), centre (qx, qy)
    double qx = offset * py;
    double qy = -offset * px;
    double from = Math.atan2(py - qy, px - qx);
    double sweep = Math.atan2(-py - qy, -px - qx) - from;
    if (sweepUp && sweep < 0) {
      sweep += 2 * Math.PI;
    } else if (!sweepUp && sweep > 0) {
      sweep -= 2 * Math.PI;
    }
    double cx = cos * rx * qx - sin * ry * qy + (x + toX) / 2;
    double cy = sin * rx * qx + cos * ry * qy + (y + toY) / 2;
    arc(cx, cy, rx * cos, rx * sin, -ry * sin, ry * cos, from, sweep, toX, toY);
  }

  void close() {
    if (open) {
      pieces.add(new Piece(Kind.CLOSE, List.of()));
      open = false;
      go(startX, startY);
    }
  }

  /** The same path under an affine map. */
  Contour mapped(AffineTransform map) {
    Contour out = new Contour();
    for (Piece piece : pieces) {
      List<Double> n = piece.numbers;
      switch (piece.kind) {
        case MOVE -> {
          Point2D p = at(map, n, 0);
          out.moveTo(p.getX(), p.getY());
        }
        case LINE -> {
          Point2D p = at(map, n, 0);
          out.lineTo(p.getX(), p.getY());
        }
        case CUBIC -> {
          Point2D p = at(map, n, 0);
          Point2D q = at(map, n, 2);
          Point2D r = at(map, n, 4);
          out.cubicTo(p.getX(), p.getY(), q.getX(), q.getY(), r.getX(), r.getY());
        }
        case ARC -> {
          Point2D c = at(map, n, 0);
          Point2D u = map.deltaTransform(new Point2D.Double(n.get(2), n.get(3)), null);
          Point2D v = map.deltaTransform(new Point2D.Double(n.get(4), n.get(5)), null);
          Point2D e = at(map, n, 8);
          out.arc(
              c.getX(), c.getY(), u.getX(), u.getY(), v.getX(), v.getY(), n.get(6), n.get(7),
              e.getX(), e.getY());
        }
        case CLOSE -> out.close();
      }
    }
    return out;
  }

  /**
   * Smallest upright box round the path (lines, curves and arcs themselves, not their control
   * points), as {x0, y0, x1, y1}; null for an empty path.
   */
  double[] bounds() {
    double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    double lastX = 0;
    double lastY = 0;
    double firstX = 0;
    double firstY = 0;
    for (Piece piece : pieces) {
      List<Double> n = piece.numbers;
      if (piece.kind == Kind.CLOSE) {
        lastX = firstX;
        lastY = firstY;
        continue;
      }
      double toX = n.get(piece.kind == Kind.ARC ? 8 : n.size() - 2);
      double toY = n.get(n.size() - 1);
      grow(box, toX, toY);
      switch (piece.kind) {
        case MOVE -> {
          firstX = toX;
          firstY = toY;
        }
        case CUBIC -> {
          growCubic(box, 0, lastX, n.get(0), n.get(2), toX);
          growCubic(box, 1, lastY, n.get(1), n.get(3), toY);
        }
        case ARC -> {
          growArc(box, 0, n.get(0), n.get(2), n.get(4), n.get(6), n.get(7));
          growArc(box, 1, n.get(1), n.get(3), n.get(5), n.get(6), n.get(7));
        }
        default -> {}
      }
      lastX = toX;
      lastY = toY;
    }
    return box[0] > box[2] ? null : box;
  }

  private static void grow(double[] box, double px, double py) {
    grow(box, 0, px);
    grow(box, 1, py);
  }

  private static void grow(double[] box, int axis, double value) {
    box[axis] = Math.min(box[axis], value);
    box[axis + 2] = Math.max(box[axis + 2], value);
  }

  /** Where the derivative of a cubic is zero within it. */
  private static void growCubic(
      double[] box, int axis, double p0, double p1, double p2, double p3) {
    double a = p3 - 3 * p2 + 3 * p1 - p0;
    double b = 2 * (p2 - 2 * p1 + p0);
    double c = p1 - p0;
    double root = Math.sqrt(Math.max(0, b * b - 4 * a * c));
    double q = -(b + Math.copySign(root, b)) / 2;
    for (double t : new double[] {q / a, c / q}) {
      if (t > 0 && t < 1) {
        double u = 1 - t;
        grow(box, axis, u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3);
      }
    }
  }

  private static void growArc(
      double[] box, int axis, double c, double u, double v, double t0, double sweep) {
    double peak = Math.atan2(v, u);
    for (int k = 0; k < 2; k++) {
      double t = peak + k * Math.PI;
      double from = Math.min(t0, t0 + sweep);
      double turns = Math.ceil((from - t) / (2 * Math.PI));
      double first = t + 2 * Math.PI * turns;
      if (first <= from + Math.abs(sweep)) {
        grow(box, axis, c + u * Math.cos(t) + v * Math.sin(t));
      }
    }
  }

  /** Chains of straight segments, one per subpath, made by the given flattener. */
  List<Chain> chains(Flattener flattener) {
    List<Chain> chains = new ArrayList<>();
    Chain.Builder now = null;
    double firstX = 0;
    double firstY = 0;
    double lastX = 0;
    double lastY = 0;
    for (Piece piece : pieces) {
      List<Double> n = piece.numbers;
      switch (piece.kind) {
        case MOVE -> {
          finish(now, false, chains);
          firstX = n.get(0);
          firstY = n.get(1);
          now = new Chain.Builder(firstX, firstY);
        }
        case LINE -> now.line(n.get(0), n.get(1));
        case CUBIC ->
            flattener.cubic(
                now,
                new double[] {lastX, n.get(0), n.get(2), n.get(4)},
                new double[] {lastY, n.get(1), n.get(3), n.get(5)});
        case ARC -> flattener.arc(now, n.stream().mapToDouble(Double::doubleValue).toArray());
        case CLOSE -> {
          finish(now, true, chains);
          now = null;
        }
      }
      if (piece.kind != Kind.CLOSE) {
        lastX = n.get(piece.kind == Kind.ARC ? 8 : n.size() - 2);
        lastY = n.get(n.size() - 1);
      } else {
        lastX = firstX;
        lastY = firstY;
      }
    }
    finish(now, false, chains);
    return chains;
  }

  private static void finish(Chain.Builder chain, boolean closed, List<Chain> into) {
    if (chain != null) {
      into.add(chain.build(closed));
    }
  }

  private static Point2D at(AffineTransform map, List<Double> n, int i) {
    return map.transform(new Point2D.Double(n.get(i), n.get(i + 1)), null);
  }

  /** After a close the next piece starts a new subpath at the old start, as SVG 2 9.3.4 says. */
  private void reopen() {
    if (!open) {
      moveTo(startX, startY);
    }
  }

  private void go(double toX, double toY) {
    x = toX;
    y = toY;
  }

  private void add(Kind kind, double... numbers) {
    List<Double> list = new ArrayList<>(numbers.length);
    for (double number : numbers) {
      SvgFault.unless(Math.abs(number) < 1e12, "a coordinate below 1e12", Double.toString(number));
      list.add(number);
    }
    pieces.add(new Piece(kind, list));
  }
}
