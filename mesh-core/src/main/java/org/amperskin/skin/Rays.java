package org.amperskin.skin;

import java.util.function.IntPredicate;
import org.amperskin.geom.BoxTree;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Straight lines of sight between faces.
 *
 * <p>Guaranteed: a ray does not slip between two faces with a common edge: both decide it by the
 * same products (S. Woop, C. Benthin, I. Wald, Watertight Ray/Triangle Intersection, Journal of
 * Computer Graphics Techniques 2 (2013), from memory).
 *
 * <p>Cost: a few microseconds a ray. One object for each thread.
 */
final class Rays implements BoxTree.RayVisitor {
  private final SurfaceMesh mesh;
  private final BoxTree tree;
  private final IntPredicate absent;
  private double ox;
  private double oy;
  private double oz;
  private int kx;
  private int ky;
  private int kz;
  private double sx;
  private double sy;
  private double sz;
  private IntPredicate skip;
  private int hit;
  private boolean hitFront;
  private double distance;

  /**
   * Prepares rays.
   *
   * @param absent faces that are not there
   */
  Rays(SurfaceMesh mesh, BoxTree tree, IntPredicate absent) {
    this.mesh = mesh;
    this.tree = tree;
    this.absent = absent;
  }

  /**
   * The first face on a ray, -1 if it gets away.
   *
   * @param skip faces the ray starts on
   */
  int first(double x, double y, double z, double dx, double dy, double dz, IntPredicate skip) {
    ox = x;
    oy = y;
    oz = z;
    double ax = Math.abs(dx);
    double ay = Math.abs(dy);
    double az = Math.abs(dz);
    kz = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
    kx = (kz + 1) % 3;
    ky = (kx + 1) % 3;
    double along = component(kz, dx, dy, dz);
    if (along < 0) {
      int k = kx;
      kx = ky;
      ky = k;
    }
    sx = component(kx, dx, dy, dz) / along;
    sy = component(ky, dx, dy, dz) / along;
    sz = 1 / along;
    this.skip = skip;
    hit = -1;
    tree.alongRay(x, y, z, dx, dy, dz, this);
    return hit;
  }

  /** Distance to the face hit last, in lengths of the direction. */
  double distance() {
    return distance;
  }

  /** True if the face hit last was met on its front. */
  boolean hitFront() {
    return hitFront;
  }

  private static double component(int k, double x, double y, double z) {
    return k == 0 ? x : k == 1 ? y : z;
  }

  @Override
  public double face(int f, double farthest) {
    if (absent.test(f) || skip.test(f)) {
      return farthest;
    }
    double[] p = mesh.positions();
    int a = 3 * mesh.corner(f, 0);
    int b = 3 * mesh.corner(f, 1);
    int c = 3 * mesh.corner(f, 2);
    double okx = component(kx, ox, oy, oz);
    double oky = component(ky, ox, oy, oz);
    double okz = component(kz, ox, oy, oz);
    double az = p[a + kz] - okz;
    double bz = p[b + kz] - okz;
    double cz = p[c + kz] - okz;
    double ax = p[a + kx] - okx - sx * az;
    double ay = p[a + ky] - oky - sy * az;
    double bx = p[b + kx] - okx - sx * bz;
    double by = p[b + ky] - oky - sy * bz;
    double cx = p[c + kx] - okx - sx * cz;
    double cy = p[c + ky] - oky - sy * cz;
    double u = cx * by - cy * bx;
    double v = ax * cy - ay * cx;
    double w = bx * ay - by * ax;
    if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) {
      return farthest;
    }
    double det = u + v + w;
    if (det == 0) {
      return farthest;
    }
    double t = (u * sz * az + v * sz * bz + w * sz * cz) / det;
    if (!(t > 0) || t >= farthest) {
      return farthest;
    }
    hit = f;
    hitFront = det > 0;
    distance = t;
    return t;
  }
}
