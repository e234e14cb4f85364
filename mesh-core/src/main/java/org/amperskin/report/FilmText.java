package org.amperskin.report;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.amperskin.film.Extent;
import org.amperskin.film.FilmLayout;
import org.amperskin.film.FilmSheets;
import org.amperskin.film.ScaleCorrection;
import org.amperskin.job.JobFilm;
import org.amperskin.plating.Caution;
import org.amperskin.plating.Note;

/** Film sheets, for people: what was made, how large, what to check. */
public final class FilmText {
  private FilmText() {}

  /**
   * All films of a run.
   *
   * @param films the films
   * @param sheets the sheets of each film, in the same order
   * @param files what was written; empty if nothing was
   */
  public static String of(List<JobFilm> films, List<FilmSheets> sheets, List<Path> files) {
    TextPage page = new TextPage();
    Map<String, Note> advice = new LinkedHashMap<>();
    Map<String, Caution> cautions = new LinkedHashMap<>();
    for (int f = 0; f < films.size(); f++) {
      film(page, films.get(f), sheets.get(f));
      films.get(f).advice().forEach(n -> advice.putIfAbsent(n.text(), n));
      films.get(f).cautions().forEach(c -> cautions.putIfAbsent(c.hazard(), c));
    }
    page.heading("Check");
    page.item("-", "Print at 100 %, without \"fit to page\"; paper as told.");
    page.item(
        "-",
        "Measure both bars from outer edge to outer edge. If one is not 100.0 mm, make the sheets"
            + " again with --measured \"99.6 x 99.8 mm\" (across x along, as measured).");
    page.item("-", "Lay the layers on each other over light: crosses and pin rings must cover.");
    page.heading("Film");
    advice.values().forEach(n -> page.item("-", n.text() + " (" + n.mark().meaning() + ")"));
    page.heading("Cautions");
    cautions.values().forEach(c -> page.item("-", c.hazard() + ": " + c.text()));
    if (files.isEmpty()) {
      page.heading("Nothing written: --out NAME.pdf or NAME.svg makes the sheets.");
    } else {
      page.heading(files.size() == 1 ? "Written" : "Written, " + files.size() + " files");
      files.forEach(p -> page.plain("  " + p));
    }
    return page.toString();
  }

  private static void film(TextPage page, JobFilm film, FilmSheets sheets) {
    FilmLayout layout = film.layout();
    Extent e = layout.outline().extent();
    page.heading("Film " + layout.name() + "  (" + layout.kind().label() + ")");
    double black = layout.black().areaMm2();
    page.line(
        "size",
        "%s x %s, black %s of %s (%s)",
        Figures.length(e.width()),
        Figures.length(e.height()),
        Figures.area(black),
        Figures.area(layout.outline().areaMm2()),
        Figures.percent(black / layout.outline().areaMm2()));
    int tiles = sheets.tilesPerLayer();
    page.line(
        "sheets",
        "%d, %s %s: %s%s",
        sheets.sheets().size(),
        sheets.options().paper().label(),
        sheets.landscape() ? "across" : "upright",
        layers(sheets),
        tiles == 1
            ? ""
            : " x %d tiles (columns x rows %d x %d)"
                .formatted(tiles, sheets.grid().columns(), sheets.grid().rows()));
    if (tiles > 1) {
      page.line(
          "tiles",
          "%s x %s, %s shared with the next; cut from join tick to join tick and butt; light finds"
              + " its way through a joint, so larger paper is better",
          Figures.length(sheets.grid().windowWidthMm()),
          Figures.length(sheets.grid().windowHeightMm()),
          Figures.length(sheets.grid().overlapMm()));
    }
    page.line(
        "printed",
        sheets.options().mirror()
            ? "mirrored: the toner faces the part"
            : "as seen: the toner faces away from the part");
    page.line("scale", "%s", scale(sheets.options().correction()));
    page.line("polarity", "%s", film.polarity());
    page.line("lies", "%s", film.lying());
    layout
        .flaps()
        .forEach(
            flap ->
                page.line(
                    "glue flap",
                    "%s x %s, to glue under the %s",
                    Figures.length(flap.lengthMm()),
                    Figures.length(flap.widthMm()),
                    flap.label()));
    layout.notes().forEach(n -> page.item("!", n));
  }

  private static String layers(FilmSheets sheets) {
    int layers = sheets.options().layers();
    return layers == 1 ? "1 layer" : layers + " layers, printed alike and stacked the same way";
  }

  private static String scale(ScaleCorrection c) {
    return c.isNone()
        ? "true size, not corrected for the printer"
        : String.format(
            Locale.ROOT,
            "drawn at %.4f %% across and %.4f %% along, so that a bar that came out %s and %s mm"
                + " comes out 100 mm",
            100 * c.factorX(),
            100 * c.factorY(),
            Figures.number(c.acrossMm()),
            Figures.number(c.alongMm()));
  }
}
