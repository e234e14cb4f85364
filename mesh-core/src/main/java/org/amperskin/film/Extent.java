package org.amperskin.film;

import java.util.List;

/**
 * An axis-aligned rectangle in a plane.
 *
 * @param minX left (mm)
 * @param minY bottom (mm)
 * @param maxX right (mm), not left of {@code minX}
 * @param maxY top (mm), not below {@code minY}
 */
public record Extent(double minX, double minY, double maxX, double maxY) {
  /** Checks the order. */
  public Extent {
    if (!(minX <= maxX && minY <= maxY) || Double.isInfinite(maxX - minX + maxY - minY)) {
      throw new IllegalArgumentException(
          "rectangle from (" + minX + ", " + minY + ") to (" + maxX + ", " + maxY + ") mm");
    }
  }

  /** The smallest rectangle round rings {@code x0, y0, x1, y1, ...} (mm); at least one point. */
  static Extent around(List<double[]> rings) {
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    for (double[] ring : rings) {
      for (int i = 0; i < ring.length; i += 2) {
        x0 = Math.min(x0, ring[i]);
        x1 = Math.max(x1, ring[i]);
        y0 = Math.min(y0, ring[i + 1]);
        y1 = Math.max(y1, ring[i + 1]);
      }
    }
    return new Extent(x0, y0, x1, y1);
  }

  /** Width (mm). */
  public double width() {
    return maxX - minX;
  }

  /** Height (mm). */
  public double height() {
    return maxY - minY;
  }

  /** Area (mm2). */
  public double areaMm2() {
    return width() * height();
  }

  /** Middle, across (mm). */
  public double centreX() {
    return (minX + maxX) / 2;
  }

  /** Middle, upward (mm). */
  public double centreY() {
    return (minY + maxY) / 2;
  }

  /** Larger by a margin on every side. */
  public Extent grown(double marginMm) {
    return new Extent(minX - marginMm, minY - marginMm, maxX + marginMm, maxY + marginMm);
  }

  /** The smallest rectangle round both. */
  public Extent with(Extent o) {
    return new Extent(
        Math.min(minX, o.minX),
        Math.min(minY, o.minY),
        Math.max(maxX, o.maxX),
        Math.max(maxY, o.maxY));
  }

  /** Whether the other lies in it, borders included. */
  public boolean holds(Extent o) {
    return o.minX >= minX && o.maxX <= maxX && o.minY >= minY && o.maxY <= maxY;
  }
}
