package org.amperskin.film;

/**
 * How film sheets are made.
 *
 * @param paper size of the sheets
 * @param turn upright, across, or what takes fewer sheets
 * @param layers how many films are stacked
 * @param correction what makes up for the printer
 * @param mirror whether to print mirrored, so that the toner faces the part
 * @param overlapMm how much neighbouring tiles share (mm)
 */
public record SheetOptions(
    Paper paper,
    Turn turn,
    int layers,
    ScaleCorrection correction,
    boolean mirror,
    double overlapMm) {
  private static final int MOST_LAYERS = 4;

  /** How the paper lies. */
  public enum Turn {
    /** What takes fewer sheets. */
    AUTO,
    /** Upright. */
    PORTRAIT,
    /** Across. */
    LANDSCAPE
  }

  /** Two mirrored layers on A4, 10 mm overlap. */
  public static final SheetOptions USUAL =
      new SheetOptions(Paper.A4, Turn.AUTO, 2, ScaleCorrection.NONE, true, 10);

  /** Checks the values. */
  public SheetOptions {
    if (layers < 1 || layers > MOST_LAYERS) {
      throw new IllegalArgumentException(layers + " layers: 1 to " + MOST_LAYERS + " fit");
    }
    if (!(overlapMm >= 0 && overlapMm <= 50)) {
      throw new IllegalArgumentException("overlap " + overlapMm + " mm: 0 to 50 mm fit");
    }
  }
}
