package org.amperskin.region;

/**
 * Pieces of skin as a film sees them.
 *
 * @param pieces the pieces, cut finer where the film bends
 * @param frame artwork coordinates and depth of their vertices
 * @param shadows what hides them from the light; null if nothing can
 * @param castersAreFaces true if {@code shadows} knows the uncut faces, false if these pieces
 * @param behind {@code behind[parent]}, whether the film covers a face; null for all
 * @param shiftMm how far artwork can lie beside its true place within a piece (mm)
 */
record Laid(
    Partition pieces,
    FilmFrame frame,
    Shadows shadows,
    boolean castersAreFaces,
    boolean[] behind,
    double shiftMm) {
  /** True if the film covers a face of the skin. */
  boolean covers(int parent) {
    return behind == null || behind[parent];
  }

  /** The face that {@link #shadows} must not hide behind itself. */
  int caster(int piece) {
    return castersAreFaces ? pieces.parent(piece) : piece;
  }
}
