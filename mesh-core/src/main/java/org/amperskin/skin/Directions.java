package org.amperskin.skin;

/**
 * Directions over a half-space, evenly spread and the same in every run.
 *
 * <p>Method: a two-dimensional low-discrepancy sequence (M. Roberts, The Unreasonable Effectiveness
 * of Quasirandom Sequences, 2018, from memory), mapped to the cosine-weighted hemisphere, so that
 * each direction stands for the same share of what a plane sees.
 */
final class Directions {
  private static final double PLASTIC = 1.32471795724474602596;

  private Directions() {}

  /**
   * Direction number {@code index} about a normal.
   *
   * @param out receives x, y, z
   * @param shift starts another sequence
   */
  static void about(double nx, double ny, double nz, int index, int shift, double[] out) {
    double u = fraction(0.5 + (index + 1) / PLASTIC + 0.6180339887498949 * shift);
    double v = fraction(0.5 + (index + 1) / (PLASTIC * PLASTIC) + 0.7548776662466927 * shift);
    // Not nearer than 3 degrees to the face: there a ray says more of rounding than of the part.
    double z = Math.sqrt(1 - 0.997 * u);
    double r = Math.sqrt(1 - z * z);
    double c = r * Math.cos(2 * Math.PI * v);
    double s = r * Math.sin(2 * Math.PI * v);
    // An orthonormal basis about the normal (Duff and others, JCGT 6, 2017, from memory).
    double sign = Math.copySign(1.0, nz);
    double a = -1 / (sign + nz);
    double b = nx * ny * a;
    out[0] = c * (1 + sign * nx * nx * a) + s * b + z * nx;
    out[1] = c * sign * b + s * (sign + ny * ny * a) + z * ny;
    out[2] = -c * sign * nx - s * ny + z * nz;
  }

  private static double fraction(double v) {
    return v - Math.floor(v);
  }
}
