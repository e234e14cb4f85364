package org.amperskin.demo;

/**
 * The middle of a thin shell as a map from flat parameters (u, v) to space.
 *
 * <p>Definition: {@link #at} gives the point (mm); the outward side is the one from which u runs
 * right and v runs up. Guaranteed by the implementations here: once continuously differentiable, so
 * that the normal exists everywhere. Method: normals by central differences, in strict arithmetic,
 * so that every machine gets the same bits. Cost: five evaluations a normal.
 */
interface MidSurface {
  /** Step of the central differences, in parameter units. */
  double STEP = 1e-5;

  /** The point at (u, v), {x, y, z} in mm. */
  double[] at(double u, double v);

  /** Derivative by u (mm per parameter unit). */
  default double[] alongU(double u, double v) {
    return slope(at(u - STEP, v), at(u + STEP, v));
  }

  /** Derivative by v (mm per parameter unit). */
  default double[] alongV(double u, double v) {
    return slope(at(u, v - STEP), at(u, v + STEP));
  }

  /** Outward unit normal at (u, v). */
  default double[] normal(double u, double v) {
    return unit(cross(alongU(u, v), alongV(u, v)));
  }

  private static double[] slope(double[] from, double[] to) {
    return new double[] {
      (to[0] - from[0]) / (2 * STEP), (to[1] - from[1]) / (2 * STEP), (to[2] - from[2]) / (2 * STEP)
    };
  }

  /** Cross product. */
  static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  /** Length of a vector. */
  static double length(double[] a) {
    return StrictMath.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
  }

  /** The vector at length one. */
  static double[] unit(double[] a) {
    double length = length(a);
    return new double[] {a[0] / length, a[1] / length, a[2] / length};
  }

  /** The point {@code p + s a + t b}. */
  static double[] step(double[] p, double s, double[] a, double t, double[] b) {
    return new double[] {
      p[0] + s * a[0] + t * b[0], p[1] + s * a[1] + t * b[1], p[2] + s * a[2] + t * b[2]
    };
  }

  /** A step from 0 to 1 with flat ends between {@code from} and {@code to}. */
  static double ease(double from, double to, double x) {
    double t = StrictMath.max(0, StrictMath.min(1, (x - from) / (to - from)));
    return t * t * (3 - 2 * t);
  }

  /** The bell {@code exp(-(x / width)^2)}. */
  static double bell(double x, double width) {
    return StrictMath.exp(-(x / width) * (x / width));
  }
}
