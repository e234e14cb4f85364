package org.amperskin.region;

import java.util.Arrays;
import java.util.List;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Collects the pieces that one stretch of faces is cut into; buffers are then joined in order.
 *
 * <p>Whole faces keep their vertices; cut pieces get new ones, on the plane of their face.
 */
final class PieceBuffer {
  private int[] corners = new int[3 * 256];
  private int[] sources = new int[256];
  private int[] codes = new int[256];
  private int pieces;
  private double[] points = new double[3 * 256];
  private int pointCount;

  /** Keeps face {@code face} of the input whole. */
  void whole(SurfaceMesh mesh, int face, int code) {
    piece(mesh.corner(face, 0), mesh.corner(face, 1), mesh.corner(face, 2), face, code);
  }

  /**
   * Adds a convex polygon lying on a face.
   *
   * @param weights barycentric weights of corner i in the face: {@code weights[3*i+k]}
   * @param n number of corners
   */
  void polygon(SurfaceMesh mesh, int face, double[] weights, int n, int code) {
    int first = pointCount;
    if (3 * (pointCount + n) > points.length) {
      points = Arrays.copyOf(points, 2 * (points.length + 3 * n));
    }
    for (int i = 0; i < n; i++) {
      double px = 0;
      double py = 0;
      double pz = 0;
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(face, k);
        double w = weights[3 * i + k];
        px += w * mesh.x(v);
        py += w * mesh.y(v);
        pz += w * mesh.z(v);
      }
      points[3 * pointCount] = px;
      points[3 * pointCount + 1] = py;
      points[3 * pointCount + 2] = pz;
      pointCount++;
    }
    for (int i = 1; i + 1 < n; i++) {
      piece(~first, ~(first + i), ~(first + i + 1), face, code);
    }
  }

  /** Negative corners are complements of own points. */
  private void piece(int a, int b, int c, int source, int code) {
    if (pieces == codes.length) {
      corners = Arrays.copyOf(corners, 6 * pieces);
      sources = Arrays.copyOf(sources, 2 * pieces);
      codes = Arrays.copyOf(codes, 2 * pieces);
    }
    corners[3 * pieces] = a;
    corners[3 * pieces + 1] = b;
    corners[3 * pieces + 2] = c;
    sources[pieces] = source;
    codes[pieces] = code;
    pieces++;
  }

  /** Joins buffers, in order, into one partition of the same skin as {@code in}. */
  static Partition join(Partition in, List<PieceBuffer> buffers) {
    long pieces = 0;
    long points = in.mesh().vertexCount();
    for (PieceBuffer b : buffers) {
      pieces += b.pieces;
      points += b.pointCount;
    }
    if (3 * pieces > Integer.MAX_VALUE - 8 || 3 * points > Integer.MAX_VALUE - 8) {
      throw new IllegalArgumentException(pieces + " pieces, " + points + " points: too many");
    }
    double[] positions = Arrays.copyOf(in.mesh().positions(), (int) (3 * points));
    int[] corners = new int[(int) (3 * pieces)];
    int[] parents = new int[(int) pieces];
    int[] codes = new int[(int) pieces];
    int to = 0;
    int base = in.mesh().vertexCount();
    for (PieceBuffer b : buffers) {
      System.arraycopy(b.points, 0, positions, 3 * base, 3 * b.pointCount);
      for (int i = 0; i < b.pieces; i++) {
        for (int k = 0; k < 3; k++) {
          int c = b.corners[3 * i + k];
          corners[3 * (to + i) + k] = c >= 0 ? c : base + ~c;
        }
        parents[to + i] = in.parent(b.sources[i]);
        codes[to + i] = b.codes[i];
      }
      to += b.pieces;
      base += b.pointCount;
    }
    return new Partition(SurfaceMesh.of(positions, corners), parents, codes);
  }
}
