package org.amperskin.report;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.amperskin.plating.Caution;
import org.amperskin.plating.Claim;
import org.amperskin.plating.Coupon;
import org.amperskin.plating.EfficiencyCurve;
import org.amperskin.plating.Figure;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.How;
import org.amperskin.plating.Mark;
import org.amperskin.plating.Note;
import org.amperskin.plating.Recipe;
import org.amperskin.units.Unit;

/** Recipes, for people. */
public final class RecipeText {
  private RecipeText() {}

  /** A line each. */
  public static String list(List<Recipe> recipes) {
    TextPage page = new TextPage();
    for (Recipe r : recipes) {
      page.plain(
          TextPage.pad(r.id(), 31)
              + TextPage.pad(r.how().key(), 6)
              + TextPage.pad(r.metal().symbol(), 4)
              + density(r));
    }
    page.plain("");
    page.plain("recipes NAME tells all of one: windows, sources, cautions.");
    return page.toString();
  }

  private static String density(Recipe r) {
    return r.figure(FigureKey.DENSITY).map(Figure::show).orElse("");
  }

  /** Everything of one. */
  public static String one(Recipe r) {
    TextPage page = new TextPage();
    page.heading(r.id() + ": " + r.name());
    page.line(
        r.how() == How.ETCH ? "takes off" : "deposits",
        "%s %s %s, with the %s",
        r.metal().label(),
        r.how() == How.ETCH ? "as" : "from",
        r.ion(),
        r.swabbed() ? How.BRUSH.key() : How.TANK.key());
    page.line("resist", "%s", r.alkaline() ? "alkaline: strips positive resist" : "not alkaline");
    switch (r.claim()) {
      case FARADAY -> page.line("thickness", "follows from charge");
      case CAPPED -> page.line("thickness", "thin decorative film: only up to its cap, wide band");
      case COUPON -> page.line("thickness", "no figure without a coupon");
    }
    if (!r.makeUp().isEmpty()) {
      page.heading("Make-up");
      r.makeUp().forEach(n -> note(page, n));
    }
    page.heading("Figures");
    for (Map.Entry<FigureKey, Figure> f : r.figures().entrySet()) {
      page.line(
          f.getKey().key(),
          "%s  [%s]",
          f.getValue().show(),
          origin(f.getValue().mark(), f.getValue().source()));
    }
    r.efficiencyByDensity()
        .ifPresent(
            curve ->
                page.line(
                    "efficiency-by-density",
                    "%s  [%s]",
                    curve.points().stream()
                        .map(RecipeText::point)
                        .collect(Collectors.joining(", ")),
                    origin(curve.mark(), curve.source())));
    if (!r.notes().isEmpty()) {
      page.heading("Notes");
      r.notes().forEach(n -> note(page, n));
    }
    if (r.claim() == Claim.COUPON) {
      page.heading("Coupon");
      Coupon.procedure().forEach(line -> page.item("-", line));
    }
    page.heading("Cautions");
    for (Caution c : r.allCautions()) {
      page.item("*", c.hazard() + ": " + c.text() + " [" + c.source() + "]");
    }
    return page.toString();
  }

  private static String point(EfficiencyCurve.Point p) {
    return Figures.number(100 * p.efficiency())
        + " % at "
        + Figures.number(Unit.of("A/dm2").fromSi(p.densityAm2()))
        + " A/dm2";
  }

  private static void note(TextPage page, Note n) {
    page.item("-", n.text() + " [" + origin(n.mark(), n.source()) + "]");
  }

  /** Mark and source, once where they say the same. */
  private static String origin(Mark mark, String source) {
    return mark == Mark.COMMON ? "rule of thumb: " + source : mark.meaning() + ": " + source;
  }
}
