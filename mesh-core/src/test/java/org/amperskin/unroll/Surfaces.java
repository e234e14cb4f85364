package org.amperskin.unroll;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;

/** Surfaces of revolution and folded sheets as meshes, outward normals. */
final class Surfaces {
  private Surfaces() {}

  /** A place on a surface for two parameters from 0 to 1. */
  interface Chart {
    Vec3 at(double u, double v);
  }

  /**
   * A sheet of {@code columns x rows} squares, each cut in two.
   *
   * @param closed true to join its last column with the first
   */
  static SurfaceMesh sheet(int columns, int rows, boolean closed, Chart chart) {
    int across = closed ? columns : columns + 1;
    double[] p = new double[3 * across * (rows + 1)];
    for (int r = 0; r <= rows; r++) {
      for (int c = 0; c < across; c++) {
        Vec3 v = chart.at((double) c / columns, (double) r / rows);
        int at = 3 * (r * across + c);
        p[at] = v.x();
        p[at + 1] = v.y();
        p[at + 2] = v.z();
      }
    }
    int[] corners = new int[6 * columns * rows];
    int n = 0;
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        int a = r * across + c;
        int b = r * across + (c + 1) % across;
        int d = a + across;
        int e = b + across;
        for (int v :
            (r + c) % 2 == 0 ? new int[] {a, b, e, a, e, d} : new int[] {a, b, d, b, e, d}) {
          corners[n++] = v;
        }
      }
    }
    return SurfaceMesh.of(p, corners);
  }

  /** Round z; the radius runs from {@code r0} at z 0 to {@code r1} at {@code height}. */
  static SurfaceMesh tube(
      double r0, double r1, double height, double degrees, int columns, int rows) {
    boolean closed = degrees == 360;
    double whole = Math.toRadians(degrees);
    return sheet(
        columns,
        rows,
        closed,
        (u, v) -> {
          double t = (u - 0.5) * whole;
          double r = r0 + (r1 - r0) * v;
          return new Vec3(r * Math.cos(t), r * Math.sin(t), height * v);
        });
  }

  /** A cap of a sphere round +z, of angular radius {@code degrees}. */
  static SurfaceMesh cap(double radius, double degrees, int rings) {
    int[] start = new int[rings + 2];
    start[1] = 1;
    for (int r = 1; r <= rings; r++) {
      start[r + 1] = start[r] + 6 * r;
    }
    double[] p = new double[3 * start[rings + 1]];
    for (int r = 0; r <= rings; r++) {
      double a = Math.toRadians(degrees) * r / rings;
      for (int i = 0; i < Math.max(1, 6 * r); i++) {
        double t = 2 * Math.PI * i / Math.max(1, 6 * r);
        int at = 3 * (start[r] + i);
        p[at] = radius * Math.sin(a) * Math.cos(t);
        p[at + 1] = radius * Math.sin(a) * Math.sin(t);
        p[at + 2] = radius * Math.cos(a);
      }
    }
    int[] corners = new int[3 * 6 * rings * rings];
    int n = 0;
    for (int r = 1; r <= rings; r++) {
      for (int side = 0; side < 6; side++) {
        for (int i = 0; i < r; i++) {
          int outer = start[r] + side * r + i;
          int next = start[r] + (side * r + i + 1) % (6 * r);
          int inner = r == 1 ? 0 : start[r - 1] + (side * (r - 1) + i) % (6 * (r - 1));
          corners[n++] = outer;
          corners[n++] = next;
          corners[n++] = inner;
          if (i < r - 1) {
            int nextInner = start[r - 1] + (side * (r - 1) + i + 1) % (6 * (r - 1));
            corners[n++] = inner;
            corners[n++] = next;
            corners[n++] = nextInner;
          }
        }
      }
    }
    return SurfaceMesh.of(p, corners);
  }

  static boolean[] all(SurfaceMesh mesh) {
    boolean[] every = new boolean[mesh.faceCount()];
    java.util.Arrays.fill(every, true);
    return every;
  }
}
