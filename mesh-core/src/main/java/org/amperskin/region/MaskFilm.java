package org.amperskin.region;

import org.amperskin.pattern.Artwork;

/**
 * Artwork placed on the skin for a purpose.
 *
 * @param name what the job calls it
 * @param artwork the figure, opaque where it covers
 * @param placement how it lies
 * @param kind what covering means
 * @param surroundClear true if light passes beside the film; for a stop-off always
 */
public record MaskFilm(
    String name, Artwork artwork, FlatPlacement placement, MaskKind kind, boolean surroundClear) {
  /** Nothing is stopped off beside the tape. */
  public MaskFilm {
    surroundClear |= kind == MaskKind.STOP_OFF;
  }
}
