package org.amperskin.pattern.motif;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * Collects the outlines that a motif draws.
 *
 * <p>Definition: what is drawn is where the winding number of all outlines is not zero; outlines
 * run counter-clockwise, holes clockwise.
 *
 * <p>Method: arcs become chords whose inner points are moved outward until the sector keeps its
 * area, as the readers of drawings do: without this a dot of 1 mm drawn to 0.01 mm would come out
 * 2.5 % too small.
 */
public final class Pencil {
  private final double toleranceMm;
  private final List<double[]> rings = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private boolean gaps;
  private double worstMm;
  private double longMm;
  private double highMm;

  /**
   * @param toleranceMm largest distance between a curve and its polygon (mm)
   */
  Pencil(double toleranceMm) {
    this.toleranceMm = toleranceMm;
  }

  /** Outlines {@code x0, y0, x1, y1, ...} (mm). */
  List<double[]> rings() {
    return rings;
  }

  /** Largest distance so far between a curve and its polygon (mm). */
  double worstMm() {
    return worstMm;
  }

  double toleranceMm() {
    return toleranceMm;
  }

  void strayed(double byMm) {
    worstMm = Math.max(worstMm, byMm);
  }

  /** From now on the outlines bound what lies between the lines. */
  void drawsGaps() {
    gaps = true;
  }

  boolean drewGaps() {
    return gaps;
  }

  void note(String text) {
    notes.add(text);
  }

  /** Says how large a single figure is, about the origin (mm). */
  void spans(double wideMm, double tallMm) {
    longMm = wideMm;
    highMm = tallMm;
  }

  /** Whether the outlines are those of letters: with holes, and perhaps overlapping. */
  boolean lettered() {
    return longMm > 0;
  }

  /** What was assumed, and what half a window of this size (mm) cuts off. */
  List<String> notes(double halfWidthMm, double halfHeightMm) {
    List<String> all = new ArrayList<>(notes);
    if (longMm > 2 * halfWidthMm || highMm > 2 * halfHeightMm) {
      all.add(
          "the lettering is %s x %s mm: the sheet of %s x %s mm cuts it off"
              .formatted(
                  number(longMm),
                  number(highMm),
                  number(2 * halfWidthMm),
                  number(2 * halfHeightMm)));
    }
    return all;
  }

  void ring(double... xy) {
    rings.add(xy);
  }

  void rectangle(double left, double bottom, double right, double top) {
    ring(left, bottom, right, bottom, right, top, left, top);
  }

  /** A full circle; the same polygon wherever it lies. */
  void disc(double x, double y, double radiusMm) {
    int n = 4 * Math.max(2, (int) Math.ceil(steps(radiusMm, 2 * Math.PI) / 4.0));
    double each = 2 * Math.PI / n;
    double r = radiusMm * Math.sqrt(each / Math.sin(each));
    strayed(Math.max(r - radiusMm, radiusMm - r * Math.cos(each / 2)));
    double[] xy = new double[2 * n];
    for (int i = 0; i < n; i++) {
      xy[2 * i] = x + r * Math.cos(i * each);
      xy[2 * i + 1] = y + r * Math.sin(i * each);
    }
    ring(xy);
  }

  /**
   * Points of an arc, both ends included, area kept.
   *
   * @param from angle of the first point (rad)
   * @param sweep angle to the last, negative for clockwise (rad)
   */
  double[] arc(double x, double y, double radiusMm, double from, double sweep) {
    int n = Math.max(2, steps(radiusMm, Math.abs(sweep)));
    double each = sweep / n;
    double grow = growth(Math.abs(each), n);
    strayed(radiusMm * Math.max(1 - Math.cos(each / 2), grow - 1));
    double[] xy = new double[2 * n + 2];
    for (int i = 0; i <= n; i++) {
      double r = i == 0 || i == n ? radiusMm : grow * radiusMm;
      xy[2 * i] = x + r * Math.cos(from + i * each);
      xy[2 * i + 1] = y + r * Math.sin(from + i * each);
    }
    return xy;
  }

  private int steps(double radiusMm, double sweep) {
    // inner points may stray by 4/3 of the sagitta
    double room = 0.7 * toleranceMm;
    double step = Math.PI / 4;
    if (radiusMm > room) {
      step = Math.min(step, 2 * Math.acos(1 - room / radiusMm));
    }
    return (int) Math.ceil(sweep / step - 1e-9);
  }

  /** Factor for inner points: n triangles of angle d then have the sector's area. */
  private static double growth(double d, int n) {
    double ratio = d / Math.sin(d);
    if (n == 2) {
      return ratio;
    }
    double m = n - 2;
    return (Math.sqrt(1 + m * n * ratio) - 1) / m;
  }

  /** A number with up to six digits, without an exponent or idle zeros. */
  static String number(double value) {
    if (!Double.isFinite(value)) {
      return String.valueOf(value);
    }
    BigDecimal rounded = new BigDecimal(value, new MathContext(6));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
