package org.amperskin.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/** A convex polygon that planes across one coordinate cut smaller (Sutherland and Hodgman). */
final class Polygon {
  private List<double[]> corners;

  Polygon(double[]... corners) {
    this.corners = new ArrayList<>(Arrays.asList(corners));
  }

  int size() {
    return corners.size();
  }

  double[] corner(int i) {
    return corners.get(i);
  }

  void each(Consumer<double[]> change) {
    corners.forEach(change);
  }

  /** Keeps what has {@code sign * coordinate[axis] >= limit}. */
  void cut(int axis, int sign, double limit) {
    if (corners.isEmpty() || limit == Double.NEGATIVE_INFINITY) {
      return;
    }
    List<double[]> kept = new ArrayList<>(corners.size() + 1);
    double[] before = corners.get(corners.size() - 1);
    for (double[] here : corners) {
      double was = sign * before[axis] - limit;
      double is = sign * here[axis] - limit;
      if (was >= 0 != is >= 0) {
        kept.add(was >= 0 ? between(before, here, was, is) : between(here, before, is, was));
      }
      if (is >= 0) {
        kept.add(here);
      }
      before = here;
    }
    corners = kept;
  }

  /** The crossing, always reckoned from the kept side so that neighbours agree. */
  private static double[] between(double[] in, double[] out, double inBy, double outBy) {
    double t = inBy / (inBy - outBy);
    return new double[] {
      in[0] + t * (out[0] - in[0]), in[1] + t * (out[1] - in[1]), in[2] + t * (out[2] - in[2])
    };
  }
}
