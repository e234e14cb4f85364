package org.amperskin.skin;

import java.util.Arrays;
import org.amperskin.mesh.SurfaceMesh;

/** Small geometry of a face's two sides. */
final class SideProbe {
  /** No face at all. */
  static final int[] NOTHING = {};

  private SideProbe() {}

  /** True if a short list holds a face. */
  static boolean contains(int[] list, int face) {
    for (int f : list) {
      if (f == face) {
        return true;
      }
    }
    return false;
  }

  /** A point of a face in general position: half-lines through a regular mesh miss its edges. */
  static double[] within(SurfaceMesh mesh, int f) {
    double[] c = new double[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(f, k);
      double w = k == 0 ? 0.3317 : k == 1 ? 0.3549 : 0.3134;
      c[0] += w * mesh.x(v);
      c[1] += w * mesh.y(v);
      c[2] += w * mesh.z(v);
    }
    return c;
  }

  /** The axis a normal lies nearest to. */
  static int axis(double[] n) {
    double x = Math.abs(n[0]);
    double y = Math.abs(n[1]);
    double z = Math.abs(n[2]);
    return x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  }

  /**
   * Bodies around a point after passing through faces of some bodies.
   *
   * @param around rising
   * @param passed one entry a face passed
   */
  static int[] toggled(int[] around, int[] passed) {
    int[] result = around;
    for (int body : passed) {
      int at = Arrays.binarySearch(result, body);
      int[] next;
      if (at >= 0) {
        next = new int[result.length - 1];
        System.arraycopy(result, 0, next, 0, at);
        System.arraycopy(result, at + 1, next, at, next.length - at);
      } else {
        int to = -1 - at;
        next = new int[result.length + 1];
        System.arraycopy(result, 0, next, 0, to);
        next[to] = body;
        System.arraycopy(result, to, next, to + 1, result.length - to);
      }
      result = next;
    }
    return result;
  }
}
