package org.amperskin.geom;

/**
 * Where a point lies in a triangle: the triangle's second and third corner's weights, the first
 * one's being the rest.
 *
 * <p>Guaranteed: for points of the triangle's plane the corners so weighted give the point; others
 * are first dropped square onto the plane. Not guaranteed: anything for a triangle without area.
 *
 * @param second weight of the second corner
 * @param third weight of the third corner
 */
public record Barycentric(double second, double third) {
  /** Of a point in the triangle a, b, c. */
  public static Barycentric of(Vec3 a, Vec3 b, Vec3 c, Vec3 point) {
    Vec3 u = b.minus(a);
    Vec3 v = c.minus(a);
    Vec3 d = point.minus(a);
    double uu = u.dot(u);
    double uv = u.dot(v);
    double vv = v.dot(v);
    double det = uu * vv - uv * uv;
    return new Barycentric(
        (d.dot(u) * vv - d.dot(v) * uv) / det, (d.dot(v) * uu - d.dot(u) * uv) / det);
  }

  /** Weight of the first corner. */
  public double first() {
    return 1 - second - third;
  }

  /** The smallest of the three weights: negative outside the triangle. */
  public double smallest() {
    return Math.min(second, Math.min(third, first()));
  }
}
