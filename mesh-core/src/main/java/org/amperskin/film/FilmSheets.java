package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The printed sheets of one film: every layer, every tile, at true size.
 *
 * <p>Definition: one page a tile and layer, all layers of the first tile's kind in one run: layer 1
 * tile by tile, then layer 2. Mirrored sheets are mirrored left and right as a whole before they
 * are cut into tiles, so tiles are numbered as they lie with the toner up.
 *
 * <p>Guaranteed: the same tile of any two layers carries the same figures in the same places, only
 * the words differ; the black of a tile is the film's black in the tile's window; scale bars are
 * drawn {@value ScaleCorrection#BAR_MM} mm times the correction long.
 *
 * <p>Not guaranteed: that the printer keeps the margin of {@value PageFrame#MARGIN_MM} mm free or
 * prints at true size; the bars are there to be measured.
 *
 * <p>Cost: one polygon clip a tile.
 *
 * @param layout the film
 * @param options how the sheets are made
 * @param landscape whether the paper lies across
 * @param grid how it is cut into tiles, in printed film mm
 * @param sheets the pages
 */
public record FilmSheets(
    FilmLayout layout, SheetOptions options, boolean landscape, TileGrid grid, List<Sheet> sheets) {
  private static final int MOST_TILES = 200;
  private static final double LEAST_WINDOW_MM = 30;

  /** Copies the list. */
  public FilmSheets {
    sheets = List.copyOf(sheets);
  }

  /**
   * Makes the sheets of a film.
   *
   * @throws IllegalArgumentException if the paper is too small for the words and marks, or the film
   *     would take more than {@value #MOST_TILES} tiles
   */
  public static FilmSheets of(FilmLayout layout, SheetOptions options, SheetWords words) {
    PrintedFilm film = PrintedFilm.of(layout, options.mirror());
    Optional<PageFrame> upright = frame(layout, options, words, false);
    Optional<PageFrame> across = frame(layout, options, words, true);
    boolean landscape =
        switch (options.turn()) {
          case PORTRAIT -> false;
          case LANDSCAPE -> true;
          case AUTO -> tiles(across, film) < tiles(upright, film);
        };
    PageFrame frame =
        (landscape ? across : upright)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "paper "
                            + options.paper().label()
                            + " leaves less than "
                            + LEAST_WINDOW_MM
                            + " mm for the film beside words and marks: take a larger one"));
    TileGrid grid = frame.grid(film.extent());
    if (grid.tiles() > MOST_TILES) {
      throw new IllegalArgumentException(
          "film %s of %.0f x %.0f mm would take %d sheets of %s a layer; %d fit: take larger paper"
              .formatted(
                  layout.name(),
                  film.extent().width(),
                  film.extent().height(),
                  grid.tiles(),
                  options.paper().label(),
                  MOST_TILES));
    }
    List<List<Sheet.Ink>> drawn = new ArrayList<>();
    List<Sheet> sheets = new ArrayList<>();
    for (int layer = 1; layer <= options.layers(); layer++) {
      for (int t = 0; t < grid.tiles(); t++) {
        int column = t % grid.columns() + 1;
        int row = t / grid.columns() + 1;
        if (layer == 1) {
          drawn.add(frame.inks(film, grid, column, row));
        }
        sheets.add(
            new Sheet(
                layout.name(),
                layer,
                column,
                row,
                t + 1,
                frame.paperWidthMm(),
                frame.paperHeightMm(),
                drawn.get(t),
                frame.letterings(film, grid, layer, column, row)));
      }
    }
    return new FilmSheets(layout, options, landscape, grid, sheets);
  }

  private static Optional<PageFrame> frame(
      FilmLayout layout, SheetOptions options, SheetWords words, boolean landscape) {
    PageFrame frame = PageFrame.of(layout, options, words, landscape);
    boolean fits =
        Math.min(frame.window().width(), frame.window().height()) >= LEAST_WINDOW_MM
            && 2 * options.overlapMm() < Math.min(frame.window().width(), frame.window().height());
    return fits ? Optional.of(frame) : Optional.empty();
  }

  private static int tiles(Optional<PageFrame> frame, PrintedFilm film) {
    return frame.map(f -> f.grid(film.extent()).tiles()).orElse(Integer.MAX_VALUE);
  }

  /** Tiles of one layer. */
  public int tilesPerLayer() {
    return grid.tiles();
  }
}
