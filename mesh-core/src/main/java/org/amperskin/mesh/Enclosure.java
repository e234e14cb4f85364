package org.amperskin.mesh;

import java.util.HashMap;
import java.util.Map;
import org.amperskin.geom.BoxTree;
import org.amperskin.geom.Predicates;

/**
 * Tells whether a face lies inside a closed body other than its own.
 *
 * <p>Method: signed crossings of a half-line with every other closed body (winding number), decided
 * by exact predicates; a half-line that meets an edge is replaced by another one from the same
 * face.
 */
final class Enclosure {
  private static final int TRIES = 16;

  private final SurfaceMesh mesh;
  private final BoxTree tree;
  private final int[] bodyOf;
  private final boolean[] bodyOpen;

  Enclosure(SurfaceMesh mesh, BoxTree tree, int[] bodyOf, boolean[] bodyOpen) {
    this.mesh = mesh;
    this.tree = tree;
    this.bodyOf = bodyOf;
    this.bodyOpen = bodyOpen;
  }

  boolean enclosed(int face) {
    for (int attempt = 0; attempt < TRIES; attempt++) {
      // Points of the face in general position: weights that share no simple ratio.
      double u = 0.31 + 0.017 * attempt;
      double v = 0.29 - 0.0123 * attempt;
      double w = 1 - u - v;
      int a = mesh.corner(face, 0);
      int b = mesh.corner(face, 1);
      int c = mesh.corner(face, 2);
      double x = u * mesh.x(a) + v * mesh.x(b) + w * mesh.x(c);
      double y = u * mesh.y(a) + v * mesh.y(b) + w * mesh.y(c);
      double z = u * mesh.z(a) + v * mesh.z(b) + w * mesh.z(c);
      Crossings crossings = new Crossings(x, y, z, bodyOf[face]);
      tree.alongX(x, y, z, crossings);
      if (!crossings.unclear) {
        return crossings.windings.values().stream().anyMatch(n -> n != 0);
      }
    }
    return false;
  }

  private final class Crossings implements BoxTree.FaceVisitor {
    private final double x;
    private final double y;
    private final double z;
    private final int own;
    private final Map<Integer, Integer> windings = new HashMap<>();
    private boolean unclear;

    Crossings(double x, double y, double z, int own) {
      this.x = x;
      this.y = y;
      this.z = z;
      this.own = own;
    }

    @Override
    public void face(int f) {
      int body = bodyOf[f];
      if (body < 0 || body == own || bodyOpen[body]) {
        return;
      }
      int a = mesh.corner(f, 0);
      int b = mesh.corner(f, 1);
      int c = mesh.corner(f, 2);
      int s0 = turn(a, b);
      int s1 = turn(b, c);
      int s2 = turn(c, a);
      boolean left = s0 >= 0 && s1 >= 0 && s2 >= 0;
      boolean right = s0 <= 0 && s1 <= 0 && s2 <= 0;
      if (!left && !right) {
        return;
      }
      if (s0 == 0 || s1 == 0 || s2 == 0) {
        unclear |= Math.max(mesh.x(a), Math.max(mesh.x(b), mesh.x(c))) >= x;
        return;
      }
      if (ahead(a, b, c)) {
        windings.merge(body, left ? 1 : -1, Integer::sum);
      }
    }

    private int turn(int a, int b) {
      return Predicates.orient2d(mesh.y(a), mesh.z(a), mesh.y(b), mesh.z(b), y, z);
    }

    private boolean ahead(int a, int b, int c) {
      double uy = mesh.y(b) - mesh.y(a);
      double uz = mesh.z(b) - mesh.z(a);
      double vy = mesh.y(c) - mesh.y(a);
      double vz = mesh.z(c) - mesh.z(a);
      double det = uy * vz - uz * vy;
      double s = ((y - mesh.y(a)) * vz - (z - mesh.z(a)) * vy) / det;
      double t = (uy * (z - mesh.z(a)) - uz * (y - mesh.y(a))) / det;
      return mesh.x(a) + s * (mesh.x(b) - mesh.x(a)) + t * (mesh.x(c) - mesh.x(a)) > x;
    }
  }
}
