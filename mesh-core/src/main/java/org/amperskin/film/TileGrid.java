package org.amperskin.film;

/**
 * How a figure larger than the paper is cut into tiles.
 *
 * <p>Definition: windows of one size stand in columns and rows, each overlapping its neighbour by
 * {@code overlapMm}; the core of a tile ends in the middle of each overlap. Column 1 is on the
 * left, row 1 on top.
 *
 * <p>Guaranteed: the cores cover the figure exactly once, each core lies in its window, and no
 * fewer tiles of this size and overlap would do.
 *
 * @param whole what is to be covered
 * @param windowWidthMm width of a tile (mm)
 * @param windowHeightMm height of a tile (mm)
 * @param overlapMm how much neighbours share (mm)
 */
public record TileGrid(
    Extent whole, double windowWidthMm, double windowHeightMm, double overlapMm) {
  private static final double SLACK = 1e-9;

  /** Checks that tiles advance. */
  public TileGrid {
    if (!(overlapMm >= 0 && 2 * overlapMm < Math.min(windowWidthMm, windowHeightMm))) {
      throw new IllegalArgumentException(
          "overlap "
              + overlapMm
              + " mm of tiles of "
              + windowWidthMm
              + " x "
              + windowHeightMm
              + " mm: less than half a tile fits");
    }
  }

  private static int count(double length, double window, double overlap) {
    return length <= window + SLACK
        ? 1
        : (int) Math.ceil((length - overlap - SLACK) / (window - overlap));
  }

  /** Number of columns. */
  public int columns() {
    return count(whole.width(), windowWidthMm, overlapMm);
  }

  /** Number of rows. */
  public int rows() {
    return count(whole.height(), windowHeightMm, overlapMm);
  }

  /** Number of tiles. */
  public int tiles() {
    return columns() * rows();
  }

  /**
   * What a tile shows.
   *
   * @param column from 1, left to right
   * @param row from 1, top to bottom
   */
  public Extent window(int column, int row) {
    double stepX = windowWidthMm - overlapMm;
    double stepY = windowHeightMm - overlapMm;
    double x = whole.centreX() - (columns() * stepX + overlapMm) / 2 + (column - 1) * stepX;
    double y = whole.centreY() - (rows() * stepY + overlapMm) / 2 + (rows() - row) * stepY;
    return new Extent(x, y, x + windowWidthMm, y + windowHeightMm);
  }

  /**
   * What of the figure belongs to a tile alone.
   *
   * @param column from 1, left to right
   * @param row from 1, top to bottom
   */
  public Extent core(int column, int row) {
    return new Extent(
        column == 1 ? whole.minX() : joinX(column - 1),
        row == rows() ? whole.minY() : joinY(row),
        column == columns() ? whole.maxX() : joinX(column),
        row == 1 ? whole.maxY() : joinY(row - 1));
  }

  /** Where a column and the one right of it join (mm). */
  double joinX(int column) {
    return window(column, 1).maxX() - overlapMm / 2;
  }

  /** Where a row and the one below it join (mm). */
  double joinY(int row) {
    return window(1, row).minY() + overlapMm / 2;
  }
}
