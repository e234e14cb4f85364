package org.amperskin.floorfault.io.stl;

/** One format. */
public final class Format {
  private Format() {}

  /** Bytes of a facet. */
  public static int facetBytes() {
    return 50;
  }
}
