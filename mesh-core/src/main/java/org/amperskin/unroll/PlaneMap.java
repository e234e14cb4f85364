package org.amperskin.unroll;

import org.amperskin.geom.Vec3;

/**
 * The linear map that takes a face in space to a place in the plane.
 *
 * <p>Definition: the face lies in its own plane, its first corner at the origin, its second on the
 * x axis; the matrix {@code m0 m1 / m2 m3} takes that plane to the other. Stretches are its
 * singular values, plane millimetres for one millimetre of face. Exact for flat faces; not for
 * faces without area.
 *
 * @param m0 upper left entry
 * @param m1 upper right entry
 * @param m2 lower left entry
 * @param m3 lower right entry
 */
public record PlaneMap(double m0, double m1, double m2, double m3) {
  /**
   * A face in its own plane.
   *
   * @param secondX x of the second corner (mm)
   * @param thirdX x of the third corner (mm)
   * @param thirdY y of the third corner (mm)
   */
  public record Flat(double secondX, double thirdX, double thirdY) {
    /** Of the triangle a, b, c. */
    public static Flat of(Vec3 a, Vec3 b, Vec3 c) {
      Vec3 u = b.minus(a);
      Vec3 v = c.minus(a);
      double length = u.length();
      return new Flat(length, u.dot(v) / length, u.cross(v).length() / length);
    }
  }

  /**
   * Of a face and the places of its second and third corner from the first one's.
   *
   * @param ux place of the second corner across, from the first (mm)
   * @param uy upward
   * @param vx place of the third corner across, from the first (mm)
   * @param vy upward
   */
  public static PlaneMap of(Flat face, double ux, double uy, double vx, double vy) {
    double m0 = ux / face.secondX();
    double m2 = uy / face.secondX();
    return new PlaneMap(
        m0,
        (vx - m0 * face.thirdX()) / face.thirdY(),
        m2,
        (vy - m2 * face.thirdX()) / face.thirdY());
  }

  /**
   * The two stretches.
   *
   * @param out {@code out[0]} the larger; {@code out[1]} the smaller, negative if the face is
   *     turned over
   */
  public void stretches(double[] out) {
    double e = (m0 + m3) / 2;
    double f = (m0 - m3) / 2;
    double g = (m2 + m1) / 2;
    double h = (m2 - m1) / 2;
    double q = Math.hypot(e, h);
    double r = Math.hypot(f, g);
    out[0] = q + r;
    out[1] = q - r;
  }
}
