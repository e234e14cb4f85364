package org.amperskin.floorfault.io.obj;

import org.amperskin.floorfault.io.stl.Format;

/** Another format that leans on the first. */
public final class KnowsSibling {
  private KnowsSibling() {}

  /** Leans over. */
  public static int lean() {
    return Format.facetBytes();
  }
}
