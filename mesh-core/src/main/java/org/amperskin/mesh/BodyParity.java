package org.amperskin.mesh;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.amperskin.geom.BoxTree;
import org.amperskin.geom.Predicates;

/**
 * Tells inside which closed bodies a point lies.
 *
 * <p>Definition: a point is inside a closed body if a half-line from it crosses the body's surface
 * an odd number of times; that does not depend on which way the faces look.
 *
 * <p>Guaranteed: crossings are decided by exact predicates in the plane square to the half-line; a
 * half-line that meets an edge gives no answer. Not guaranteed: points nearer to a face than
 * rounding.
 *
 * <p>Cost: a few microseconds a question. Safe for many threads.
 */
public final class BodyParity {
  private static final int TRIES = 16;

  private final SurfaceMesh mesh;
  private final BoxTree tree;
  private final int[] bodyOf;
  private final boolean[] bodyOpen;

  BodyParity(SurfaceMesh mesh, BoxTree tree, int[] bodyOf, boolean[] bodyOpen) {
    this.mesh = mesh;
    this.tree = tree;
    this.bodyOf = bodyOf;
    this.bodyOpen = bodyOpen;
  }

  /** For a diagnosed mesh whose overlaps were looked for. */
  public static BodyParity of(MeshDiagnosis diagnosis) {
    int faces = diagnosis.mesh().faceCount();
    int[] bodyOf = new int[faces];
    for (int f = 0; f < faces; f++) {
      bodyOf[f] = diagnosis.bodyOf(f);
    }
    boolean[] open = new boolean[diagnosis.bodies().size()];
    for (int b = 0; b < open.length; b++) {
      open[b] = !diagnosis.bodies().get(b).closed();
    }
    return new BodyParity(diagnosis.mesh(), diagnosis.tree().orElseThrow(), bodyOf, open);
  }

  /**
   * The closed bodies around a point, rising; null if the half-line meets an edge.
   *
   * @param axis the half-line's axis (0, 1, 2), upward
   * @param skip faces that do not count
   */
  public int[] around(int axis, double x, double y, double z, IntPredicate skip) {
    Crossings crossings = new Crossings(axis, new double[] {x, y, z}, skip);
    tree.alongAxis(axis, x, y, z, crossings);
    return crossings.unclear ? null : crossings.odd();
  }

  /** True if a face lies inside a closed body other than its own. */
  boolean insideAnother(int face) {
    int own = bodyOf[face];
    for (int attempt = 0; attempt < TRIES; attempt++) {
      // Points of the face in general position: weights that share no simple ratio.
      double u = 0.31 + 0.017 * attempt;
      double v = 0.29 - 0.0123 * attempt;
      double w = 1 - u - v;
      int a = mesh.corner(face, 0);
      int b = mesh.corner(face, 1);
      int c = mesh.corner(face, 2);
      int[] odd =
          around(
              attempt % 3,
              u * mesh.x(a) + v * mesh.x(b) + w * mesh.x(c),
              u * mesh.y(a) + v * mesh.y(b) + w * mesh.y(c),
              u * mesh.z(a) + v * mesh.z(b) + w * mesh.z(c),
              f -> bodyOf[f] == own);
      if (odd != null) {
        return odd.length > 0;
      }
    }
    return false;
  }

  private final class Crossings implements BoxTree.FaceVisitor {
    private final int axis;
    private final int second;
    private final int third;
    private final double[] from;
    private final IntPredicate skip;
    private int[] bodies = new int[4];
    private int count;
    private boolean unclear;

    Crossings(int axis, double[] from, IntPredicate skip) {
      this.axis = axis;
      this.second = (axis + 1) % 3;
      this.third = (axis + 2) % 3;
      this.from = from;
      this.skip = skip;
    }

    @Override
    public void face(int f) {
      int body = bodyOf[f];
      if (body < 0 || bodyOpen[body] || skip.test(f)) {
        return;
      }
      double[] p = mesh.positions();
      int a = 3 * mesh.corner(f, 0);
      int b = 3 * mesh.corner(f, 1);
      int c = 3 * mesh.corner(f, 2);
      int s0 = turn(p, a, b);
      int s1 = turn(p, b, c);
      int s2 = turn(p, c, a);
      boolean left = s0 >= 0 && s1 >= 0 && s2 >= 0;
      boolean right = s0 <= 0 && s1 <= 0 && s2 <= 0;
      if (!left && !right) {
        return;
      }
      if (s0 == 0 || s1 == 0 || s2 == 0) {
        unclear |= Math.max(p[a + axis], Math.max(p[b + axis], p[c + axis])) >= from[axis];
      } else if (ahead(p, a, b, c)) {
        add(body);
      }
    }

    private int turn(double[] p, int a, int b) {
      return Predicates.orient2d(
          p[a + second], p[a + third], p[b + second], p[b + third], from[second], from[third]);
    }

    private boolean ahead(double[] p, int a, int b, int c) {
      double u1 = p[b + second] - p[a + second];
      double u2 = p[b + third] - p[a + third];
      double v1 = p[c + second] - p[a + second];
      double v2 = p[c + third] - p[a + third];
      double w1 = from[second] - p[a + second];
      double w2 = from[third] - p[a + third];
      double det = u1 * v2 - u2 * v1;
      double s = (w1 * v2 - w2 * v1) / det;
      double t = (u1 * w2 - u2 * w1) / det;
      double at = p[a + axis] + s * (p[b + axis] - p[a + axis]) + t * (p[c + axis] - p[a + axis]);
      return at > from[axis];
    }

    private void add(int body) {
      if (count == bodies.length) {
        bodies = Arrays.copyOf(bodies, 2 * count);
      }
      bodies[count++] = body;
    }

    int[] odd() {
      Arrays.sort(bodies, 0, count);
      int[] odd = new int[count];
      int n = 0;
      int i = 0;
      while (i < count) {
        int j = i;
        while (j < count && bodies[j] == bodies[i]) {
          j++;
        }
        if ((j - i) % 2 == 1) {
          odd[n++] = bodies[i];
        }
        i = j;
      }
      return Arrays.copyOf(odd, n);
    }
  }
}
