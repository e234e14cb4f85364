package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.amperskin.pattern.Artwork;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * A figure in the plane, bounded by straight-edged rings in millimetres: what a film covers, what
 * of it is black, what a blade follows.
 *
 * <p>Guaranteed: outlines run counter-clockwise, holes clockwise, so that the figure lies on the
 * left; rings do not cross. Equal input gives equal rings in the same order.
 *
 * <p>Not guaranteed: a figure without rings is allowed and has no area.
 *
 * <p>Method: OverlayNG of JTS for intersections and differences, in full double precision where it
 * succeeds (snapping otherwise, see {@code OverlayNGRobust}).
 *
 * <p>Cost: O(n log n) for figures whose edges cross a bounded number of times.
 */
public final class Outline {
  private final List<double[]> rings;

  private Outline(List<double[]> rings) {
    this.rings = List.copyOf(rings);
  }

  /**
   * A figure from its rings.
   *
   * @param rings {@code x0, y0, x1, y1, ...} (mm), closed implicitly, the figure on the left; kept,
   *     not copied
   */
  public static Outline of(List<double[]> rings) {
    for (double[] ring : rings) {
      if (ring.length < 6 || ring.length % 2 != 0) {
        throw new IllegalArgumentException("a ring of " + ring.length / 2.0 + " points");
      }
    }
    return new Outline(rings);
  }

  /** The opaque figure of artwork. */
  public static Outline ofArtwork(Artwork artwork) {
    List<double[]> rings = new ArrayList<>();
    int[] starts = artwork.ringStarts();
    for (int r = 0; r < artwork.ringCount(); r++) {
      rings.add(java.util.Arrays.copyOfRange(artwork.xy(), 2 * starts[r], 2 * starts[r + 1]));
    }
    return new Outline(rings);
  }

  /** A rectangle. */
  public static Outline box(Extent e) {
    return new Outline(
        List.of(
            new double[] {
              e.minX(), e.minY(), e.maxX(), e.minY(), e.maxX(), e.maxY(), e.minX(), e.maxY()
            }));
  }

  /** Rings {@code x0, y0, x1, y1, ...} (mm). Read only. */
  public List<double[]> rings() {
    return rings;
  }

  /** True without any ring. */
  public boolean isEmpty() {
    return rings.isEmpty();
  }

  /** Area (mm2). */
  public double areaMm2() {
    double sum = 0;
    for (double[] ring : rings) {
      sum += areaMm2(ring);
    }
    return sum;
  }

  /** Signed area of a ring (mm2). */
  static double areaMm2(double[] ring) {
    double twice = 0;
    for (int i = 2; i + 3 < ring.length; i += 2) {
      twice +=
          (ring[i] - ring[0]) * (ring[i + 3] - ring[1])
              - (ring[i + 2] - ring[0]) * (ring[i + 1] - ring[1]);
    }
    return twice / 2;
  }

  /** Length of all rings (mm). */
  public double lengthMm() {
    double sum = 0;
    for (double[] ring : rings) {
      for (int i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
        sum += Math.hypot(ring[i] - ring[j], ring[i + 1] - ring[j + 1]);
      }
    }
    return sum;
  }

  /** Number of points. */
  public int pointCount() {
    return rings.stream().mapToInt(r -> r.length / 2).sum();
  }

  /** The smallest rectangle round it. */
  public Extent extent() {
    if (rings.isEmpty()) {
      throw new IllegalArgumentException("no extent: the figure has 0 rings");
    }
    return Extent.around(rings);
  }

  /** What lies in both. */
  public Outline and(Outline other) {
    if (isEmpty() || other.isEmpty()) {
      return new Outline(List.of());
    }
    return Polygonal.outline(
        OverlayNGRobust.overlay(geometry(), other.geometry(), OverlayNG.INTERSECTION));
  }

  /** What of it lies in a rectangle; the very same figure if all of it does. */
  public Outline within(Extent box) {
    return isEmpty() || box.holds(extent()) ? this : and(box(box));
  }

  /** What lies in it and not in the other. */
  public Outline minus(Outline other) {
    if (isEmpty() || other.isEmpty()) {
      return this;
    }
    return Polygonal.outline(
        OverlayNGRobust.overlay(geometry(), other.geometry(), OverlayNG.DIFFERENCE));
  }

  /** What lies in one or both. */
  public Outline or(Outline other) {
    if (isEmpty() || other.isEmpty()) {
      return isEmpty() ? other : this;
    }
    return Polygonal.outline(
        OverlayNGRobust.overlay(geometry(), other.geometry(), OverlayNG.UNION));
  }

  /** Mirrored left and right about a vertical line. */
  public Outline mirrored(double aboutX) {
    return mapped(
        ring -> {
          double[] out = new double[ring.length];
          for (int i = 0; i < ring.length; i += 2) {
            out[ring.length - 2 - i] = 2 * aboutX - ring[i];
            out[ring.length - 1 - i] = ring[i + 1];
          }
          return out;
        });
  }

  /** Scaled about the origin by positive factors, then moved. */
  public Outline moved(double factorX, double factorY, double dx, double dy) {
    return mapped(
        ring -> {
          double[] out = new double[ring.length];
          for (int i = 0; i < ring.length; i += 2) {
            out[i] = factorX * ring[i] + dx;
            out[i + 1] = factorY * ring[i + 1] + dy;
          }
          return out;
        });
  }

  private Outline mapped(UnaryOperator<double[]> map) {
    return new Outline(rings.stream().map(map).toList());
  }

  /** The same as a JTS polygon or multipolygon. */
  Geometry geometry() {
    return Polygonal.geometry(rings);
  }
}
