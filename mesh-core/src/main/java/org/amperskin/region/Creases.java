package org.amperskin.region;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.FaceJoins;
import org.amperskin.mesh.SurfaceMesh;

/** Skin between creases. */
final class Creases {
  private Creases() {}

  /**
   * The faces joined with the one nearest to a point, up to the creases.
   *
   * @param from the point (mm)
   * @param creaseDegrees faces that turn by more are not joined
   */
  static boolean[] grown(SurfaceMesh mesh, Vec3 from, double creaseDegrees) {
    int nearest = -1;
    double least = Double.POSITIVE_INFINITY;
    boolean[] every = new boolean[mesh.faceCount()];
    for (int f = 0; f < mesh.faceCount(); f++) {
      every[f] = true;
      double d = mesh.faceAreaMm2(f) > 0 ? distance(mesh, f, from) : Double.POSITIVE_INFINITY;
      if (d < least) {
        least = d;
        nearest = f;
      }
    }
    boolean[] grown = new boolean[mesh.faceCount()];
    if (nearest < 0) {
      return grown;
    }
    FaceJoins joins = FaceJoins.of(mesh, every);
    double flattest = Math.cos(Math.toRadians(creaseDegrees)) - 1e-12;
    int[] stack = new int[mesh.faceCount()];
    int top = 0;
    stack[top++] = nearest;
    grown[nearest] = true;
    while (top > 0) {
      int f = stack[--top];
      double[] n = mesh.unitNormal(f);
      for (int k = 0; k < 3; k++) {
        int g = joins.beside(f, k);
        if (g >= 0 && !grown[g]) {
          double[] m = mesh.unitNormal(g);
          if (n[0] * m[0] + n[1] * m[1] + n[2] * m[2] >= flattest) {
            grown[g] = true;
            stack[top++] = g;
          }
        }
      }
    }
    return grown;
  }

  /** Distance of a point from a triangle (mm): from its plane if it lies over it, else an edge. */
  private static double distance(SurfaceMesh mesh, int f, Vec3 p) {
    Vec3[] c = new Vec3[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(f, k);
      c[k] = mesh.point(v);
    }
    double[] u = mesh.unitNormal(f);
    Vec3 n = new Vec3(u[0], u[1], u[2]);
    boolean over = true;
    double edge = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      Vec3 e = c[(k + 1) % 3].minus(c[k]);
      Vec3 d = p.minus(c[k]);
      over &= n.cross(e).dot(d) >= 0;
      double t = e.dot(e) > 0 ? Math.max(0, Math.min(1, d.dot(e) / e.dot(e))) : 0;
      edge = Math.min(edge, d.minus(e.times(t)).length());
    }
    return over ? Math.abs(p.minus(c[0]).dot(n)) : edge;
  }
}
