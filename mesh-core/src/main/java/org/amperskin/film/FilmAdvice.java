package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.region.FilmForm;

/** What will go wrong with a film, each with its number and what helps. */
public final class FilmAdvice {
  private static final double FEW = 0.001;

  /** Finest line that home laser film prints surely: 0.15 to 0.2 mm, common practice, no source. */
  private static final double PRINTS_SURELY_MM = 0.15;

  private final FilmCheck check;
  private final List<String> said = new ArrayList<>();

  private FilmAdvice(FilmCheck check) {
    this.check = check;
  }

  /** Warnings for a film, the worst first; none if all is well. */
  public static List<String> of(FilmCheck check) {
    FilmAdvice advice = new FilmAdvice(check);
    advice.vanishing("lines", check.lines());
    advice.vanishing("spaces", check.spaces());
    advice.atRisk();
    advice.fine("line", check.lines());
    advice.fine("space", check.spaces());
    advice.density();
    advice.time();
    advice.shadow();
    return List.copyOf(advice.said);
  }

  private void say(String format, Object... values) {
    said.add(String.format(Locale.ROOT, format, values));
  }

  private void vanishing(String what, Fates fates) {
    if (!(fates.vanishingMm() > 0)) {
      return;
    }
    Feature f = fates.places().get(0).narrowest();
    say(
        "%s vanish along %s mm of outline, %s of all: worst there is one of %s mm on the skin at"
            + " (%.1f, %.1f, %.1f) mm, where the film stands off %s mm and each edge moves by up"
            + " to %s mm; %s, or make it wider than %s mm there",
        what,
        mm(fates.vanishingMm()),
        share(fates.vanishingShare()),
        mm(f.skinMm()),
        f.at().x() + 0.0,
        f.at().y() + 0.0,
        f.at().z() + 0.0,
        mm(f.gapMm()),
        mm(f.shiftMm()),
        remedy(f),
        mm(2 * f.shiftMm()));
  }

  private static String mm(double mm) {
    return String.format(Locale.ROOT, mm >= 100 ? "%.0f" : mm >= 10 ? "%.1f" : "%.2f", mm);
  }

  /** What takes the larger part of an edge's shift away. */
  private String remedy(Feature f) {
    double layers = check.stock().edgeShiftMm(0, check.light());
    double lamp = check.light().penumbraMm(f.gapMm());
    if (layers > lamp) {
      return "lay the layers more exactly or print one denser layer";
    }
    return check.laid().form() instanceof FilmForm.Plane
        ? "wrap or drape the film, move it closer, or take the lamp farther away"
        : "press the film on, or take the lamp farther away";
  }

  private void atRisk() {
    double mm = check.lines().riskMm() + check.spaces().riskMm();
    double all = check.lines().outlineMm() + check.spaces().outlineMm();
    if (mm > FEW * all) {
      say(
          "%s of the outline is at risk: what is left between the edges is within the %.2g mm that"
              + " diffraction takes; expose a test strip of it first",
          share(mm / all), Light.diffractionMm(check.gapMm().high(), check.resist().thicknessMm()));
    }
  }

  private static String share(double share) {
    return String.format(Locale.ROOT, share < 0.001 ? "%.2g %%" : "%.1f %%", 100 * share);
  }

  private void fine(String what, Fates fates) {
    fates
        .smallest()
        .filter(f -> f.filmMm() < PRINTS_SURELY_MM)
        .ifPresent(
            f ->
                say(
                    "the finest %s is %s mm on the film, at (%.1f, %.1f, %.1f) mm: home laser film"
                        + " prints 0.15 to 0.2 mm surely, 0.1 mm with care (rule of thumb); make"
                        + " it wider or have a phototool made (0.05 to 0.075 mm)",
                    what, mm(f.filmMm()), f.at().x() + 0.0, f.at().y() + 0.0, f.at().z() + 0.0));
  }

  private void density() {
    ExposureWindow w = check.exposure();
    if (w.verdict() == ExposureWindow.Verdict.ENOUGH) {
      return;
    }
    boolean tooThin = w.verdict() == ExposureWindow.Verdict.TOO_THIN;
    double needed = w.neededDensity(tooThin ? 1 : ExposureWindow.UNEVEN);
    String why =
        tooThin
            ? "covered resist gets too much light before all open places clear"
            : "enough for even resist, not where it stands three times thicker in corners and runs";
    int layers = (int) Math.ceil(needed / check.stock().densityPerLayer() - 1e-9);
    String more = layers <= 4 ? String.format(Locale.ROOT, "print %d layers", layers) : "";
    String slope =
        w.mostShare() / w.leastShare() > 1.5
            ? String.format(
                Locale.ROOT,
                "%swrap the film so that slopes get more light",
                more.isEmpty() ? "" : " or ")
            : "";
    String helps = more + slope;
    say(
        "black of density %.2f passes %.2g %% of the light, and the light on the skin runs from"
            + " %.2g to %.2g of square-on: %s; density %.2f is needed: %s",
        check.stock().density(),
        100 * check.stock().leak(),
        w.leastShare(),
        w.mostShare(),
        why,
        needed,
        helps.isEmpty() ? "print a denser black" : helps);
  }

  private void time() {
    double share = check.exposure().leastShare();
    if (share < 0.5 && check.exposure().verdict() != ExposureWindow.Verdict.TOO_THIN) {
      say(
          "5 %% of the area get less than %.2g of the light that falls square-on: expose %.1f times"
              + " as long as a flat test strip says, or turn the part and expose its sides too",
          share, 1 / share);
    }
  }

  private void shadow() {
    double all = check.litMm2() + check.shadowMm2();
    if (check.shadowMm2() > FEW * all) {
      say(
          "%.0f mm2 under the film, %s, lie in the part's own shadow: light them with a second film"
              + " from another side",
          check.shadowMm2(), share(check.shadowMm2() / all));
    }
  }
}
