package org.amperskin.mesh;

import java.util.Arrays;

/**
 * Which chosen faces lie side by side: two that share an edge with no third and run along it in
 * opposite senses, as a surface has it.
 *
 * <p>Guaranteed: {@link #beside} agrees both ways. Cost: linear.
 */
public final class FaceJoins {
  private final int[] beside;

  private FaceJoins(int[] beside) {
    this.beside = beside;
  }

  /**
   * Joins the chosen faces of a mesh.
   *
   * @param chosen {@code chosen[f]}; others count as not there
   */
  public static FaceJoins of(SurfaceMesh mesh, boolean[] chosen) {
    boolean[] skip = new boolean[chosen.length];
    for (int f = 0; f < skip.length; f++) {
      skip[f] = !chosen[f];
    }
    EdgeTable edges = new EdgeTable(mesh, skip, null);
    int[] beside = new int[3 * mesh.faceCount()];
    Arrays.fill(beside, -1);
    for (int h = 0; h < beside.length; h++) {
      int mate = edges.mate(h);
      if (mate >= 0 && mesh.corner(h / 3, h % 3) != mesh.corner(mate / 3, mate % 3)) {
        beside[h] = mate / 3;
      }
    }
    return new FaceJoins(beside);
  }

  /** The face over edge k (corner k to k+1) of a face; -1 if none is joined there. */
  public int beside(int face, int k) {
    return beside[3 * face + k];
  }
}
