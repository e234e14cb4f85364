package org.amperskin.floorfault.plating;

import org.amperskin.floorfault.mesh.BringsRing;

/** Physics that needs a mesh. */
public final class KnowsMesh {
  private KnowsMesh() {}

  /** Asks the mesh. */
  public static int ask() {
    return BringsRing.round();
  }
}
