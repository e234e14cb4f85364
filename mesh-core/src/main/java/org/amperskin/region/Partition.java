package org.amperskin.region;

import org.amperskin.mesh.SurfaceMesh;

/**
 * A mesh cut into pieces that carry a code each: what the cutters hand on to one another.
 *
 * <p>Definition: face {@code f} of {@code mesh} is a piece of face {@code parents[f]} of the uncut
 * skin and has code {@code codes[f]}.
 */
final class Partition {
  private final SurfaceMesh mesh;
  private final int[] parents;
  private final int[] codes;

  Partition(SurfaceMesh mesh, int[] parents, int[] codes) {
    this.mesh = mesh;
    this.parents = parents;
    this.codes = codes;
  }

  /** The uncut skin, one piece a face, all codes 0. */
  static Partition whole(SurfaceMesh mesh) {
    int[] parents = new int[mesh.faceCount()];
    for (int f = 0; f < parents.length; f++) {
      parents[f] = f;
    }
    return new Partition(mesh, parents, new int[parents.length]);
  }

  SurfaceMesh mesh() {
    return mesh;
  }

  int parent(int piece) {
    return parents[piece];
  }

  int code(int piece) {
    return codes[piece];
  }

  int[] parents() {
    return parents;
  }
}
