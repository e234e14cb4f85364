package org.amperskin.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.bench.BathState;
import org.amperskin.bench.Calibration;
import org.amperskin.bench.CoverageMean;
import org.amperskin.bench.EfficiencyFit;
import org.amperskin.bench.LogEntry;

/** The bench log, for people. */
public final class LogText {
  private static final int NAME = 16;
  private static final double CLEARLY_TOO_MUCH = 1.02;

  private LogText() {}

  /** A line for each entry. */
  public static String list(List<LogEntry> entries) {
    TextPage page = new TextPage();
    if (entries.isEmpty()) {
      page.plain("no entry yet");
    }
    for (LogEntry e : entries) {
      String start =
          TextPage.right(Long.toString(e.head().number()), 5)
              + "  "
              + e.head().date()
              + "  "
              + TextPage.pad(e.kind(), 10);
      String what = e.head().struck().isPresent() ? "struck out: " + summary(e) : summary(e);
      page.plain(start + cut(what, TextPage.WIDTH - start.length()));
    }
    return page.toString();
  }

  private static String cut(String text, int width) {
    return text.length() <= width ? text : text.substring(0, width - 1) + "~";
  }

  private static String summary(LogEntry entry) {
    List<String> parts = new ArrayList<>();
    if (entry instanceof LogEntry.Job job) {
      double sum = job.steps().stream().mapToDouble(LogEntry.Step::chargeAh).sum();
      parts.add(fileName(job.file()));
      parts.add(Figures.number(sum) + " A.h");
      job.steps().forEach(s -> parts.add(s.name()));
    } else if (entry instanceof LogEntry.Weighing w) {
      parts.add(w.what());
      parts.add((w.gainG() < 0 ? "lost " : "gained ") + Figures.mass(Math.abs(w.gainG())));
      w.chargeAh().ifPresent(q -> parts.add(Figures.number(q) + " A.h"));
      w.bath().ifPresent(parts::add);
    } else if (entry instanceof LogEntry.Coupon c) {
      parts.add(c.what());
      parts.add(Figures.number(c.coverageAhPerDm2()) + " A.h/dm2");
      c.colour().ifPresent(parts::add);
      c.bath().ifPresent(parts::add);
    } else if (entry instanceof LogEntry.BathReading r) {
      parts.add(r.bath());
      r.volumeL().ifPresent(v -> parts.add(Figures.number(v) + " L"));
      r.metalGPerL().ifPresent(m -> parts.add("metal " + Figures.number(m) + " g/L"));
      r.additions()
          .forEach(
              a -> parts.add("+ " + Figures.number(a.amount()) + " " + a.unit() + " " + a.what()));
      r.doses().forEach(d -> parts.add(dose(d.mlPerAh(), d.additive())));
    } else if (entry instanceof LogEntry.Counter c) {
      parts.add(c.bath());
      c.addedAh().ifPresent(q -> parts.add("+ " + Figures.number(q) + " A.h"));
      c.readingAh().ifPresent(q -> parts.add("meter " + Figures.number(q) + " A.h"));
    }
    return String.join(", ", parts);
  }

  private static String dose(double mlPerAh, String additive) {
    return Figures.number(1000 * mlPerAh) + " mL/(kA.h) of " + additive;
  }

  private static String fileName(String path) {
    return path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  }

  /** One entry, in full. */
  public static String entry(LogEntry e) {
    TextPage page = new TextPage();
    page.heading("Entry " + e.head().number() + ", " + e.head().date() + ": " + e.kind());
    if (e instanceof LogEntry.Job job) {
      page.line("job file", "%s", job.file());
      job.steps()
          .forEach(
              s ->
                  page.line(
                      "step",
                      "%s, %s%s",
                      s.name(),
                      Figures.charge(s.chargeAh()),
                      s.bath().map(b -> ", in " + b).orElse("")));
    } else if (e instanceof LogEntry.Weighing w) {
      page.line("weighed", "%s", w.what());
      page.line("before", "%s", grams(w.beforeG(), w.balanceG()));
      page.line("after", "%s", grams(w.afterG(), w.balanceG()));
      page.line(
          w.gainG() < 0 ? "lost" : "gained",
          "%s, balance reads to %s",
          grams(Math.abs(w.gainG()), w.balanceG()),
          Figures.mass(w.balanceG()));
      w.chargeAh().ifPresent(q -> page.line("charge", "%s", Figures.charge(q)));
      w.bath().ifPresent(b -> page.line("bath", "%s", b));
      w.job().ifPresent(n -> page.line("job", "entry %s, whose charge this is", Long.toString(n)));
    } else if (e instanceof LogEntry.Coupon c) {
      page.line("coupon", "%s", c.what());
      page.line("coverage", "%s A.h/dm2", Figures.number(c.coverageAhPerDm2()));
      c.areaDm2().ifPresent(a -> page.line("area", "%s", Figures.area(10_000 * a)));
      c.chargeAh().ifPresent(q -> page.line("charge", "%s", Figures.charge(q)));
      c.colour().ifPresent(t -> page.line("colour", "%s", t));
      c.photo().ifPresent(t -> page.line("photo", "%s", t));
      c.bath().ifPresent(b -> page.line("bath", "%s", b));
    } else if (e instanceof LogEntry.BathReading r) {
      page.line("bath", "%s", r.bath());
      r.additions()
          .forEach(
              a ->
                  page.line(
                      "added",
                      "%s %s %s%s",
                      Figures.number(a.amount()),
                      a.unit(),
                      a.what(),
                      a.metalG() > 0 ? ", metal " + Figures.mass(a.metalG()) : ""));
      r.volumeL().ifPresent(v -> page.line("volume", "%s L", Figures.number(v)));
      r.metalGPerL().ifPresent(m -> page.line("metal", "%s g/L", Figures.number(m)));
      r.doses().forEach(d -> page.line("additive", "%s", dose(d.mlPerAh(), d.additive())));
    } else if (e instanceof LogEntry.Counter c) {
      page.line("bath", "%s", c.bath());
      c.addedAh().ifPresent(q -> page.line("charge", "%s added", Figures.charge(q)));
      c.readingAh().ifPresent(q -> page.line("meter", "%s so far", Figures.charge(q)));
    }
    e.head().note().ifPresent(t -> page.line("note", "%s", t));
    e.head().struck().ifPresent(t -> page.line("STRUCK OUT", "%s", t));
    return page.toString();
  }

  /** A mass with the digits its balance shows. */
  private static String grams(double g, double step) {
    int decimals = (int) Math.max(0, Math.min(6, Math.ceil(-Math.log10(step) - 1e-9)));
    return String.format(java.util.Locale.ROOT, "%." + decimals + "f g", g);
  }

  /** What a bath holds now. */
  public static String bath(BathState s) {
    TextPage page = new TextPage();
    page.heading(s.bath().name());
    page.line("recipe", "%s", s.bath().recipe().orElse("not told"));
    page.line("volume", "%s", Figures.orDash(s.volumeL(), v -> Figures.number(v) + " L"));
    if (s.metalGPerL().isPresent()) {
      String band =
          s.metalBandGPerL()
              .map(b -> Figures.band(Figures.number(b.low()), Figures.number(b.high())))
              .orElse("");
      page.line("metal now", "%s g/L%s", Figures.number(s.metalGPerL().getAsDouble()), band);
      page.line(
          "",
          "analysis %s g/L, %s added and %s drawn since",
          Figures.orDash(s.analysisGPerL(), Figures::number),
          Figures.mass(s.addedMetalG()),
          Figures.mass(s.drawnMetalG()));
    }
    page.line(
        "charge",
        "%s A.h in all, %s A.h since the analysis",
        Figures.number(s.chargeAh()),
        Figures.number(s.chargeSinceAnalysisAh()));
    for (BathState.Due d : s.additives()) {
      page.line(
          "additive",
          "%s: %s (%s)",
          d.additive(),
          d.dueMl() >= 0
              ? Figures.number(d.dueMl()) + " mL due"
              : Figures.number(-d.dueMl()) + " mL ahead",
          dose(d.mlPerAh(), d.additive()));
    }
    s.notes().forEach(n -> page.item("!", n));
    return page.toString();
  }

  /** What the coupons of a bath show. */
  public static String calibration(Calibration c) {
    TextPage page = new TextPage();
    page.heading(c.bath().name() + ": calibration");
    page.line("recipe", "%s", c.bath().recipe().orElse("not told"));
    Optional<EfficiencyFit> fit = c.fit();
    if (fit.isEmpty()) {
      page.line(
          "efficiency",
          "NO FIGURE: %s",
          c.recipe().isEmpty()
              ? "the bath's recipe is not told (log bath NAME --recipe), so its metal is not known"
              : "0 weighings with a charge in this bath (log weigh NAME --bath --charge)");
    } else {
      efficiency(page, fit.get());
    }
    c.coverage().ifPresent(mean -> coverage(page, mean));
    return page.toString();
  }

  private static void efficiency(TextPage page, EfficiencyFit fit) {
    int n = fit.points().size();
    page.line("efficiency", "%s by %s", share(fit.efficiency()), counted(n, "weighing"));
    if (fit.interval().isPresent()) {
      page.line(
          "",
          "95 %% interval %s to %s, standard error %s",
          share(fit.interval().get().low()),
          share(fit.interval().get().high()),
          share(fit.standardError().orElseThrow()));
    } else {
      page.line("", "no interval: that takes 3 weighings or more");
    }
    page.plain("");
    page.plain(
        TextPage.right("entry", 7)
            + "  date        "
            + TextPage.cut("weighed", NAME)
            + TextPage.right("charge", 10)
            + TextPage.right("gain", 10)
            + TextPage.right("by itself", 11)
            + TextPage.right("residual", 11));
    for (EfficiencyFit.Point p : fit.points()) {
      LogEntry.Weighing w = p.weighing();
      page.plain(
          TextPage.right(Long.toString(w.head().number()), 7)
              + "  "
              + w.head().date()
              + "  "
              + TextPage.cut(w.what(), NAME)
              + TextPage.right(Figures.number(w.chargeAh().orElse(0)) + " A.h", 10)
              + TextPage.right(Figures.mass(w.gainG()), 10)
              + TextPage.right(share(p.efficiency()), 11)
              + TextPage.right(Figures.number(milligrams(p.residualG())) + " mg", 11));
    }
    for (EfficiencyFit.Point p : fit.outliers()) {
      page.item(
          "!",
          "entry "
              + p.weighing().head().number()
              + " stands apart: its residual is "
              + Figures.number(Math.abs(p.studentised().orElse(0.0)))
              + " times the error of the others. It is in the fit; if it was wet or mixed up, strike"
              + " it out (log strike).");
    }
    if (fit.scatterOverBalance().orElse(0.0) > 10) {
      page.item(
          "!",
          "The scatter is "
              + Figures.number(fit.scatterOverBalance().get())
              + " times the rounding of the balance: drying, contacts or the meter vary too.");
    }
    if (fit.interval().map(i -> i.low() > 1).orElse(fit.efficiency() > CLEARLY_TOO_MUCH)) {
      page.item(
          "!",
          "More than 100 %: charge cannot deposit so much. Check the ampere-hour meter, the drying,"
              + " and the metal of the recipe.");
    }
    page.item(
        "-", "A meter that reads 1 % low makes the efficiency 1 % high; no coupon can tell that.");
  }

  /** In mg, what is rounding alone as nothing. */
  private static double milligrams(double grams) {
    return Math.abs(grams) < 1e-9 ? 0 : 1000 * grams;
  }

  private static String share(double share) {
    return Figures.number(100 * share) + " %";
  }

  private static String counted(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  private static void coverage(TextPage page, CoverageMean mean) {
    page.heading("Coupons to colour");
    page.line(
        "coverage",
        "%s A.h/dm2 by %s%s",
        Figures.number(mean.meanAhPerDm2()),
        counted(mean.coupons(), "coupon"),
        mean.interval()
            .map(
                i ->
                    ", 95 % interval "
                        + Figures.number(i.low())
                        + " to "
                        + Figures.number(i.high()))
            .orElse("; no interval: that takes 3 coupons or more"));
  }
}
