package org.amperskin.pattern;

import java.util.Arrays;

/**
 * Cuts a closed ring to the sheet without changing any winding number inside it.
 *
 * <p>Method: Sutherland and Hodgman, "Reentrant polygon clipping", Comm. ACM 17 (1974), one side of
 * the sheet after the other. What leaves the sheet runs along its border instead, so the ring stays
 * closed and winds as often around every inner point as before; it may then run along the border
 * twice, which the arrangement sorts out.
 */
final class SheetCut {
  private SheetCut() {}

  static double[] cut(double[] ring, double halfWidthMm, double halfHeightMm) {
    double[] limits = {halfWidthMm, halfWidthMm, halfHeightMm, halfHeightMm};
    double[] now = ring;
    for (int side = 0; side < 4 && now.length > 0; side++) {
      int axis = side / 2;
      double sign = side % 2 == 0 ? 1 : -1;
      if (reachesBeyond(now, axis, sign, limits[side])) {
        now = keepBelow(now, axis, sign, limits[side]);
      }
    }
    return now;
  }

  private static boolean reachesBeyond(double[] ring, int axis, double sign, double limit) {
    for (int i = axis; i < ring.length; i += 2) {
      if (sign * ring[i] > limit) {
        return true;
      }
    }
    return false;
  }

  private static double[] keepBelow(double[] ring, int axis, double sign, double limit) {
    double[] out = new double[2 * ring.length + 4];
    int size = 0;
    int other = 1 - axis;
    for (int p = 0, q = ring.length - 2; p < ring.length; q = p, p += 2) {
      double before = sign * ring[q + axis];
      double here = sign * ring[p + axis];
      if ((before > limit) != (here > limit)) {
        double part = (limit - before) / (here - before);
        out[size + axis] = sign * limit;
        out[size + other] = ring[q + other] + part * (ring[p + other] - ring[q + other]);
        size += 2;
      }
      if (here <= limit) {
        out[size++] = ring[p];
        out[size++] = ring[p + 1];
      }
    }
    return Arrays.copyOf(out, size);
  }
}
