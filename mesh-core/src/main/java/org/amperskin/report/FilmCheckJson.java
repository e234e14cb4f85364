package org.amperskin.report;

import java.io.IOException;
import org.amperskin.film.ExposureWindow;
import org.amperskin.film.Fates;
import org.amperskin.film.Feature;
import org.amperskin.film.FilmCheck;
import org.amperskin.film.Light;
import org.amperskin.film.Spread;
import org.amperskin.geom.Vec3;
import org.amperskin.job.CheckedFilm;
import org.amperskin.region.FilmForm;
import org.amperskin.region.OpenFractionMap;

/** Whether a film will print and develop, for machines. */
final class FilmCheckJson {
  private FilmCheckJson() {}

  static void write(Json j, CheckedFilm film) throws IOException {
    FilmCheck c = film.check();
    double radius = Double.NaN;
    double angle = Double.NaN;
    boolean seams = false;
    if (c.laid().form() instanceof FilmForm.Bent bent) {
      radius = bent.film().radiusMm();
      angle = bent.film().halfAngleDegrees();
    } else if (c.laid().form() instanceof FilmForm.Cut cut) {
      seams = cut.flat().hasSeams();
    }
    j.text("name", film.name())
        .text("lies", film.lies())
        .number("radiusMm", radius)
        .number("coneHalfAngleDeg", angle)
        .flag("seams", seams)
        .count("layers", c.stock().layers())
        .number("densityPerLayer", c.stock().densityPerLayer())
        .number("lightHalfAngleDeg", c.light().halfAngleDegrees())
        .maybe("irradianceWPerM2", c.light().irradianceWPerM2())
        .number("resistDoseJPerM2", c.resist().doseJPerM2());
    spread(j, "gapMm", c.gapMm());
    spread(j, "edgeShiftMm", c.blurMm());
    j.number("diffractionMm", Light.diffractionMm(c.gapMm().high(), c.resist().thicknessMm()));
    spread(j, "lightShare", c.dose());
    spread(j, "stretch", c.stretch());
    j.number("litAreaMm2", c.litMm2()).number("shadowAreaMm2", c.shadowMm2());
    fates(j, "lines", c, c.lines());
    fates(j, "spaces", c, c.spaces());
    exposure(j, c.exposure());
    open(j, film.open().orElse(null));
    j.texts("warnings", film.warnings()).texts("assumed", film.assumed());
  }

  private static void spread(Json j, String key, Spread s) throws IOException {
    j.object(
        key,
        k ->
            k.number("least", s.least())
                .number("p05", s.low())
                .number("mean", s.mean())
                .number("p95", s.high())
                .number("most", s.most()));
  }

  private static void fates(Json j, String key, FilmCheck check, Fates f) throws IOException {
    j.object(
        key,
        k -> {
          k.number("outlineMm", f.outlineMm())
              .number("vanishingMm", f.vanishingMm())
              .number("atRiskMm", f.riskMm());
          feature(k, "smallest", check, f.smallest().orElse(null));
          feature(k, "worst", check, f.worst().orElse(null));
          k.objects(
              "places",
              f.places(),
              (l, p) -> {
                l.number("lengthMm", p.lengthMm());
                feature(l, "narrowest", check, p.narrowest());
              });
        });
  }

  private static void feature(Json j, String key, FilmCheck check, Feature f) throws IOException {
    if (f == null) {
      j.number(key, Double.NaN);
      return;
    }
    j.object(
        key,
        k ->
            k.number("filmMm", f.filmMm())
                .number("skinMm", f.skinMm())
                .number("edgeShiftMm", f.shiftMm())
                .number("gapMm", f.gapMm())
                .numbers("at", f.at().x(), f.at().y(), f.at().z())
                .numbers("artworkAt", f.artworkX(), f.artworkY())
                .count("outline", f.outline())
                .maybeText("drawn", check.drawn(f)));
  }

  private static void exposure(Json j, ExposureWindow w) throws IOException {
    j.object(
        "exposure",
        k ->
            k.number("density", w.stock().density())
                .number("neededDensity", w.neededDensity(1))
                .number("neededDensityUneven", w.neededDensity(ExposureWindow.UNEVEN))
                .text(
                    "verdict",
                    switch (w.verdict()) {
                      case ENOUGH -> "enough";
                      case EVEN_ONLY -> "even-resist-only";
                      case TOO_THIN -> "too-thin";
                    })
                .maybe("squareOnS", w.squareOnS())
                .maybe("shortestS", w.shortestS())
                .maybe("longestS", w.longestS())
                .numbers("stripsS", w.stripsS().stream().mapToDouble(s -> s).toArray()));
  }

  private static void open(Json j, OpenFractionMap map) throws IOException {
    if (map == null || map.leastAt() == null) {
      j.number("openWithin", Double.NaN);
      return;
    }
    Vec3 low = map.leastAt();
    Vec3 high = map.mostAt();
    j.object(
        "openWithin",
        k ->
            k.number("radiusMm", map.radiusMm())
                .number("least", map.least())
                .number("p05", map.quantile(0.05))
                .number("p50", map.quantile(0.5))
                .number("p95", map.quantile(0.95))
                .number("most", map.most())
                .numbers("leastAt", low.x(), low.y(), low.z())
                .numbers("mostAt", high.x(), high.y(), high.z()));
  }
}
