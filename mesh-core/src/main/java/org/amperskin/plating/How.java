package org.amperskin.plating;

/** How a step is done. */
public enum How {
  /** In a tank: current is density times open area. */
  TANK,
  /** With a moving swab: current is density times contact area times open fraction. */
  BRUSH,
  /** Metal is taken away. */
  ETCH,
  /** No metal moves: painting, resist, light, rinsing. */
  PREPARE;

  /** The word used in files. */
  public String key() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
