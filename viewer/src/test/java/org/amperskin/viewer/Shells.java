package org.amperskin.viewer;

import org.amperskin.mesh.SurfaceMesh;

/** An invented visor: a band of a cylinder with thickness, for looking at. */
final class Shells {
  private Shells() {}

  static SurfaceMesh visor(double radius, double halfHeight, double wall, int around, int high) {
    int ring = 2 * (high + 1);
    double[] p = new double[3 * (around + 1) * ring];
    for (int i = 0; i <= around; i++) {
      double turn = Math.toRadians(-200 + 220.0 * i / around);
      for (int j = 0; j < ring; j++) {
        boolean inner = j > high;
        double h = inner ? 2 * high + 1 - j : j;
        double z = halfHeight * (2 * h / high - 1);
        double belly = 1 + 0.10 * Math.cos(Math.PI / 2 * z / halfHeight);
        double r = radius * belly - (inner ? wall : 0);
        int at = 3 * (i * ring + j);
        p[at] = r * Math.cos(turn);
        p[at + 1] = r * Math.sin(turn) * 0.8;
        p[at + 2] = z * (1 - 0.25 * Math.pow(Math.cos(turn), 2));
      }
    }
    int[] c = new int[6 * around * ring + 6 * (high) * 2];
    int n = 0;
    for (int i = 0; i < around; i++) {
      for (int j = 0; j < ring; j++) {
        int next = (j + 1) % ring;
        int a = i * ring + j;
        int b = (i + 1) * ring + j;
        int d = i * ring + next;
        int e = (i + 1) * ring + next;
        for (int v : new int[] {a, b, e, a, e, d}) {
          c[n++] = v;
        }
      }
    }
    for (int end = 0; end < 2; end++) {
      int base = end == 0 ? 0 : around * ring;
      for (int j = 0; j < high; j++) {
        int a = base + j;
        int b = base + j + 1;
        int d = base + ring - 1 - j;
        int e = base + ring - 2 - j;
        int[] quad = end == 0 ? new int[] {a, b, e, a, e, d} : new int[] {a, e, b, a, d, e};
        for (int v : quad) {
          c[n++] = v;
        }
      }
    }
    return SurfaceMesh.of(p, c);
  }

  /** Exposed lattice lines on the outside, masked between; rim stopped off, inside unreached. */
  static int visorRegion(SurfaceMesh mesh, int f) {
    double x = 0;
    double y = 0;
    double z = 0;
    for (int k = 0; k < 3; k++) {
      x += mesh.x(mesh.corner(f, k)) / 3;
      y += mesh.y(mesh.corner(f, k)) / 3;
      z += mesh.z(mesh.corner(f, k)) / 3;
    }
    double turn = Math.atan2(y / 0.8, x);
    double h = z / (1 - 0.25 * Math.pow(Math.cos(turn), 2)) / 44;
    double r = Math.hypot(x, y / 0.8);
    double middle = 90 * (1 + 0.10 * Math.cos(Math.PI / 2 * h)) - 0.8;
    if (r < middle) {
      return 3;
    }
    if (Math.abs(h) > 0.86) {
      return 2;
    }
    double u = turn * 90 / 11;
    double v = h * 44 / 11;
    double a = Math.abs(Math.IEEEremainder(u + v, 1));
    double b = Math.abs(Math.IEEEremainder(u - v, 1));
    return Math.min(a, b) < 0.13 ? 0 : 1;
  }
}
