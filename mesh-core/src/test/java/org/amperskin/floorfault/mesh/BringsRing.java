package org.amperskin.floorfault.mesh;

import org.amperskin.floorfault.geom.LooksUp;

/** Closes a ring: mesh, geom, region, mesh. */
public final class BringsRing {
  /** Three faces. */
  public static final int[] FACES = {1, 2, 3};

  private BringsRing() {}

  /** Goes round. */
  public static int round() {
    return LooksUp.up();
  }
}
