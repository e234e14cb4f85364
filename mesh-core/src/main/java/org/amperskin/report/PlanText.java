package org.amperskin.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.amperskin.job.CheckedFilm;
import org.amperskin.job.Estimate;
import org.amperskin.job.Job;
import org.amperskin.plating.Assumption;
import org.amperskin.plating.Caution;
import org.amperskin.plating.How;
import org.amperskin.plating.Mark;
import org.amperskin.plating.Material;
import org.amperskin.plating.Note;
import org.amperskin.plating.Plan;
import org.amperskin.plating.Schedule;
import org.amperskin.plating.StepEstimate;
import org.amperskin.plating.StepFigure;
import org.amperskin.plating.Swing;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;

/** A worked-out job, for people. */
public final class PlanText {
  /** Smaller swings, as a share of the result, are within what a bench can tell. */
  private static final double SMALLEST_SWING = 0.005;

  private static final int MOST_SWINGS = 8;
  private static final int[] REGION_COLUMNS = {11, 10, 11, 12, 11, 10};

  private final TextPage page = new TextPage();
  private final Map<String, Caution> cautions = new LinkedHashMap<>();

  private PlanText() {}

  /** The whole job. */
  public static String of(Estimate estimate) {
    PlanText text = new PlanText();
    text.part(estimate);
    text.summary(estimate);
    text.regions(estimate);
    estimate.films().forEach(f -> FilmCheckText.write(text.page, f));
    int n = 1;
    for (StepEstimate step : estimate.plan().steps()) {
      text.step(n++, step);
    }
    text.end(estimate);
    return text.page.toString();
  }

  /** The job on one screen: steps, what is wrong or risky, totals; cautions by name. */
  public static String brief(Estimate estimate) {
    PlanText text = new PlanText();
    text.page.heading(
        MeasureText.head(
            estimate.part().file(),
            estimate.part().print().format(),
            estimate.part().unit(),
            estimate.part().unitAssumed()));
    text.summary(estimate);
    Schedule schedule = estimate.plan().schedule();
    text.page.line(
        "all",
        "%s, plating %s, hands busy %s of %s",
        Figures.charge(estimate.plan().chargeAh()),
        Figures.time(estimate.plan().timeS()),
        minutes(schedule.handsS()),
        minutes(schedule.elapsedS()));
    estimate.warnings().forEach(w -> text.page.item("!", w));
    for (CheckedFilm film : estimate.films()) {
      int more = film.warnings().size() - 1;
      if (more >= 0) {
        String rest = more == 0 ? "" : " (and " + more + " more: see without --short)";
        text.page.item("!", "film " + film.name() + ": " + film.warnings().get(0) + rest);
      }
    }
    int n = 1;
    for (StepEstimate s : estimate.plan().steps()) {
      String step = n++ + " " + s.name() + ": ";
      s.refusal().ifPresent(r -> text.page.item("!", step + r));
      s.warnings().forEach(w -> text.page.item("!", step + w));
      s.cautions().forEach(c -> text.cautions.putIfAbsent(c.hazard() + c.text(), c));
    }
    text.page.line(
        "cautions",
        "%s: without --short they are told in full",
        text.cautions.values().stream()
            .map(Caution::hazard)
            .distinct()
            .collect(Collectors.joining(", ")));
    return text.page.toString();
  }

  private void part(Estimate e) {
    page.heading(
        MeasureText.head(
            e.part().file(), e.part().print().format(), e.part().unit(), e.part().unitAssumed()));
    page.line(
        "part",
        "%s triangles, %s, skin %s",
        Figures.count(e.part().diagnosis().mesh().faceCount()),
        MeasureText.box(e.part().diagnosis().box()),
        Figures.area(e.part().skin().areaMm2()));
    e.warnings().forEach(w -> page.item("!", w));
    e.artworkNotes().forEach(n -> page.line("artwork", "%s", n));
  }

  /** One line a step: what a practitioner writes on the card beside the tank. */
  private void summary(Estimate estimate) {
    List<StepEstimate> steps = estimate.plan().steps();
    int done = estimate.job().done().size();
    if (steps.isEmpty()) {
      page.plain("");
      page.plain("The job has no steps: only its regions are counted.");
      return;
    }
    page.heading(done == 0 ? "Steps" : "Steps, after " + done + " that were taken before");
    page.plain(summaryRow("", "", "region", "current", "time", "mean", "metal"));
    int n = 1;
    for (StepEstimate s : steps) {
      page.plain(
          summaryRow(
              (s.refused() || !s.warnings().isEmpty() ? "!" : "") + n++,
              s.name(),
              where(s),
              s.refused() ? "no figure" : Figures.orDash(s.currentA(), Figures::current),
              duration(s),
              Figures.orDash(s.thicknessUm(), t -> Figures.number(t) + " um"),
              Figures.orDash(s.massG(), g -> Figures.mass(g) + " " + s.metal().orElse(""))));
    }
    if (steps.stream().anyMatch(s -> s.refused() || !s.warnings().isEmpty())) {
      page.plain("  ! has a warning or no figure: see the step");
    }
  }

  /** How long a step takes, hands and wait together where it does not plate. */
  private static String duration(StepEstimate s) {
    if (s.timeS().isPresent()) {
      return Figures.time(s.timeS().getAsDouble());
    }
    double work = s.handsS().orElse(0) + s.waitS().orElse(0);
    return work > 0 ? minutes(work) : "-";
  }

  private static String summaryRow(
      String n,
      String name,
      String region,
      String current,
      String time,
      String thickness,
      String metal) {
    return TextPage.right(n, 4)
        + "  "
        + TextPage.cut(name, 20)
        + TextPage.cut(region, 11)
        + TextPage.right(" " + current, 10)
        + TextPage.right(" " + time, 12)
        + TextPage.right(" " + thickness, 9)
        + TextPage.right(" " + metal, 12);
  }

  private static String where(StepEstimate s) {
    return s.region().equals(Job.WHOLE_SKIN) || s.region().isEmpty() ? "whole skin" : s.region();
  }

  private void regions(Estimate e) {
    page.heading("Regions");
    page.plain(
        "  "
            + TextPage.pad("", 12)
            + row("open", "+-", "masked", "stopped off", "unreached", "edge"));
    for (Map.Entry<String, Region> r : e.regions().entrySet()) {
      Region region = r.getValue();
      String name = r.getKey().equals(Job.WHOLE_SKIN) ? "whole skin" : r.getKey();
      page.plain("  " + TextPage.cut(name, 12) + regionRow(region));
      double unpaintedMm2 = region.split().areaMm2(RegionKind.UNPAINTED);
      if (unpaintedMm2 > 0) {
        page.plain("    not painted, so closed: " + dm2(unpaintedMm2));
      }
    }
    page.plain("  areas in dm2; +- bounds the numerical error of the open area; edge in mm");
  }

  private static String regionRow(Region r) {
    return row(
        dm2(r.openAreaMm2()),
        bound(r.errorMm2() / 10_000),
        dm2(r.split().areaMm2(RegionKind.MASKED)),
        dm2(r.split().areaMm2(RegionKind.STOPPED_OFF)),
        dm2(r.split().areaMm2(RegionKind.UNREACHED)),
        String.format(Locale.ROOT, "%.0f", r.edgeLengthMm()));
  }

  /** A bound of an error; below a hundredth of a square millimetre it need not be told closer. */
  private static String bound(double dm2) {
    return dm2 > 0 && dm2 < 1e-6 ? "<0.000001" : Figures.number(dm2);
  }

  private static String dm2(double mm2) {
    return Math.abs(mm2) < 1e-6 ? "0" : String.format(Locale.ROOT, "%.4f", mm2 / 10_000);
  }

  private static String row(String... cells) {
    StringBuilder b = new StringBuilder();
    for (int k = 0; k < cells.length; k++) {
      b.append(TextPage.right(" " + cells[k], REGION_COLUMNS[k]));
    }
    return b.toString();
  }

  private void step(int n, StepEstimate s) {
    String how = s.recipe().map(r -> s.how().key() + ", " + r).orElse(s.how().key());
    page.heading(n + "  " + s.name() + "  (" + how + ")");
    String fraction =
        s.contactAreaMm2().isPresent() && s.openFraction() < 1 - 1e-9
            ? ", " + Figures.percent(s.openFraction()) + " of what the swab crosses"
            : "";
    if (s.how() != How.PREPARE) {
      page.line("open area", "%s, %s%s", Figures.area(s.openAreaMm2()), where(s), fraction);
    } else {
      page.line("where", "%s", where(s));
    }
    s.refusal().ifPresent(r -> page.item("NO FIGURE:", r));
    electric(s);
    metal(s);
    tool(s);
    s.figures().forEach(this::figure);
    pace(s);
    s.warnings().forEach(w -> page.item("!", w));
    String label = s.recipe().isPresent() ? "note" : "how";
    s.notes().stream().map(Note::text).forEach(t -> page.line(label, "%s", t));
    s.cautions().forEach(c -> cautions.putIfAbsent(c.hazard() + c.text(), c));
    page.line(
        "cautions",
        "%s",
        s.cautions().stream().map(Caution::hazard).collect(Collectors.joining(", ")));
    if (!s.assumptions().isEmpty()) {
      page.line(
          "assumed",
          "%s",
          s.assumptions().stream().map(PlanText::assumed).collect(Collectors.joining("; ")));
    }
  }

  private static String assumed(Assumption a) {
    String mark = a.mark() == Mark.COMMON ? " (rule of thumb)" : "";
    return a.what() + " " + a.value() + mark;
  }

  private void electric(StepEstimate s) {
    if (s.currentA().isEmpty()) {
      return;
    }
    StringBuilder set = new StringBuilder(Figures.current(s.currentA().getAsDouble()));
    s.currentBandA()
        .ifPresent(
            b ->
                set.append(
                    " (area error: "
                        + Figures.current(b.low())
                        + " to "
                        + Figures.current(b.high())
                        + ")"));
    s.densityADm2().ifPresent(d -> set.append(" = " + Figures.number(d) + " A/dm2" + onWhat(s, d)));
    s.densityWindowADm2()
        .ifPresent(
            w ->
                set.append(
                    ", allowed " + Figures.number(w.low()) + " to " + Figures.number(w.high())));
    page.line("set", "%s", set.append(s.densityWindowADm2().isPresent() ? " A/dm2" : ""));
    s.voltageV()
        .ifPresent(
            v ->
                page.line(
                    "voltage",
                    "about %s (an estimate%s)",
                    Figures.volts(v),
                    s.voltageWindowV()
                        .map(
                            w ->
                                ", usual "
                                    + Figures.number(w.low())
                                    + " to "
                                    + Figures.number(w.high())
                                    + " V")
                        .orElse("")));
    s.timeS()
        .ifPresent(
            t ->
                page.line(
                    "time",
                    "%s%s%s",
                    Figures.time(t),
                    t >= 90 && t < 3600 ? String.format(Locale.ROOT, " = %.0f s", t) : "",
                    s.timeBandS()
                        .map(b -> Figures.band(Figures.time(b.low()), Figures.time(b.high())))
                        .orElse("")));
    s.chargeAh().ifPresent(c -> page.line("charge", "%s", Figures.charge(c)));
    if (!s.ramp().isEmpty()) {
      page.line(
          "start",
          "%s",
          s.ramp().stream()
              .map(p -> "at " + Figures.time(p.atS()) + " " + Figures.current(p.currentA()))
              .collect(Collectors.joining(", ")));
    }
  }

  private void figure(StepFigure f) {
    String band = f.band().map(b -> Figures.band(shown(f, b.low()), shown(f, b.high()))).orElse("");
    String basis = f.basis().replace("common practice, no source", "rule of thumb");
    page.line(f.label(), "%s%s; %s", shown(f, f.value()), band, basis);
  }

  private static String shown(StepFigure f, double value) {
    return switch (f.unit()) {
      case "s" -> Figures.time(value);
      case "g" -> Figures.mass(value);
      case "A" -> Figures.current(value);
      default -> (Figures.number(value) + " " + f.unit()).strip();
    };
  }

  /** What is a rule of thumb to the minute need not be told to the second. */
  private static String minutes(double seconds) {
    return seconds < 90 ? Figures.time(seconds) : Figures.time(60 * Math.rint(seconds / 60));
  }

  private void pace(StepEstimate s) {
    s.handsS().ifPresent(t -> page.line("hands", "busy for %s", minutes(t)));
    if (s.waitS().orElse(0) > 0) {
      page.line("wait", "%s", minutes(s.waitS().getAsDouble()));
    }
  }

  /** What the density acts on, where it is not the open area: else no one could follow. */
  private static String onWhat(StepEstimate s, double densityADm2) {
    if (s.contactAreaMm2().isPresent()) {
      return s.openFraction() < 1 - 1e-9
          ? " on " + Figures.percent(s.openFraction()) + " of the contact"
          : " of contact";
    }
    double platedMm2 = 10_000 * s.currentA().orElse(0) / densityADm2;
    return platedMm2 > 1.0005 * s.openAreaMm2()
        ? " on " + Figures.area(platedMm2) + ", contact wire included"
        : "";
  }

  private void metal(StepEstimate s) {
    if (s.massG().isPresent()) {
      page.line(
          "metal",
          "%s %s%s",
          Figures.mass(s.massG().getAsDouble()),
          s.metal().orElse(""),
          s.massBandG()
              .map(b -> Figures.band(Figures.mass(b.low()), Figures.mass(b.high())))
              .orElse(""));
    }
    if (s.thicknessUm().isPresent()) {
      page.line(
          "thickness",
          "%s um mean%s%s",
          Figures.number(s.thicknessUm().getAsDouble()),
          s.thicknessBandUm()
              .map(b -> Figures.band(Figures.number(b.low()), Figures.number(b.high())))
              .orElse(""),
          s.rateUmPerH().isPresent()
              ? ", " + Figures.number(s.rateUmPerH().getAsDouble()) + " um/h"
              : "");
    }
  }

  private void tool(StepEstimate s) {
    if (s.anodeAreaMm2().isPresent()) {
      page.line("anode", "%s facing the part", Figures.area(s.anodeAreaMm2().getAsDouble()));
    }
    if (s.bathL().isPresent()) {
      page.line(
          "bath",
          "%s L, %s dm2/L, %s A/L",
          Figures.number(s.bathL().getAsDouble()),
          Figures.orDash(s.tankLoadDm2PerL(), Figures::number),
          Figures.orDash(s.tankCurrentAPerL(), Figures::number));
    }
    if (s.contactAreaMm2().isPresent()) {
      page.line(
          "swab",
          "%s contact, %s m/min, %s passes, %s on every spot",
          Figures.number(s.contactAreaMm2().getAsDouble() / 100) + " cm2",
          Figures.orDash(s.speedMPerMin(), Figures::number),
          Figures.orDash(s.passes(), v -> String.format(Locale.ROOT, "%.0f", v)),
          Figures.orDash(s.dwellS(), Figures::time));
    }
    s.solutionL().ifPresent(l -> page.line("solution", "%s mL", Figures.number(l * 1000)));
  }

  /** Which unknown matters most to the plan, and what to measure to know it better. */
  private void swings(Plan plan) {
    List<Swing> rows = new ArrayList<>(plan.platingTime().swings());
    plan.materials().stream()
        .filter(m -> m.name().endsWith(Material.DEPOSITED))
        .forEach(m -> rows.addAll(m.total().swings()));
    for (StepEstimate step : plan.steps()) {
      step.swings().stream()
          .filter(w -> w.unit().equals("um"))
          .forEach(w -> rows.add(w.of(step.name())));
    }
    rows.removeIf(w -> w.share() < SMALLEST_SWING);
    if (rows.isEmpty()) {
      return;
    }
    rows.sort(Comparator.comparingDouble(w -> -w.share()));
    page.heading("What is not known, and how far it moves a result");
    page.plain(swingRow("unknown", "moves", "at low end", "at high end"));
    Map<String, String> remedies = new LinkedHashMap<>();
    for (Swing w : rows.subList(0, Math.min(MOST_SWINGS, rows.size()))) {
      page.plain(
          swingRow(
              w.unknown(),
              w.result(),
              CompareText.shown(w.atLow(), w.unit()),
              CompareText.shown(w.atHigh(), w.unit())));
      remedies.putIfAbsent(w.kind(), w.remedy());
    }
    remedies.forEach((unknown, remedy) -> page.item("-", unknown + ": " + remedy));
  }

  private static String swingRow(String... cells) {
    return "  "
        + TextPage.cut(cells[0], 35)
        + TextPage.cut(cells[1].replace(Material.DEPOSITED, ""), 14)
        + TextPage.right(" " + cells[2], 13)
        + TextPage.right(" " + cells[3], 15);
  }

  private void end(Estimate e) {
    List<Material> materials = e.plan().materials();
    if (!e.inBath().figures().isEmpty()) {
      page.heading("Part in the tank");
      e.inBath().figures().forEach(this::figure);
    }
    if (!materials.isEmpty()) {
      page.heading("Materials");
      for (Material m : materials) {
        String band =
            m.band()
                .map(b -> Figures.band(Figures.number(b.low()), Figures.number(b.high())))
                .orElse("");
        page.line(
            "", "%s%s %s %s, %s", Figures.number(m.amount()), band, m.unit(), m.name(), m.why());
      }
    }
    if (!e.plan().steps().isEmpty()) {
      page.heading("Total");
      long without = e.plan().steps().stream().filter(StepEstimate::refused).count();
      if (without > 0) {
        page.line("", "%d step%s without a figure not included", without, without == 1 ? "" : "s");
      }
      page.line("charge", "%s", Figures.charge(e.plan().chargeAh()));
      page.line(
          "plating time",
          "%s%s",
          Figures.time(e.plan().timeS()),
          e.plan()
              .platingTime()
              .band()
              .map(b -> Figures.band(Figures.time(b.low()), Figures.time(b.high())))
              .orElse(""));
    }
    swings(e.plan());
    if (!cautions.isEmpty()) {
      page.heading("Cautions");
      for (Caution c : cautions.values()) {
        page.item("*", c.hazard() + ": " + c.text());
      }
    }
  }
}
