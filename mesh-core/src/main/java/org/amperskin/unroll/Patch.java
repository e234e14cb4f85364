package org.amperskin.unroll;

import java.util.Arrays;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.FaceJoins;
import org.amperskin.mesh.SurfaceMesh;

/**
 * A connected piece of a surface: faces joined over edges that exactly two of them share.
 *
 * <p>Guaranteed: connected; {@link #beside} agrees both ways. Not guaranteed: that vertices have
 * one fan of faces each.
 */
public final class Patch {
  private final SurfaceMesh mesh;
  private final int[] faces;
  private final int[] beside;
  private final int leftOut;

  private Patch(SurfaceMesh mesh, int[] faces, int[] beside, int leftOut) {
    this.mesh = mesh;
    this.faces = faces;
    this.beside = beside;
    this.leftOut = leftOut;
  }

  /**
   * The largest connected piece of the chosen faces.
   *
   * @param chosen {@code chosen[f]}
   * @throws IllegalArgumentException if no face with an area is chosen
   */
  public static Patch of(SurfaceMesh mesh, boolean[] chosen) {
    int[] faces = new int[mesh.faceCount()];
    int n = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (chosen[f] && mesh.faceAreaMm2(f) > 0) {
        faces[n++] = f;
      }
    }
    if (n == 0) {
      throw new IllegalArgumentException("0 faces in the patch of " + mesh.faceCount());
    }
    faces = Arrays.copyOf(faces, n);
    int[] beside = neighbours(mesh, faces);
    int[] piece = new int[n];
    Arrays.fill(piece, -1);
    int[] stack = new int[n];
    double best = -1;
    int chosenPiece = -1;
    int pieces = 0;
    for (int seed = 0; seed < n; seed++) {
      if (piece[seed] >= 0) {
        continue;
      }
      double area = 0;
      int top = 0;
      stack[top++] = seed;
      piece[seed] = pieces;
      while (top > 0) {
        int i = stack[--top];
        area += mesh.faceAreaMm2(faces[i]);
        for (int k = 0; k < 3; k++) {
          int j = beside[3 * i + k];
          if (j >= 0 && piece[j] < 0) {
            piece[j] = pieces;
            stack[top++] = j;
          }
        }
      }
      if (area > best) {
        best = area;
        chosenPiece = pieces;
      }
      pieces++;
    }
    int kept = 0;
    int[] mine = new int[n];
    for (int i = 0; i < n; i++) {
      if (piece[i] == chosenPiece) {
        mine[kept++] = faces[i];
      }
    }
    mine = Arrays.copyOf(mine, kept);
    return new Patch(mesh, mine, kept == n ? beside : neighbours(mesh, mine), n - kept);
  }

  /** The patch's face over each edge, by its place in the patch; -1 at the border. */
  private static int[] neighbours(SurfaceMesh mesh, int[] faces) {
    boolean[] chosen = new boolean[mesh.faceCount()];
    int[] place = new int[mesh.faceCount()];
    for (int i = 0; i < faces.length; i++) {
      chosen[faces[i]] = true;
      place[faces[i]] = i;
    }
    FaceJoins joins = FaceJoins.of(mesh, chosen);
    int[] beside = new int[3 * faces.length];
    for (int half = 0; half < beside.length; half++) {
      int other = joins.beside(faces[half / 3], half % 3);
      beside[half] = other < 0 ? -1 : place[other];
    }
    return beside;
  }

  /** The surface the patch is of. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** Number of faces. */
  public int size() {
    return faces.length;
  }

  /** Face of the mesh that face i of the patch is. */
  public int face(int i) {
    return faces[i];
  }

  /** Vertex k of face i of the patch. */
  public int corner(int i, int k) {
    return mesh.corner(faces[i], k);
  }

  /** Face of the patch over edge k (corner k to k+1) of face i; -1 at the border. */
  public int beside(int i, int k) {
    return beside[3 * i + k];
  }

  /** Chosen faces that are not joined with the patch and were left out. */
  public int leftOut() {
    return leftOut;
  }

  /** A vertex of the mesh. */
  public Vec3 point(int vertex) {
    return mesh.point(vertex);
  }

  /** Face i in its own plane. */
  PlaneMap.Flat flat(int i) {
    return PlaneMap.Flat.of(point(corner(i, 0)), point(corner(i, 1)), point(corner(i, 2)));
  }

  /** Middle of face i. */
  public Vec3 middle(int i) {
    return point(corner(i, 0)).plus(point(corner(i, 1))).plus(point(corner(i, 2))).times(1 / 3.0);
  }

  /** Centroid of the patch's area (mm). */
  public Vec3 centroid() {
    Vec3 sum = new Vec3(0, 0, 0);
    double area = 0;
    for (int i = 0; i < faces.length; i++) {
      double a = mesh.faceAreaMm2(faces[i]);
      sum = sum.plus(middle(i).times(a));
      area += a;
    }
    return sum.times(1 / area);
  }

  /** Face of the patch whose middle lies nearest to a point. */
  public int nearest(Vec3 p) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < faces.length; i++) {
      double d = middle(i).minus(p).length();
      if (d < least) {
        least = d;
        best = i;
      }
    }
    return best;
  }

  /** Area (mm2). */
  public double areaMm2() {
    double area = 0;
    for (int f : faces) {
      area += mesh.faceAreaMm2(f);
    }
    return area;
  }

  /** Marks the faces of the mesh that belong to the patch: {@code [f]}. */
  public boolean[] marked() {
    boolean[] marks = new boolean[mesh.faceCount()];
    for (int f : faces) {
      marks[f] = true;
    }
    return marks;
  }
}
