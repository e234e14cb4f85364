package org.amperskin.picture;

/** How depth becomes picture. */
public enum Projection {
  /** Parallel rays: equal lengths look equal wherever they lie. */
  PARALLEL,
  /** Rays through one eye point: near things look larger. */
  PERSPECTIVE
}
