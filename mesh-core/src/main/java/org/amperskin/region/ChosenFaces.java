package org.amperskin.region;

import java.util.Arrays;
import java.util.List;
import org.amperskin.mesh.SurfaceMesh;

/** Whole faces chosen by selectors: those that lie in one for the larger part. */
public final class ChosenFaces {
  private ChosenFaces() {}

  /**
   * The faces that lie for the larger part in any of the selectors.
   *
   * @return {@code [f]}
   * @throws IllegalArgumentException if a group is named that the mesh does not have
   */
  public static boolean[] of(SurfaceMesh mesh, List<Selector> selectors) {
    boolean[] chosen = new boolean[mesh.faceCount()];
    for (Selector selector : selectors) {
      boolean[] one = of(mesh, selector);
      for (int f = 0; f < chosen.length; f++) {
        chosen[f] |= one[f];
      }
    }
    return chosen;
  }

  /**
   * The faces that lie for the larger part in each of the selectors; all faces if there is none.
   *
   * @return {@code [f]}
   * @throws IllegalArgumentException if a group is named that the mesh does not have
   */
  public static boolean[] inAll(SurfaceMesh mesh, List<Selector> selectors) {
    boolean[] chosen = new boolean[mesh.faceCount()];
    Arrays.fill(chosen, true);
    for (Selector selector : selectors) {
      boolean[] one = of(mesh, selector);
      for (int f = 0; f < chosen.length; f++) {
        chosen[f] &= one[f];
      }
    }
    return chosen;
  }

  private static boolean[] of(SurfaceMesh mesh, Selector selector) {
    Partition pieces = SelectorCut.cut(Partition.whole(mesh), mesh, selector).pieces();
    double[] inside = new double[mesh.faceCount()];
    for (int f = 0; f < pieces.mesh().faceCount(); f++) {
      if (pieces.code(f) == 1) {
        inside[pieces.parent(f)] += pieces.mesh().faceAreaMm2(f);
      }
    }
    boolean[] chosen = new boolean[mesh.faceCount()];
    for (int f = 0; f < chosen.length; f++) {
      chosen[f] = inside[f] > 0.5 * mesh.faceAreaMm2(f);
    }
    return chosen;
  }
}
