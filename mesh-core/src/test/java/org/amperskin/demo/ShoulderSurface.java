package org.amperskin.demo;

import static org.amperskin.demo.MidSurface.ease;

/**
 * Middle surface of the invented shoulder plate: a dome with a raised panel whose flutes fan out
 * from the neck side, and an edge rolled outward.
 *
 * <p>Definition: the unit disk of (u, v) is the dome; from radius 1 to {@link #RADIUS} the surface
 * goes round the roll, whose radius is {@link #ROLL_MM}. The outside looks toward -y, z is up.
 * Lengths in mm.
 */
final class ShoulderSurface implements MidSurface {
  /** Radius of the parameter disk: the end of the roll. */
  static final double RADIUS = 1.2;

  /** Radius of the roll, to the middle of the plate (mm). */
  static final double ROLL_MM = 4.6;

  private static final double ROLL_RADIANS = StrictMath.toRadians(205);
  private final MidSurface dome = ShoulderSurface::dome;

  @Override
  public double[] at(double u, double v) {
    double radius = StrictMath.sqrt(u * u + v * v);
    if (radius <= 1) {
      return dome(u, v);
    }
    double qu = u / radius;
    double qv = v / radius;
    double[] normal = dome.normal(qu, qv);
    double[] du = dome.alongU(qu, qv);
    double[] dv = dome.alongV(qu, qv);
    double[] rim = MidSurface.step(new double[3], -qv, du, qu, dv);
    double[] outward = MidSurface.unit(MidSurface.cross(rim, normal));
    double turn = (radius - 1) / (RADIUS - 1) * ROLL_RADIANS;
    double out = ROLL_MM * StrictMath.sin(turn);
    double up = ROLL_MM * (1 - StrictMath.cos(turn));
    return MidSurface.step(dome(qu, qv), out, outward, up, normal);
  }

  private static double[] dome(double u, double v) {
    double u2 = u * u;
    double v2 = v * v;
    double x = 67.5 * u * (1 + 0.14 * v2) * (1 + 0.13 * v);
    double z = 59 * v * (1 + 0.12 * u2) + 9 * u2 - 4;
    double r2 = u2 + v2;
    double bowl = 42 * (0.62 * u2 + 0.50 * v2 + 0.16 * r2 * r2) - 4 * v;
    return new double[] {x, bowl - reliefMm(u, v) - 10, z};
  }

  private static double reliefMm(double u, double v) {
    double r2 = u * u + v * v;
    double panel = 1 - ease(0.36, 0.64, r2);
    // The fan's pivot lies beyond the neck-side edge, where the flutes have faded.
    double fanV = 1.30 - v;
    double turn = StrictMath.atan2(u, fanV);
    double reach = StrictMath.sqrt(u * u + fanV * fanV);
    double flutes = StrictMath.cos(22 * turn) * ease(0.60, 1.30, reach);
    return (3.2 + 1.7 * flutes) * panel;
  }
}
