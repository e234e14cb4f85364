package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Marks as filled figures: lines, rings, crosses, frames. */
final class Marks {
  /** Width of thin lines (mm). */
  static final double LINE_MM = 0.15;

  private static final int CIRCLE = 48;

  private Marks() {}

  static double[] bar(double x0, double y0, double x1, double y1) {
    return new double[] {x0, y0, x1, y0, x1, y1, x0, y1};
  }

  /** A line of a width around the axis-parallel segment. */
  static double[] line(double x0, double y0, double x1, double y1) {
    double half = LINE_MM / 2;
    return x0 == x1
        ? bar(x0 - half, Math.min(y0, y1), x0 + half, Math.max(y0, y1))
        : bar(Math.min(x0, x1), y0 - half, Math.max(x0, x1), y0 + half);
  }

  /** A cross of two lines as one figure. */
  static double[] cross(double x, double y, double arm) {
    double h = LINE_MM / 2;
    return new double[] {
      x + h, y - arm, x + h, y - h, x + arm, y - h, x + arm, y + h, x + h, y + h, x + h, y + arm,
      x - h, y + arm, x - h, y + h, x - arm, y + h, x - arm, y - h, x - h, y - h, x - h, y - arm
    };
  }

  /** A ring of a thin line. */
  static List<double[]> ring(double x, double y, double radius) {
    double[] outer = new double[2 * CIRCLE];
    double[] inner = new double[2 * CIRCLE];
    for (int i = 0; i < CIRCLE; i++) {
      double a = 2 * Math.PI * i / CIRCLE;
      double out = radius + LINE_MM / 2;
      double in = radius - LINE_MM / 2;
      outer[2 * i] = x + out * Math.cos(a);
      outer[2 * i + 1] = y + out * Math.sin(a);
      inner[2 * i] = x + in * Math.cos(-a);
      inner[2 * i + 1] = y + in * Math.sin(-a);
    }
    return List.of(outer, inner);
  }

  /** The frame of a rectangle, its line inside. */
  static List<double[]> frame(double x0, double y0, double x1, double y1) {
    double w = LINE_MM;
    return List.of(
        bar(x0, y0, x1, y1),
        new double[] {x0 + w, y0 + w, x0 + w, y1 - w, x1 - w, y1 - w, x1 - w, y0 + w});
  }

  /** A thin line along the outer side of a figure, so that it shades nothing inside. */
  static Outline beside(Outline figure) {
    return offset(figure, LINE_MM).minus(figure);
  }

  /** A thin line along the inner side of a figure. */
  static Outline inside(Outline figure) {
    return figure.minus(offset(figure, -LINE_MM));
  }

  private static Outline offset(Outline figure, double byMm) {
    BufferParameters sharp =
        new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 5);
    return Polygonal.outline(new BufferOp(figure.geometry(), sharp).getResultGeometry(byMm));
  }

  /** A scale bar of exactly this length, with a tick each centimetre, growing to the right. */
  static List<double[]> scaleBar(double x, double y, double length, double height) {
    List<double[]> rings = new ArrayList<>();
    rings.add(bar(x, y, x + length, y + height / 4));
    int parts = 10;
    double tick = 2 * LINE_MM;
    for (int i = 0; i <= parts; i++) {
      // the end ticks stand inside, so that outer edge to outer edge is the length
      double from = i == 0 ? x : i == parts ? x + length - tick : x + length * i / parts - tick / 2;
      double top = i % 5 == 0 ? y + height : y + 0.7 * height;
      rings.add(bar(from, y + height / 4, from + tick, top));
    }
    return rings;
  }

  /** The same growing upward, its ticks to the left of {@code x}. */
  static List<double[]> uprightScaleBar(double x, double y, double length, double height) {
    List<double[]> rings = new ArrayList<>();
    for (double[] ring : scaleBar(0, 0, length, height)) {
      double[] turned = new double[ring.length];
      for (int i = 0; i < ring.length; i += 2) {
        turned[i] = x - ring[i + 1];
        turned[i + 1] = y + ring[i];
      }
      rings.add(turned);
    }
    return rings;
  }
}
