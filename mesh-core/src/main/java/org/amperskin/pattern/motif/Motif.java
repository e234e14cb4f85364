package org.amperskin.pattern.motif;

import java.util.Optional;

/**
 * A pattern drawn by rule, without a border.
 *
 * <p>Definition: a figure in the plane, the lines of the pattern; the plane's origin comes to lie
 * on the sheet's centre. {@link MotifDesign} says whether the lines are opaque or clear.
 *
 * <p>Guaranteed: equal values draw equal figures; a motif with a {@link #tile} is the same again
 * after every step of the tile's width or height. Constructors check the values and name value and
 * unit.
 */
public sealed interface Motif permits LinedMotif, Lettering {
  /** Which motif it is. */
  MotifKind kind();

  /** The smallest rectangle found here that repeats without a seam; empty if nothing repeats. */
  Optional<Tile> tile();

  /**
   * Roughly how much has to be drawn on an area.
   *
   * @param areaMm2 area of the sheet (mm2)
   * @return number of edges
   */
  double edgesOn(double areaMm2);

  /**
   * Draws the lines over at least a window.
   *
   * @param window what must be covered
   * @param pencil takes the outlines
   */
  void draw(Window window, Pencil pencil);

  /** The values that make it, in words: {@code pitch 4 mm, line 1 mm}. */
  String told();

  /**
   * A rectangle that repeats.
   *
   * @param widthMm step across (mm)
   * @param heightMm step upward (mm)
   */
  record Tile(double widthMm, double heightMm) {}

  /**
   * A rectangle of the plane.
   *
   * @param left smallest x (mm)
   * @param bottom smallest y (mm)
   * @param right largest x (mm)
   * @param top largest y (mm)
   */
  record Window(double left, double bottom, double right, double top) {
    /** The same with a margin (mm) all round. */
    Window grown(double byMm) {
      return new Window(left - byMm, bottom - byMm, right + byMm, top + byMm);
    }
  }
}
