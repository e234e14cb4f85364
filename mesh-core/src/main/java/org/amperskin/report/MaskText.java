package org.amperskin.report;

import java.util.List;
import java.util.Optional;
import org.amperskin.job.CheckedFilm;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;

/** One mask on a part, for people. */
public final class MaskText {
  private MaskText() {}

  /**
   * A region and its parts.
   *
   * @param film its film, if light passes it
   */
  public static String of(Region region, Optional<CheckedFilm> film, List<String> notes) {
    TextPage page = new TextPage();
    SplitMesh split = region.split();
    page.heading("Skin " + Figures.area(split.skinAreaMm2()) + " = open + closed");
    page.line(
        "open",
        "%s, +- %s numerical",
        Figures.area(split.openAreaMm2()),
        Figures.area(region.errorMm2()));
    page.line("closed", "%s", Figures.area(split.closedAreaMm2()));
    page.heading("Parts");
    for (RegionKind kind : RegionKind.values()) {
      page.line(
          kind.label(),
          "%s  %s",
          TextPage.right(Figures.area(split.areaMm2(kind)), 14),
          split.isOpen(kind) ? "open" : "closed");
    }
    page.line("open fraction", "%s of what a swab crosses", Figures.percent(fraction(region)));
    page.line("edges", "%s between light and shade", Figures.length(region.edgeLengthMm()));
    notes.forEach(n -> page.item("!", n));
    film.ifPresent(f -> FilmCheckText.write(page, f));
    return page.toString();
  }

  /** Open over crossed area. */
  static double fraction(Region region) {
    double crossed = Math.max(region.openAreaMm2(), region.traversedAreaMm2());
    return crossed > 0 ? region.openAreaMm2() / crossed : 0;
  }
}
