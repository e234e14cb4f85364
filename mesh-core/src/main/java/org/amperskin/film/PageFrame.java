package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.film.Sheet.Ink;
import org.amperskin.film.Sheet.Lettering;
import org.amperskin.film.Sheet.Part;

/**
 * Where everything stands on a page: words on top, the film's window with crosses and pins around
 * it, the scale bars to the left and below, cautions at the foot.
 *
 * <p>Definition: worked out in true millimetres on the paper's usable area, then enlarged by the
 * printer's correction about the middle of the paper, so that nothing leaves the usable area.
 */
final class PageFrame {
  /** What printers leave bare at the paper's edge (mm); a rule of thumb. */
  static final double MARGIN_MM = 6;

  private static final double TITLE_MM = 4.2;
  private static final double TEXT_MM = 2.5;
  private static final double SMALL_MM = 2;
  private static final double LEAD = 1.3;
  private static final double SIDE_MM = 10; // the upright scale bar and its words
  private static final double STRIP_MM = 8; // crosses, pins and join marks round the window
  private static final double BAR_MM = 3;
  private static final double MAP_MM = 32;
  private static final double ARM_MM = 3;

  private final FilmLayout layout;
  private final SheetOptions options;
  private final double paperWidth;
  private final double paperHeight;
  private final double usableWidth;
  private final double usableHeight;
  private final List<String> head;
  private final List<String> foot;
  private final SheetWords words;

  private PageFrame(FilmLayout layout, SheetOptions options, SheetWords words, boolean landscape) {
    this.layout = layout;
    this.options = options;
    this.words = words;
    Paper paper = options.paper();
    paperWidth = landscape ? paper.heightMm() : paper.widthMm();
    paperHeight = landscape ? paper.widthMm() : paper.heightMm();
    usableWidth = (paperWidth - 2 * MARGIN_MM) / options.correction().factorX();
    usableHeight = (paperHeight - 2 * MARGIN_MM) / options.correction().factorY();
    LetterWidth plain = LetterWidth.of(false);
    head = new ArrayList<>();
    double room = usableWidth - MAP_MM - 4;
    for (String text : List.of(words.polarity(), words.lying(), printing())) {
      head.addAll(plain.wrapped(LetterWidth.printable(text), TEXT_MM, room));
    }
    foot = new ArrayList<>();
    for (String text : words.cautions()) {
      foot.addAll(plain.wrapped(LetterWidth.printable(text), SMALL_MM, usableWidth));
    }
  }

  static PageFrame of(
      FilmLayout layout, SheetOptions options, SheetWords words, boolean landscape) {
    return new PageFrame(layout, options, words, landscape);
  }

  double paperWidthMm() {
    return paperWidth;
  }

  double paperHeightMm() {
    return paperHeight;
  }

  private String printing() {
    ScaleCorrection c = options.correction();
    return (options.mirror()
            ? "Printed mirrored: lay it with the toner toward the part."
            : "Printed as seen: lay it with the toner away from the part.")
        + (options.layers() > 1
            ? " All "
                + options.layers()
                + " layers are printed alike and lie the same way round:"
                + " register on crosses or pins, tape, then cut."
            : " Cut after checking the scale.")
        + (c.isNone()
            ? " Not corrected for the printer."
            : " Drawn at %.3f %% across and %.3f %% along, for bars that measured %s and %s mm."
                .formatted(
                    100 * c.factorX(), 100 * c.factorY(), shown(c.acrossMm()), shown(c.alongMm())));
  }

  private static String shown(double value) {
    return String.format(java.util.Locale.ROOT, "%.2f", value);
  }

  private double headHeight() {
    return TITLE_MM * LEAD + (1 + head.size()) * TEXT_MM * LEAD;
  }

  private double footHeight() {
    return foot.size() * SMALL_MM * LEAD + 1.5;
  }

  /** Where the film may stand (true mm on the usable area). */
  Extent window() {
    double left = SIDE_MM + STRIP_MM;
    double bottom = footHeight() + BAR_MM + 2.5 + STRIP_MM;
    double right = Math.max(left, usableWidth - STRIP_MM);
    double top = Math.max(bottom, usableHeight - headHeight() - STRIP_MM);
    return new Extent(left, bottom, right, top);
  }

  TileGrid grid(Extent film) {
    Extent w = window();
    return new TileGrid(film, w.width(), w.height(), options.overlapMm());
  }

  /** The figures of a tile (page mm). */
  List<Ink> inks(PrintedFilm film, TileGrid grid, int column, int row) {
    List<Ink> out = new ArrayList<>();
    Extent tile = grid.window(column, row);
    Extent w = window();
    double dx = w.minX() - tile.minX();
    double dy = w.minY() - tile.minY();
    add(out, Part.FILM, film.black().within(tile).moved(1, 1, dx, dy));
    add(out, Part.CUT, film.cutLine().within(tile).moved(1, 1, dx, dy));
    for (Outline line : film.flapLines()) {
      add(out, Part.FLAP, line.within(tile).moved(1, 1, dx, dy));
    }
    for (double[] at : corners(w)) {
      add(out, Part.CROSS, Outline.of(List.of(Marks.cross(at[0], at[1], ARM_MM))));
    }
    for (double[] at : pins(w)) {
      List<double[]> rings = new ArrayList<>(Marks.ring(at[0], at[1], 2));
      add(out, Part.PIN, Outline.of(rings));
      add(out, Part.PIN, Outline.of(List.of(Marks.cross(at[0], at[1], ARM_MM))));
    }
    add(out, Part.BAR_ACROSS, Outline.of(barAcross()));
    add(out, Part.BAR_ALONG, Outline.of(barAlong()));
    joins(grid, column, row, w, dx, dy).forEach(r -> add(out, Part.JOIN, Outline.of(List.of(r))));
    if (grid.tiles() > 1) {
      map(grid, column, row).forEach(r -> add(out, Part.MAP, Outline.of(r)));
    }
    return out;
  }

  private void add(List<Ink> out, Part part, Outline shape) {
    if (!shape.isEmpty()) {
      double fx = options.correction().factorX();
      double fy = options.correction().factorY();
      out.add(new Ink(part, shape.moved(fx, fy, MARGIN_MM, MARGIN_MM)));
    }
  }

  private static List<double[]> corners(Extent w) {
    double out = STRIP_MM / 2;
    return List.of(
        new double[] {w.minX() - out, w.minY() - out},
        new double[] {w.maxX() + out, w.minY() - out},
        new double[] {w.maxX() + out, w.maxY() + out},
        new double[] {w.minX() - out, w.maxY() + out});
  }

  /** Two pins at unlike heights, so that layers do not fit turned round. */
  private static List<double[]> pins(Extent w) {
    double out = STRIP_MM / 2;
    return List.of(
        new double[] {w.minX() - out, w.minY() + w.height() / 2},
        new double[] {w.maxX() + out, w.minY() + 2 * w.height() / 3});
  }

  private List<double[]> barAcross() {
    return Marks.scaleBar(SIDE_MM, footHeight(), ScaleCorrection.BAR_MM, BAR_MM);
  }

  private List<double[]> barAlong() {
    double y = footHeight() + BAR_MM + 2.5;
    return Marks.uprightScaleBar(BAR_MM + 3, y, ScaleCorrection.BAR_MM, BAR_MM);
  }

  /** Ticks beside the window where this tile's core ends; nothing is drawn on the film. */
  private static List<double[]> joins(
      TileGrid grid, int column, int row, Extent w, double dx, double dy) {
    List<double[]> out = new ArrayList<>();
    Extent core = grid.core(column, row);
    double from = 0.5;
    double to = STRIP_MM - 1;
    for (int side = 0; side < 2; side++) {
      boolean acrossInner = side == 0 ? column > 1 : column < grid.columns();
      if (acrossInner) {
        double x = (side == 0 ? core.minX() : core.maxX()) + dx;
        out.add(Marks.line(x, w.maxY() + from, x, w.maxY() + to));
        out.add(Marks.line(x, w.minY() - from, x, w.minY() - to));
      }
      boolean alongInner = side == 0 ? row > 1 : row < grid.rows();
      if (alongInner) {
        double y = (side == 0 ? core.maxY() : core.minY()) + dy;
        out.add(Marks.line(w.maxX() + from, y, w.maxX() + to, y));
        out.add(Marks.line(w.minX() - from, y, w.minX() - to, y));
      }
    }
    return out;
  }

  /** The map of tiles, this one filled. */
  private List<List<double[]>> map(TileGrid grid, int column, int row) {
    double height = headHeight() - 1;
    double cell = Math.min(Math.min(MAP_MM / grid.columns(), height / grid.rows()), 5);
    List<List<double[]>> out = new ArrayList<>();
    for (int r = 1; r <= grid.rows(); r++) {
      for (int c = 1; c <= grid.columns(); c++) {
        double x = usableWidth - (grid.columns() - c + 1) * cell;
        double y = usableHeight - r * cell;
        boolean here = c == column && r == row;
        out.add(
            here
                ? List.of(Marks.bar(x, y, x + cell, y + cell))
                : Marks.frame(x, y, x + cell, y + cell));
      }
    }
    return out;
  }

  /** The words of a tile. */
  List<Lettering> letterings(PrintedFilm film, TileGrid grid, int layer, int column, int row) {
    List<Lettering> out = new ArrayList<>();
    double room = usableWidth - MAP_MM - 4;
    double y = usableHeight - TITLE_MM;
    String title =
        "%s, film %s, layer %d of %d"
            .formatted(words.part(), layout.name(), layer, options.layers());
    out.add(text(fitted(title, true, TITLE_MM, room), 0, y, TITLE_MM, true));
    y -= TITLE_MM * (LEAD - 1) + TEXT_MM;
    String tile =
        grid.tiles() == 1
            ? "one tile"
            : "tile %d of %d, column %d row %d"
                .formatted((row - 1) * grid.columns() + column, grid.tiles(), column, row);
    String second =
        "job %s, %s, %s%s"
            .formatted(
                words.job(),
                tile,
                options.paper().label() + (paperWidth > paperHeight ? " across" : " upright"),
                words.date().map(d -> ", " + d).orElse(""));
    out.add(text(fitted(second, false, TEXT_MM, room), 0, y, TEXT_MM, false));
    for (String line : head) {
      y -= TEXT_MM * LEAD;
      out.add(text(line, 0, y, TEXT_MM, false));
    }
    y = footHeight() - 1.5 - SMALL_MM;
    for (String line : foot) {
      out.add(text(line, 0, y, SMALL_MM, false));
      y -= SMALL_MM * LEAD;
    }
    bars(out);
    turnedMark(out);
    Extent w = window();
    joinWords(out, grid, column, row);
    Extent shown = grid.window(column, row);
    for (Flap flap : film.flaps()) {
      double x = (flap.x0() + flap.x1()) / 2 - shown.minX() + w.minX();
      double at = (flap.y0() + flap.y1()) / 2 - shown.minY() + w.minY();
      double dx = (flap.y1() - flap.y0()) / flap.lengthMm() * flap.widthMm() * 0.6;
      double dy = (flap.x0() - flap.x1()) / flap.lengthMm() * flap.widthMm() * 0.6;
      if (w.holds(new Extent(x + dx, at + dy, x + dx, at + dy))) {
        boolean upward = Math.abs(flap.y1() - flap.y0()) > Math.abs(flap.x1() - flap.x0());
        String label = LetterWidth.printable("glue under " + flap.label());
        double half = LetterWidth.of(false).mm(label, SMALL_MM) / 2;
        out.add(
            upward
                ? lettering(label, x + dx, at + dy - half, SMALL_MM, false, true, false)
                : lettering(label, x + dx - half, at + dy, SMALL_MM, false, false, false));
      }
    }
    return out;
  }

  /** Beside the upper and left join ticks: which tile comes there. */
  private void joinWords(List<Lettering> out, TileGrid grid, int column, int row) {
    Extent w = window();
    Extent core = grid.core(column, row);
    Extent tile = grid.window(column, row);
    double above = w.maxY() + 1.2;
    double size = SMALL_MM;
    if (column > 1) {
      double x = core.minX() - tile.minX() + w.minX() + 0.8;
      out.add(text("join column " + (column - 1), x, above, size, false));
    }
    if (column < grid.columns()) {
      String words = "join column " + (column + 1);
      double x = core.maxX() - tile.minX() + w.minX() - 0.8;
      out.add(text(words, x - LetterWidth.of(false).mm(words, size), above, size, false));
    }
    double left = w.minX() - 1.2;
    if (row > 1) {
      String words = "join row " + (row - 1);
      double y = core.maxY() - tile.minY() + w.minY() - 0.8;
      y -= LetterWidth.of(false).mm(words, size);
      out.add(lettering(words, left, y, size, false, true, false));
    }
    if (row < grid.rows()) {
      double y = core.minY() - tile.minY() + w.minY() + 0.8;
      out.add(lettering("join row " + (row + 1), left, y, size, false, true, false));
    }
  }

  private void bars(List<Lettering> out) {
    double right = SIDE_MM + ScaleCorrection.BAR_MM + 2;
    String check =
        usableWidth - right > 75
            ? "100 mm across, outer edges. Measure both bars; if one is off, tell --measured"
            : "100 mm across, outer edges";
    out.add(text(check, right, footHeight() + 0.2, SMALL_MM, false));
    double y = footHeight() + BAR_MM + 2.5;
    out.add(lettering("100 mm along, outer edges", SMALL_MM, y, SMALL_MM, false, true, false));
  }

  /** A word that reads right from the side the light comes from, once the film lies right. */
  private void turnedMark(List<Lettering> out) {
    Extent w = window();
    String text = "film lies right when this reads right";
    double x = w.centreX() - LetterWidth.of(false).mm(text, SMALL_MM) / 2;
    double y = w.maxY() + STRIP_MM / 2 - 0.7;
    out.add(lettering(text, x, y, SMALL_MM, false, false, options.mirror()));
  }

  private static String fitted(String text, boolean bold, double sizeMm, double room) {
    String shown = LetterWidth.printable(text);
    LetterWidth width = LetterWidth.of(bold);
    while (width.mm(shown, sizeMm) > room && shown.length() > 4) {
      shown = shown.substring(0, shown.length() - 4) + "...";
    }
    return shown;
  }

  private Lettering text(String text, double x, double y, double sizeMm, boolean bold) {
    return lettering(text, x, y, sizeMm, bold, false, false);
  }

  private Lettering lettering(
      String text,
      double x,
      double y,
      double sizeMm,
      boolean bold,
      boolean upward,
      boolean mirrored) {
    double fx = options.correction().factorX();
    double fy = options.correction().factorY();
    return new Lettering(
        text,
        MARGIN_MM + fx * x,
        MARGIN_MM + fy * y,
        sizeMm * Math.min(fx, fy),
        bold,
        upward,
        mirrored);
  }
}
