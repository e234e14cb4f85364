package org.amperskin.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.amperskin.film.FilmLayout;
import org.amperskin.film.FilmSheets;
import org.amperskin.job.JobFilm;
import org.amperskin.plating.Caution;
import org.amperskin.region.MaskKind;

/** Film sheets, for machines. */
public final class FilmJson {
  private FilmJson() {}

  /**
   * All films of a run.
   *
   * @param job name of the job
   * @param films the films
   * @param sheets the sheets of each film, in the same order
   * @param files what was written
   */
  public static String of(
      String job, List<JobFilm> films, List<FilmSheets> sheets, List<Path> files) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.film/1").text("job", job);
          j.objects("films", films, (k, f) -> film(k, f, sheets.get(films.indexOf(f))));
          j.texts("files", files.stream().map(Path::toString).toList());
        });
  }

  private static void film(Json j, JobFilm film, FilmSheets made) throws IOException {
    FilmLayout layout = film.layout();
    j.text("name", layout.name())
        .text("use", use(layout.kind()))
        .number("widthMm", layout.outline().extent().width())
        .number("heightMm", layout.outline().extent().height())
        .number("areaMm2", layout.outline().areaMm2())
        .number("blackAreaMm2", layout.black().areaMm2())
        .text("paper", made.options().paper().label())
        .flag("landscape", made.landscape())
        .count("layers", made.options().layers())
        .count("columns", made.grid().columns())
        .count("rows", made.grid().rows())
        .number("tileWidthMm", made.grid().windowWidthMm())
        .number("tileHeightMm", made.grid().windowHeightMm())
        .number("overlapMm", made.grid().overlapMm())
        .flag("mirrored", made.options().mirror())
        .number("factorAcross", made.options().correction().factorX())
        .number("factorAlong", made.options().correction().factorY())
        .text("polarity", film.polarity())
        .text("lies", film.lying());
    j.objects(
        "sheets",
        made.sheets(),
        (k, s) ->
            k.count("layer", s.layer())
                .count("tile", s.number())
                .count("column", s.column())
                .count("row", s.row())
                .number("paperWidthMm", s.widthMm())
                .number("paperHeightMm", s.heightMm()));
    j.objects(
        "flaps",
        layout.flaps(),
        (k, f) ->
            k.number("lengthMm", f.lengthMm())
                .number("widthMm", f.widthMm())
                .text("label", f.label()));
    j.objects("advice", film.advice(), JsonReports::note);
    j.texts("notes", layout.notes());
    j.objects("cautions", film.cautions(), FilmJson::caution);
  }

  static String use(MaskKind kind) {
    return switch (kind) {
      case STOP_OFF -> "stop-off";
      case POSITIVE_RESIST -> "positive";
      case NEGATIVE_RESIST -> "negative";
    };
  }

  static void caution(Json j, Caution c) throws IOException {
    j.text("hazard", c.hazard())
        .text("text", c.text())
        .text("mark", c.mark().letter())
        .text("source", c.source());
  }
}
