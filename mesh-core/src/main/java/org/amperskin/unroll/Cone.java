package org.amperskin.unroll;

import org.amperskin.geom.Vec3;

/**
 * A cylinder or cone and the plane it unrolls to.
 *
 * <p>Definition: at height z along {@code axis} from {@code point} the radius is {@code radiusMm +
 * z tan(half-angle)}; half-angle 0 is a cylinder. Who looks at it square from outside (from inside
 * if {@code inside}), with the axis up, sees the unrolled plane: x to the right, y up, origin at
 * {@code front} and height 0.
 *
 * <p>Guaranteed: unrolling keeps lengths on the surface itself; {@code depth} is the distance from
 * it (mm), larger farther from the viewer.
 *
 * @param point a point of the axis (mm)
 * @param axis its direction, the film's upright
 * @param front direction square to the axis in which x is 0
 * @param radiusMm radius at {@code point}
 * @param halfAngleDegrees angle between axis and surface; positive if it widens upward
 * @param inside true if the surface is looked at from the axis, as a bore is
 */
public record Cone(
    Vec3 point, Vec3 axis, Vec3 front, double radiusMm, double halfAngleDegrees, boolean inside) {
  private static final double STRAIGHT_DEGREES = 0.01;

  /** Checks the values; makes the directions square to each other. */
  public Cone {
    axis = axis.unit();
    front = front.minus(axis.times(front.dot(axis))).unit();
    if (!(radiusMm > 0) || Double.isInfinite(radiusMm)) {
      throw new IllegalArgumentException("radius " + radiusMm + " mm");
    }
    if (!(Math.abs(halfAngleDegrees) < 80)) {
      throw new IllegalArgumentException(
          "half-angle " + halfAngleDegrees + " deg: below 80 fits, flatter cones are nearly plane");
    }
  }

  /** True if it is taken as a cylinder. */
  public boolean isCylinder() {
    return Math.abs(halfAngleDegrees) < STRAIGHT_DEGREES;
  }

  /** The same cone, its surface moved outward by a distance (mm), negative for inward. */
  public Cone grown(double mm) {
    double cos = isCylinder() ? 1 : Math.cos(Math.toRadians(halfAngleDegrees));
    return new Cone(point, axis, front, radiusMm + mm / cos, halfAngleDegrees, inside);
  }

  /** The same cone with another front. */
  public Cone facing(Vec3 newFront) {
    return new Cone(point, axis, newFront, radiusMm, halfAngleDegrees, inside);
  }

  /** Signed distance from the surface (mm), positive away from the axis. */
  public double distance(Vec3 p) {
    Vec3 d = p.minus(point);
    double z = d.dot(axis);
    double r = d.minus(axis.times(z)).length();
    double a = isCylinder() ? 0 : Math.toRadians(halfAngleDegrees);
    return (r - radiusMm) * Math.cos(a) - z * Math.sin(a);
  }

  /** Angle round the axis from the front (rad), growing with x, within -pi to pi. */
  public double turn(Vec3 p) {
    Vec3 d = p.minus(point);
    return Math.atan2(d.dot(right()), d.dot(front));
  }

  private Vec3 right() {
    return inside ? front.cross(axis) : axis.cross(front);
  }

  /**
   * Unrolls a point.
   *
   * @param turn its angle as {@link #turn} gives it, or that a whole turn on
   * @param out {@code out[0..2]}: x, y, depth (mm)
   */
  public void unroll(Vec3 p, double turn, double[] out) {
    Vec3 d = p.minus(point);
    double z = d.dot(axis);
    double r = d.minus(axis.times(z)).length();
    double away;
    if (isCylinder()) {
      out[0] = radiusMm * turn;
      out[1] = z;
      away = r - radiusMm;
    } else {
      double a = Math.toRadians(halfAngleDegrees);
      double sin = Math.sin(a);
      double cos = Math.cos(a);
      // Along the surface from the apex; its sign tells on which side of the origin the apex lies.
      double origin = radiusMm / sin;
      double along = (r - radiusMm) * sin + z * cos + origin;
      double phi = turn * sin;
      out[0] = along * Math.sin(phi);
      out[1] = along * Math.cos(phi) - origin;
      away = (r - radiusMm) * cos - z * sin;
    }
    out[2] = inside ? away : -away;
  }
}
