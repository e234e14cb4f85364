package org.amperskin.floorfault;

/** Stands in no room. */
public final class Stray {
  private Stray() {}
}
