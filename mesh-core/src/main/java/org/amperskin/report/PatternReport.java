package org.amperskin.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.job.OpenFit;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.motif.LinedMotif;
import org.amperskin.pattern.motif.Motif;
import org.amperskin.pattern.motif.MotifDesign;

/**
 * A motif drawn on a sheet, for people and for machines.
 *
 * @param fit the motif, its sheet and what it leaves open
 * @param artwork the sheet
 * @param region the region on a part that the share was counted in; empty for the flat sheet
 * @param part the print file of that part
 * @param out the drawing that was written
 */
public record PatternReport(
    OpenFit fit,
    Artwork artwork,
    Optional<String> region,
    Optional<String> part,
    Optional<String> out) {

  private static String mm(double value) {
    return MotifDesign.number(value);
  }

  /** For people. */
  public String text() {
    MotifDesign design = fit.design();
    TextPage page = new TextPage();
    page.heading(design.motif().kind().word() + ": " + design.motif().kind().meaning());
    page.line("made of", design.motif().told().replace("%", "%%"));
    page.line(
        "sheet",
        "%s x %s mm, turned by %s deg, lines %s",
        mm(fit.widthMm()),
        mm(fit.heightMm()),
        mm(design.angleDegrees()),
        design.clearLines() ? "clear" : "opaque");
    page.line(
        "repeats",
        design
            .tile()
            .map(t -> "every " + mm(t.widthMm()) + " x " + mm(t.heightMm()) + " mm")
            .orElse("not in a rectangle"));
    page.line(
        "flat sheet",
        "%s open, %s of edges",
        share(1 - artwork.opaqueFraction()),
        Figures.length(artwork.edgeLengthMm()));
    if (region.isPresent()) {
      page.heading("On " + part.orElse("the part") + ", region " + region.get());
      page.line("exposed", "%s", Figures.area(fit.share().openMm2()));
      page.line("masked", "%s", Figures.area(fit.share().closedMm2()));
      page.line(
          "open",
          "%s of both, +- %s points numerical",
          share(fit.share().open()),
          points(fit.share().error()));
    }
    if (fit.wanted().isPresent()) {
      double wanted = fit.wanted().getAsDouble();
      page.heading("Line solved for an open share " + (region.isPresent() ? "on the part" : ""));
      page.line("line", "%s mm", mm(lineMm()));
      page.line("wanted", "%s", share(wanted));
      page.line(
          "reached",
          "%s, %s points off, by %d sheets drawn and cut",
          share(fit.share().open()),
          points(Math.abs(fit.share().open() - wanted)),
          fit.tries());
    }
    notes().forEach(n -> page.item("!", n));
    out.ifPresent(file -> page.line("written", "%s", file));
    return page.toString();
  }

  private double lineMm() {
    return fit.design().motif() instanceof LinedMotif lined ? lined.lineMm() : Double.NaN;
  }

  private static String share(double of) {
    return String.format(Locale.ROOT, "%.3f %%", 100 * of);
  }

  private static String points(double of) {
    return String.format(Locale.ROOT, "%.4f", 100 * of);
  }

  /** What is worth knowing besides. */
  private List<String> notes() {
    List<String> notes = new ArrayList<>(artwork.notes());
    if (fit.design().tile().isPresent() && !fit.design().seamless(fit.widthMm(), fit.heightMm())) {
      notes.add("not whole tiles: sheets set side by side would show a seam");
    }
    return notes;
  }

  /** For machines. */
  public String json() {
    MotifDesign design = fit.design();
    Optional<Motif.Tile> tile = design.tile();
    return Json.object(
        j -> {
          j.text("schema", "amperskin.pattern/1")
              .text("motif", design.motif().kind().word())
              .text("values", design.motif().told())
              .number("lineMm", lineMm())
              .number("angleDeg", design.angleDegrees())
              .text("lines", design.clearLines() ? "clear" : "opaque")
              .number("widthMm", fit.widthMm())
              .number("heightMm", fit.heightMm())
              .number("tileWidthMm", tile.map(Motif.Tile::widthMm).orElse(Double.NaN))
              .number("tileHeightMm", tile.map(Motif.Tile::heightMm).orElse(Double.NaN))
              .number("opaqueAreaMm2", artwork.opaqueAreaMm2())
              .number("edgeLengthMm", artwork.edgeLengthMm())
              .number("flatOpenFraction", 1 - artwork.opaqueFraction())
              .maybeText("part", part)
              .maybeText("region", region)
              .maybe("wantedOpenFraction", fit.wanted())
              .number("openFraction", fit.share().open())
              .number("openFractionError", fit.share().error())
              .number("openAreaMm2", fit.share().openMm2())
              .number("closedAreaMm2", fit.share().closedMm2())
              .count("tries", fit.tries())
              .maybeText("file", out)
              .texts("notes", notes());
        });
  }
}
