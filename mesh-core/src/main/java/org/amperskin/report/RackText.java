package org.amperskin.report;

import java.util.Optional;
import org.amperskin.job.RackJobs;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.Rack;
import org.amperskin.plating.Window;
import org.amperskin.units.Unit;

/** Several parts in one tank, for people. */
public final class RackText {
  private RackText() {}

  /** All of it. */
  public static String of(RackJobs jobs) {
    Rack rack = jobs.rack();
    TextPage page = new TextPage();
    page.heading(
        "Together in "
            + jobs.recipe().id()
            + " at "
            + Figures.number(jobs.densityADm2())
            + " A/dm2");
    page.plain(row("part", "area", "current", "charge", "out after"));
    for (Rack.Hung part : rack.parts()) {
      page.plain(
          row(
              part.name(),
              dm2(part.areaDm2()),
              Figures.current(part.currentA()),
              Figures.number(part.chargeAh()) + " A.h",
              Figures.time(part.timeS())));
    }
    page.plain(
        row(
            "all",
            dm2(rack.areaDm2()),
            Figures.current(rack.mostA()),
            Figures.number(rack.chargeAh()) + " A.h",
            Figures.time(rack.parts().stream().mapToDouble(Rack.Hung::timeS).max().orElse(0))));
    page.line(
        "bath",
        "%s L: %s dm2/L, %s A/L",
        Figures.number(rack.bathL()),
        Figures.number(rack.areaDm2() / rack.bathL()),
        Figures.number(rack.mostA() / rack.bathL()));
    jobs.toldADm2()
        .forEach(
            (job, told) ->
                page.item(
                    "!",
                    job
                        + " asks for "
                        + Figures.number(told)
                        + " A/dm2; on one supply all run at the lowest asked, "
                        + Figures.number(jobs.densityADm2())
                        + " A/dm2"));
    jobs.warnings().forEach(w -> page.item("!", w));
    page.heading("What to set");
    Window window = jobs.recipe().figure(FigureKey.DENSITY).orElseThrow().window(Unit.of("A/dm2"));
    for (Rack.Stage stage : rack.stages()) {
      page.line("at " + Figures.time(stage.atS()), "%s", told(stage));
      forgotten(stage, window).ifPresent(w -> page.item("!", w));
    }
    page.line(
        "note",
        "%s",
        "Take a part out with the current on, then turn the supply down at once. A part that loses"
            + " its contact does the same to the rest: watch the ammeter, it falls little, while the"
            + " others take its share.");
    page.line(
        "note",
        "%s",
        "Hang parts no nearer to each other than to the anodes, each on its own lead: what faces a"
            + " neighbour is shaded (rule of thumb).");
    return page.toString();
  }

  private static String told(Rack.Stage stage) {
    String out = stage.out().isEmpty() ? "" : "take out " + String.join(", ", stage.out());
    if (stage.setA() == 0) {
      return out + "; current off, done";
    }
    String set = "set " + Figures.current(stage.setA()) + " for " + dm2(stage.areaDm2());
    return out.isEmpty() ? set : out + "; " + set;
  }

  private static Optional<String> forgotten(Rack.Stage stage, Window window) {
    if (stage.forgottenADm2().isEmpty()) {
      return Optional.empty();
    }
    double density = stage.forgottenADm2().getAsDouble();
    String end = "if not turned down, the rest runs at " + Figures.number(density) + " A/dm2";
    return Optional.of(
        density > window.high()
            ? end + ", above " + Figures.number(window.high()) + ": it burns"
            : end + " and is done sooner than told");
  }

  private static String dm2(double value) {
    return Figures.area(value * 10_000);
  }

  private static String row(String... cells) {
    return "  "
        + TextPage.cut(cells[0], 26)
        + TextPage.right(" " + cells[1], 13)
        + TextPage.right(" " + cells[2], 11)
        + TextPage.right(" " + cells[3], 13)
        + TextPage.right(" " + cells[4], 15);
  }
}
