package org.amperskin.floorfault.region;

import org.amperskin.floorfault.mesh.BringsRing;

/** Looks down, as it may. */
public final class Upstairs {
  private Upstairs() {}

  /** Faces below. */
  public static int faces() {
    return BringsRing.FACES.length;
  }
}
