package org.amperskin.viewer.view;

import org.amperskin.mesh.SurfaceMesh;

/**
 * Tells whether the inward side of any face can be seen from outside.
 *
 * <p>Definition: it can, unless every connected piece is closed, has neighbours that agree on which
 * side is out, and encloses a positive volume. Drawing the far sides doubles the work of a picture,
 * so well-made parts go without.
 *
 * <p>Method: pieces by union of the faces' vertices. In a closed and agreeing piece each edge runs
 * as often one way as the other; the sum of a 64-bit hash of the edge, plus one way and minus the
 * other, is then 0. A piece with open edges passes by chance once in 2^64, and would only be drawn
 * without its far sides.
 *
 * <p>Cost: two passes over the faces; 20 bytes a vertex.
 */
final class FarSides {
  private FarSides() {}

  static boolean canBeSeen(SurfaceMesh mesh) {
    int[] corners = mesh.corners();
    int[] piece = new int[mesh.vertexCount()];
    for (int v = 0; v < piece.length; v++) {
      piece[v] = v;
    }
    for (int i = 0; i < corners.length; i += 3) {
      int a = root(piece, corners[i]);
      int b = root(piece, corners[i + 1]);
      piece[Math.max(a, b)] = Math.min(a, b);
      int c = root(piece, corners[i + 2]);
      int d = Math.min(a, b);
      piece[Math.max(c, d)] = Math.min(c, d);
    }
    long[] unmatched = new long[piece.length];
    double[] volume = new double[piece.length];
    for (int i = 0; i < corners.length; i += 3) {
      int r = root(piece, corners[i]);
      for (int k = 0; k < 3; k++) {
        unmatched[r] += edge(corners[i + k], corners[i + (k + 1) % 3]);
      }
      volume[r] += sixVolumes(mesh, corners[i], corners[i + 1], corners[i + 2], r);
    }
    for (int i = 0; i < corners.length; i += 3) {
      int r = root(piece, corners[i]);
      if (unmatched[r] != 0 || !(volume[r] > 0)) {
        return true;
      }
    }
    return false;
  }

  private static int root(int[] piece, int v) {
    while (piece[v] != v) {
      piece[v] = piece[piece[v]];
      v = piece[v];
    }
    return v;
  }

  private static long edge(int from, int to) {
    long h = ((long) Math.min(from, to) << 32 | Math.max(from, to)) * 0x9E3779B97F4A7C15L;
    h = (h ^ h >>> 29) * 0xBF58476D1CE4E5B9L;
    h ^= h >>> 32;
    return from < to ? h : -h;
  }

  /** Six times the signed volume of the tetrahedron from vertex {@code o} (mm3). */
  private static double sixVolumes(SurfaceMesh m, int a, int b, int c, int o) {
    double ax = m.x(a) - m.x(o);
    double ay = m.y(a) - m.y(o);
    double az = m.z(a) - m.z(o);
    double bx = m.x(b) - m.x(o);
    double by = m.y(b) - m.y(o);
    double bz = m.z(b) - m.z(o);
    double cx = m.x(c) - m.x(o);
    double cy = m.y(c) - m.y(o);
    double cz = m.z(c) - m.z(o);
    return ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
}
