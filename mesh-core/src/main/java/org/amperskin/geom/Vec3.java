package org.amperskin.geom;

/**
 * A point or a direction in space.
 *
 * @param x first component, mm for a point
 * @param y second component, mm for a point
 * @param z third component, mm for a point
 */
public record Vec3(double x, double y, double z) {
  /** Checks that the components are finite. */
  public Vec3 {
    if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(z)) {
      throw new IllegalArgumentException("not finite: " + x + ", " + y + ", " + z);
    }
  }

  /** This plus {@code o}. */
  public Vec3 plus(Vec3 o) {
    return new Vec3(x + o.x, y + o.y, z + o.z);
  }

  /** This minus {@code o}. */
  public Vec3 minus(Vec3 o) {
    return new Vec3(x - o.x, y - o.y, z - o.z);
  }

  /** This times {@code factor}. */
  public Vec3 times(double factor) {
    return new Vec3(x * factor, y * factor, z * factor);
  }

  /** Scalar product. */
  public double dot(Vec3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  /** Vector product. */
  public Vec3 cross(Vec3 o) {
    return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  /** Euclidean length. */
  public double length() {
    return Math.sqrt(dot(this));
  }

  /** The same direction with length one; the zero vector is refused. */
  public Vec3 unit() {
    double l = length();
    if (l == 0) {
      throw new IllegalArgumentException("direction " + this + " has no length");
    }
    return times(1 / l);
  }
}
