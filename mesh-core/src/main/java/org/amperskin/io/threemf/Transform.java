package org.amperskin.io.threemf;

/**
 * An affine map of points as rows: {@code (x y z 1) M}, where M has four rows of three.
 *
 * <p>Source: 3MF Core Specification 1.4, 3.3 3D Matrices.
 */
final class Transform {
  static final Transform IDENTITY =
      new Transform(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0});

  /** A matrix flatter than this, its rows brought to length one, counts as singular. */
  private static final double FLATTEST = 1e-12;

  /** {@code m[3*row+column]}. */
  private final double[] m;

  private Transform(double[] m) {
    this.m = m;
  }

  /**
   * From the twelve numbers of an attribute.
   *
   * @param m {@code m[3*row+column]}
   */
  static Transform of(double[] m) {
    return new Transform(m.clone());
  }

  static Transform scale(double factor) {
    return new Transform(new double[] {factor, 0, 0, 0, factor, 0, 0, 0, factor, 0, 0, 0});
  }

  /** This map and then another. */
  Transform then(Transform next) {
    if (this == IDENTITY) {
      return next;
    }
    if (next == IDENTITY) {
      return this;
    }
    double[] r = new double[12];
    for (int row = 0; row < 4; row++) {
      for (int c = 0; c < 3; c++) {
        double sum = row == 3 ? next.m[9 + c] : 0;
        for (int k = 0; k < 3; k++) {
          sum += m[3 * row + k] * next.m[3 * k + c];
        }
        r[3 * row + c] = sum;
      }
    }
    return new Transform(r);
  }

  double determinant() {
    return m[0] * (m[4] * m[8] - m[5] * m[7])
        - m[1] * (m[3] * m[8] - m[5] * m[6])
        + m[2] * (m[3] * m[7] - m[4] * m[6]);
  }

  /** Whether all points end up in one plane, or nearly, or nowhere. */
  boolean singular() {
    double rows = 1;
    for (int row = 0; row < 3; row++) {
      rows *= Math.hypot(Math.hypot(m[3 * row], m[3 * row + 1]), m[3 * row + 2]);
    }
    double d = Math.abs(determinant());
    return !(d > FLATTEST * rows) || Double.isInfinite(d);
  }

  boolean mirrors() {
    return determinant() < 0;
  }

  boolean identity() {
    return java.util.Arrays.equals(m, IDENTITY.m);
  }

  /** Coordinate {@code k} of the place where a point goes. */
  double apply(double x, double y, double z, int k) {
    return x * m[k] + y * m[3 + k] + z * m[6 + k] + m[9 + k];
  }
}
