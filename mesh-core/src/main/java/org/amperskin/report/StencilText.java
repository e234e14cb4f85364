package org.amperskin.report;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.film.Extent;
import org.amperskin.film.Stencil;
import org.amperskin.job.JobFilm;

/** A cut stencil, for people. */
public final class StencilText {
  private static final int SHOWN = 5;

  private StencilText() {}

  /**
   * One stencil.
   *
   * @param film the film it was made from
   * @param stencil what is cut
   * @param file what was written, if anything
   */
  public static String of(JobFilm film, Stencil stencil, Optional<Path> file) {
    TextPage page = new TextPage();
    Extent e = stencil.border().extent();
    double leastMm = stencil.options().leastMm();
    page.heading("Stencil " + film.layout().name() + "  (" + film.layout().kind().label() + ")");
    page.line(
        "size",
        "%s x %s with weeding border, covers %s, leaves %s open",
        Figures.length(e.width()),
        Figures.length(e.height()),
        Figures.area(stencil.covered().areaMm2()),
        Figures.area(stencil.openAreaMm2()));
    page.line(
        "cut",
        "%s in %s closed lines",
        Figures.length(stencil.cutLengthMm()),
        Figures.count(stencil.cuts()));
    islands(page, stencil);
    page.line("bridges", "%s", bridges(stencil));
    page.line("blade", "%s", blade(stencil));
    narrow(page, "lines", stencil.narrowLines(), leastMm);
    narrow(page, "spaces", stencil.narrowSpaces(), leastMm);
    page.line(
        "way round",
        stencil.options().mirror()
            ? "mirrored: cut from the back of the sheet"
            : "as it lies on the part, seen from the light: cut from the front, not mirrored");
    page.line(
        "marks",
        "in the border, the triangle points to the top, the square stands at its %s end",
        stencil.options().mirror() ? "right" : "left");
    page.line("polarity", "%s", film.stencilPolarity());
    page.line("lies", "%s", film.lying());
    film.layout().notes().forEach(n -> page.item("!", n));
    page.heading("Cautions");
    film.stencilCautions().forEach(c -> page.item("-", c.hazard() + ": " + c.text()));
    if (file.isEmpty()) {
      page.heading("Nothing written: --out NAME.svg or NAME.dxf makes the file.");
    } else {
      page.heading("Written");
      page.plain("  " + file.get());
    }
    return page.toString();
  }

  private static void islands(TextPage page, Stencil stencil) {
    List<Stencil.Island> islands = stencil.islands();
    if (islands.isEmpty()) {
      page.line("islands", "none: it comes off in one piece");
      return;
    }
    Stencil.Island least = islands.get(0);
    page.line(
        "islands",
        "%d, the smallest %.4g mm2 at %s%s",
        islands.size(),
        least.areaMm2(),
        at(least.xMm(), least.yMm()),
        stencil.bridges() > 0 ? "" : ": carry them over with transfer tape, or bridge them");
  }

  private static String bridges(Stencil stencil) {
    if (stencil.bridges() == 0) {
      return stencil.options().bridgeMm() > 0 ? "none needed" : "none";
    }
    double before = stencil.openAreaMm2() + stencil.bridgedAreaMm2();
    return String.format(
        Locale.ROOT,
        "%d of %s, they take %.4g mm2, %.2f %% of the openings%s",
        stencil.bridges(),
        Figures.length(stencil.options().bridgeMm()),
        stencil.bridgedAreaMm2(),
        100 * stencil.bridgedAreaMm2() / before,
        stencil.loose() == 0
            ? ""
            : "; islands left loose, as no straight way within the outline reaches them: "
                + stencil.loose());
  }

  private static String blade(Stencil stencil) {
    int lines = stencil.narrowLines().size();
    int spaces = stencil.narrowSpaces().size();
    String rule =
        Figures.length(stencil.options().leastMm())
            + (stencil.options().leastMm() == 0.5
                ? " (rule of thumb: common practice, no source)"
                : " (as told)");
    return lines + spaces == 0
        ? "nothing is narrower than " + rule
        : String.format(Locale.ROOT, "narrower than %s: %d lines, %d spaces", rule, lines, spaces);
  }

  private static void narrow(
      TextPage page, String what, List<Stencil.Narrow> places, double leastMm) {
    if (places.isEmpty()) {
      return;
    }
    StringBuilder text = new StringBuilder();
    for (Stencil.Narrow n : places.subList(0, Math.min(SHOWN, places.size()))) {
      text.append(text.length() == 0 ? "" : ", ");
      text.append(String.format(Locale.ROOT, "%.2f mm at %s", n.widthMm(), at(n.xMm(), n.yMm())));
    }
    if (places.size() > SHOWN) {
      text.append(" and ").append(places.size() - SHOWN).append(" more");
    }
    page.item("!", what + " under " + Figures.length(leastMm) + ": " + text);
  }

  /** From the lower left corner of the border. */
  private static String at(double xMm, double yMm) {
    return String.format(Locale.ROOT, "(%.1f, %.1f) mm", xMm, yMm);
  }
}
