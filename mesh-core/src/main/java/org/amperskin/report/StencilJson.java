package org.amperskin.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.amperskin.film.Extent;
import org.amperskin.film.Stencil;
import org.amperskin.job.JobFilm;

/** A cut stencil, for machines. */
public final class StencilJson {
  private StencilJson() {}

  /**
   * One stencil.
   *
   * @param job name of the job
   * @param film the film it was made from
   * @param s what is cut
   * @param file what was written, if anything
   */
  public static String of(String job, JobFilm film, Stencil s, Optional<Path> file) {
    Extent e = s.border().extent();
    return Json.object(
        j -> {
          j.text("schema", "amperskin.stencil/1")
              .text("job", job)
              .text("film", film.layout().name())
              .text("use", FilmJson.use(film.layout().kind()))
              .number("widthMm", e.width())
              .number("heightMm", e.height())
              .number("coveredAreaMm2", s.covered().areaMm2())
              .number("openAreaMm2", s.openAreaMm2())
              .number("cutLengthMm", s.cutLengthMm())
              .count("cuts", s.cuts())
              .flag("mirrored", s.options().mirror())
              .number("leastMm", s.options().leastMm())
              .number("bridgeWidthMm", s.options().bridgeMm())
              .count("bridges", s.bridges())
              .count("loose", s.loose())
              .number("bridgedAreaMm2", s.bridgedAreaMm2());
          j.objects(
              "islands",
              s.islands(),
              (k, i) -> k.number("areaMm2", i.areaMm2()).numbers("atMm", i.xMm(), i.yMm()));
          j.objects("narrowLines", s.narrowLines(), StencilJson::narrow);
          j.objects("narrowSpaces", s.narrowSpaces(), StencilJson::narrow);
          j.text("polarity", film.stencilPolarity()).text("lies", film.lying());
          j.texts("notes", film.layout().notes());
          j.objects("cautions", film.stencilCautions(), FilmJson::caution);
          j.maybeText("file", file.map(Path::toString));
        });
  }

  private static void narrow(Json j, Stencil.Narrow n) throws IOException {
    j.number("widthMm", n.widthMm()).numbers("atMm", n.xMm(), n.yMm());
  }
}
