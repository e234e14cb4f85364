package org.amperskin.demo;

import static org.amperskin.demo.MidSurface.bell;
import static org.amperskin.demo.MidSurface.ease;

/**
 * Middle surface of the invented visor: a band bent round the face, with a brow ridge, a nose keel,
 * two cheek lines and a raised border.
 *
 * <p>Definition: u runs from the wearer's right temple (-1) to the left (1), v from the lower edge
 * (-1) to the upper (1). The face looks toward -y, z is up. Lengths in mm.
 */
final class VisorSurface implements MidSurface {
  private static final double HALF_TURN_RADIANS = 1.50;
  private static final double HALF_WIDTH_MM = 91.6;
  private static final double DEPTH_MM = 85.8;

  @Override
  public double[] at(double u, double v) {
    double u2 = u * u;
    double upperMm = 46.5 - 17 * u2 + 4 * u2 * u2;
    double lowerMm = -46.5 + 34 * u2 - 9 * u2 * u2;
    double z = (upperMm + lowerMm) / 2 + v * (upperMm - lowerMm) / 2;
    double bulge = 1 - 0.075 * ((z - 6) / 46) * ((z - 6) / 46) + 0.02 * z / 46;
    double reliefMm = reliefMm(u, v);
    double turn = u * HALF_TURN_RADIANS;
    double sin = StrictMath.sin(turn);
    double cos = StrictMath.cos(turn);
    // A little fuller than an ellipse in front of the cheeks, as a face is.
    double full = 1 + 0.045 * StrictMath.sin(2 * turn) * StrictMath.sin(2 * turn);
    double x = (HALF_WIDTH_MM * bulge * full + reliefMm) * sin;
    double y = -(DEPTH_MM * bulge * full + reliefMm) * cos;
    return new double[] {x, y + 42, z};
  }

  /** Height of the eye slit's middle line over u. */
  static double slitMiddle(double u) {
    return 0.20 + 0.16 * u * u;
  }

  private static double reliefMm(double u, double v) {
    double above = v - slitMiddle(u);
    double temples = 1 - ease(0.72, 0.98, StrictMath.abs(u));
    double brow = 6.0 * bell(above - 0.30 - 0.10 * bell(u, 0.25), 0.15) * temples;
    double underBrow = ease(0.10, -0.35, above);
    double keel = 8.5 * bell(u, 0.10) * underBrow;
    double forehead = 3.0 * bell(u, 0.07) * ease(0.30, 0.60, above);
    double cheek = -0.42 + 0.75 * u * u - v;
    double side = ease(0.10, 0.30, StrictMath.abs(u)) * temples;
    double cheekLine = 3.6 * ease(-0.16, 0.16, cheek) * side;
    double edge = StrictMath.pow(StrictMath.pow(u, 6) + StrictMath.pow(v, 6), 1.0 / 6);
    double border = 1.5 * ease(0.83, 0.93, edge);
    return brow + keel + forehead - cheekLine + border;
  }
}
