package org.amperskin.unroll;

import org.amperskin.geom.Vec3;

/** Linear maps from a face in space to the plane. */
final class Stretch {
  private Stretch() {}

  /**
   * A face in its own plane: first corner at the origin, second on the x axis.
   *
   * @param out {@code out[0]}: x of the second corner, {@code out[1], out[2]}: the third (mm)
   */
  static void flat(Patch patch, int i, double[] out) {
    Vec3 a = patch.point(patch.corner(i, 0));
    Vec3 u = patch.point(patch.corner(i, 1)).minus(a);
    Vec3 v = patch.point(patch.corner(i, 2)).minus(a);
    out[0] = u.length();
    out[1] = u.dot(v) / out[0];
    out[2] = u.cross(v).length() / out[0];
  }

  /**
   * The map's matrix, row by row.
   *
   * @param flat the face, as {@link #flat} gives it
   */
  static void matrix(CutPatch cut, int i, double[] xy, double[] flat, double[] out) {
    int a = cut.corner(i, 0);
    int b = cut.corner(i, 1);
    int c = cut.corner(i, 2);
    double ux = xy[2 * b] - xy[2 * a];
    double uy = xy[2 * b + 1] - xy[2 * a + 1];
    double vx = xy[2 * c] - xy[2 * a];
    double vy = xy[2 * c + 1] - xy[2 * a + 1];
    out[0] = ux / flat[0];
    out[2] = uy / flat[0];
    out[1] = (vx - out[0] * flat[1]) / flat[2];
    out[3] = (vy - out[2] * flat[1]) / flat[2];
  }

  /** Singular values, the second negative if the face is turned over. */
  static void values(double[] m, double[] out) {
    double e = (m[0] + m[3]) / 2;
    double f = (m[0] - m[3]) / 2;
    double g = (m[2] + m[1]) / 2;
    double h = (m[2] - m[1]) / 2;
    double q = Math.hypot(e, h);
    double r = Math.hypot(f, g);
    out[0] = q + r;
    out[1] = q - r;
  }

  static void of(CutPatch cut, int i, double[] xy, double[] out) {
    double[] flat = new double[3];
    double[] m = new double[4];
    flat(cut.patch(), i, flat);
    matrix(cut, i, xy, flat, m);
    values(m, out);
  }
}
