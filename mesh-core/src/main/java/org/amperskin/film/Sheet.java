package org.amperskin.film;

import java.util.List;

/**
 * One printed page, ready to be written in any format.
 *
 * <p>Definition: page millimetres from the lower left corner, x to the right, y up. Everything is a
 * filled black figure or a line of text; there are no strokes.
 *
 * @param film what the job calls the film
 * @param layer which of the doubled layers, from 1
 * @param column column of the tile, from 1
 * @param row row of the tile, from 1 at the top
 * @param number which tile, from 1
 * @param widthMm width of the paper (mm)
 * @param heightMm height of the paper (mm)
 * @param inks what is filled, in order
 * @param letterings what is written
 */
public record Sheet(
    String film,
    int layer,
    int column,
    int row,
    int number,
    double widthMm,
    double heightMm,
    List<Ink> inks,
    List<Lettering> letterings) {
  /** Copies the lists. */
  public Sheet {
    inks = List.copyOf(inks);
    letterings = List.copyOf(letterings);
  }

  /** All of a part, in order. */
  public Outline of(Part part) {
    return Outline.of(
        inks.stream()
            .filter(i -> i.part() == part)
            .flatMap(i -> i.shape().rings().stream())
            .toList());
  }

  /** What a figure on the page is. */
  public enum Part {
    /** The black of the film itself. */
    FILM,
    /** Line beside the cut outline. */
    CUT,
    /** Outline of a glue flap. */
    FLAP,
    /** Registration crosses. */
    CROSS,
    /** Targets for pins. */
    PIN,
    /** Scale bar across the sheet, 100 mm from end to end. */
    BAR_ACROSS,
    /** Scale bar along the sheet, 100 mm from end to end. */
    BAR_ALONG,
    /** Where a tile meets its neighbour. */
    JOIN,
    /** Map of the tiles. */
    MAP;

    /** The word used in files. */
    public String key() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * A black figure.
   *
   * @param part what it is
   * @param shape its outline (page mm)
   */
  public record Ink(Part part, Outline shape) {}

  /**
   * A line of text.
   *
   * @param text the words
   * @param xMm where it starts (page mm)
   * @param yMm its base line (page mm)
   * @param sizeMm size of the type (mm)
   * @param bold whether it is bold
   * @param upward whether it runs upward instead of to the right
   * @param mirrored whether it reads right from the other side of the film; it then fills the same
   *     length of line, running to the left
   */
  public record Lettering(
      String text,
      double xMm,
      double yMm,
      double sizeMm,
      boolean bold,
      boolean upward,
      boolean mirrored) {
    /** Length of the line (mm). */
    public double lengthMm() {
      return LetterWidth.of(bold).mm(text, sizeMm);
    }
  }
}
