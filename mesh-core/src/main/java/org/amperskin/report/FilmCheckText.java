package org.amperskin.report;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
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
import org.amperskin.unroll.Cone;

/** Whether a film will print and develop, for people. */
final class FilmCheckText {
  private final TextPage page;
  private final FilmCheck check;

  private FilmCheckText(TextPage page, FilmCheck check) {
    this.page = page;
    this.check = check;
  }

  /** One block of a page. */
  static void write(TextPage page, CheckedFilm film) {
    FilmCheckText text = new FilmCheckText(page, film.check());
    page.heading("Film " + film.name() + "  (" + text.form(film.lies()) + ")");
    film.warnings().forEach(w -> page.item("!", w));
    text.standOff();
    text.lines("lines", film.check().lines());
    text.lines("spaces", film.check().spaces());
    text.exposure();
    film.open().ifPresent(map -> open(page, map));
    if (!film.assumed().isEmpty()) {
      page.line("assumed", "%s", String.join("; ", film.assumed()));
    }
  }

  private String form(String lies) {
    if (check.laid().form() instanceof FilmForm.Plane plane) {
      return "flat, light along " + vector(plane.toward(), "%.2g");
    }
    if (check.laid().form() instanceof FilmForm.Bent bent) {
      Cone c = bent.film();
      return c.isCylinder()
          ? String.format(
              Locale.ROOT,
              "wrapped %s radius %s mm",
              c.inside() ? "inside" : "round",
              Figures.number(c.radiusMm()))
          : String.format(
              Locale.ROOT,
              "wrapped round a cone, radius %s mm, half-angle %.1f deg",
              Figures.number(c.radiusMm()),
              Math.abs(c.halfAngleDegrees()));
    }
    boolean seams = ((FilmForm.Cut) check.laid().form()).flat().hasSeams();
    return lies + ", cut to the patch, " + (seams ? "with seams" : "without seams");
  }

  private void standOff() {
    Spread gap = check.gapMm();
    page.line(
        "gap",
        "up to %s, mean %s, 95 %% of the area within %s",
        mm(gap.most()),
        mm(gap.mean()),
        mm(gap.high()));
    Spread blur = check.blurMm();
    page.line(
        "edges move",
        "up to %s to each side, 95 %% within %s; diffraction %s besides",
        mm(blur.most()),
        mm(blur.high()),
        mm(Light.diffractionMm(gap.high(), check.resist().thicknessMm())));
    Spread dose = check.dose();
    page.line(
        "light",
        "%s to %s of square-on, mean %s; 5 %% of the area have less than %s",
        two(dose.least()),
        two(dose.most()),
        two(dose.mean()),
        two(dose.low()));
    Spread s = check.stretch();
    page.line(
        "stretch",
        "1 mm of film is %s to %s of skin, 95 %% of the area within %s",
        three(s.least()),
        s.most() > 10 ? "more than 10 mm" : three(s.most()) + " mm",
        three(s.high()));
    if (check.shadowMm2() > 1e-6 * check.litMm2()) {
      page.line("in shadow", "%s under the film", Figures.area(check.shadowMm2()));
    }
  }

  private void lines(String label, Fates fates) {
    if (fates.smallest().isEmpty()) {
      page.line(label, "none narrower than 25 mm");
      return;
    }
    Feature f = fates.smallest().get();
    Feature w = fates.worst().orElseThrow();
    String left =
        w.sharpMm() > 0
            ? String.format(
                Locale.ROOT, "; blur leaves %s sharp at %s mm", mm(w.sharpMm()), at(w.at()))
            : "";
    page.line(
        label,
        "smallest %s on the skin, %s on the film, at %s mm%s",
        mm(f.skinMm()),
        mm(f.filmMm()),
        at(f.at()),
        left);
    if (fates.vanishingMm() > 0) {
      page.line(
          "  vanishing",
          "%s of the outline, %s; most of it: %s",
          Figures.percent(fates.vanishingShare()),
          mm(fates.vanishingMm()),
          fates.places().stream().limit(3).map(this::place).collect(Collectors.joining("; ")));
    }
    if (fates.riskMm() > 0) {
      page.line(
          "  at risk",
          "%s of the outline, %s",
          Figures.percent(fates.riskShare()),
          mm(fates.riskMm()));
    }
  }

  private String place(Fates.Place place) {
    Feature f = place.narrowest();
    return String.format(
        Locale.ROOT,
        "%s%s round (%.0f, %.0f) mm of the artwork",
        check.drawn(f).map(name -> name + ", ").orElse(""),
        mm(place.lengthMm()),
        f.artworkX() + 0.0,
        f.artworkY() + 0.0);
  }

  private void exposure() {
    ExposureWindow w = check.exposure();
    page.line(
        "density",
        "%s%s passes %s %%; needed %s, %s where resist runs thick: %s",
        w.stock().layers() > 1
            ? w.stock().layers() + " x " + Figures.number(w.stock().densityPerLayer()) + " = "
            : "",
        Figures.number(w.stock().density()),
        Figures.number(100 * w.stock().leak()),
        two(w.neededDensity(1)),
        two(w.neededDensity(ExposureWindow.UNEVEN)),
        switch (w.verdict()) {
          case ENOUGH -> "enough";
          case EVEN_ONLY -> "for even resist only";
          case TOO_THIN -> "too thin";
        });
    if (w.squareOnS().isPresent()) {
      page.line(
          "exposure",
          "%s square-on, %s for the least lit 5 %%; from %s on covered resist suffers",
          seconds(w.squareOnS()),
          seconds(w.shortestS()),
          seconds(w.longestS()));
    } else {
      page.line("exposure", "no time: 'irradiance' under 'light' is not told");
    }
    page.line("test strips", "%s s, each 1.41 times the last", strips(w.stripsS()));
  }

  static void open(TextPage page, OpenFractionMap map) {
    if (map.leastAt() == null) {
      return;
    }
    page.line(
        "open locally",
        "%s at %s mm to %s at %s mm, within %s; 90 %% of the area %s to %s; all of it %s",
        Figures.percent(map.least()),
        at(map.leastAt()),
        Figures.percent(map.most()),
        at(map.mostAt()),
        mm(map.radiusMm()),
        Figures.percent(map.quantile(0.05)),
        Figures.percent(map.quantile(0.95)),
        Figures.percent(map.overall()));
  }

  private static String strips(List<Double> seconds) {
    return seconds.stream()
        .map(s -> String.format(Locale.ROOT, s < 10 ? "%.1f" : "%.0f", s))
        .collect(Collectors.joining(", "));
  }

  private static String seconds(OptionalDouble s) {
    return Figures.time(s.orElseThrow());
  }

  /** A length with three digits, in micrometres below a tenth of a millimetre. */
  private static String mm(double mm) {
    if (mm < 5e-5) {
      return "0 mm";
    }
    return mm < 0.1
        ? String.format(Locale.ROOT, mm < 0.01 ? "%.1f um" : "%.0f um", 1000 * mm)
        : String.format(Locale.ROOT, mm < 10 ? "%.2f mm" : "%.1f mm", mm);
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String three(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }

  private static String at(Vec3 v) {
    return vector(v, "%.1f");
  }

  private static String vector(Vec3 v, String each) {
    return String.format(
        Locale.ROOT,
        "(" + each + ", " + each + ", " + each + ")",
        v.x() + 0.0,
        v.y() + 0.0,
        v.z() + 0.0);
  }
}
