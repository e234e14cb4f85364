package org.amperskin.region;

import java.util.List;
import org.amperskin.pattern.Artwork;

/**
 * Artwork placed on the skin for a purpose.
 *
 * @param name what the job calls it
 * @param artwork the figure, opaque where it covers
 * @param placement how it lies
 * @param kind what covering means
 * @param surroundClear true if light passes beside the film; for a stop-off always
 * @param patch the film covers only faces that lie in all of these, for the larger part; empty for
 *     all faces
 */
public record MaskFilm(
    String name,
    Artwork artwork,
    Placement placement,
    MaskKind kind,
    boolean surroundClear,
    List<Selector> patch) {
  /** Nothing is stopped off beside the tape. */
  public MaskFilm {
    surroundClear |= kind == MaskKind.STOP_OFF;
    patch = List.copyOf(patch);
  }

  /** A film over all faces. */
  public MaskFilm(
      String name, Artwork artwork, Placement placement, MaskKind kind, boolean surroundClear) {
    this(name, artwork, placement, kind, surroundClear, List.of());
  }
}
