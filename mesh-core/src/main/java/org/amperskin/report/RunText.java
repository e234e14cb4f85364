package org.amperskin.report;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.amperskin.job.KeptRun;
import org.amperskin.plating.Caution;
import org.amperskin.plating.How;
import org.amperskin.plating.Pulse;
import org.amperskin.plating.StepRun;
import org.amperskin.units.Quantity;

/** A step while it is done, to be read from two metres away. */
public final class RunText {
  private static final int BAR = 54;
  private static final int MOST_WATCHED = 5;
  private static final int ROWS = 5;
  private static final double FAR_OFF = 2;

  private static final Map<Character, List<String>> GLYPHS =
      Map.ofEntries(
          Map.entry('0', List.of("#####", "#   #", "#   #", "#   #", "#####")),
          Map.entry('1', List.of("  #  ", " ##  ", "  #  ", "  #  ", " ### ")),
          Map.entry('2', List.of("#####", "    #", "#####", "#    ", "#####")),
          Map.entry('3', List.of("#####", "    #", " ####", "    #", "#####")),
          Map.entry('4', List.of("#   #", "#   #", "#####", "    #", "    #")),
          Map.entry('5', List.of("#####", "#    ", "#####", "    #", "#####")),
          Map.entry('6', List.of("#####", "#    ", "#####", "#   #", "#####")),
          Map.entry('7', List.of("#####", "    #", "   # ", "  #  ", "  #  ")),
          Map.entry('8', List.of("#####", "#   #", "#####", "#   #", "#####")),
          Map.entry('9', List.of("#####", "#   #", "#####", "    #", "#####")),
          Map.entry('.', List.of("  ", "  ", "  ", "  ", "##")),
          Map.entry(':', List.of("  ", "##", "  ", "##", "  ")),
          Map.entry(' ', List.of("  ", "  ", "  ", "  ", "  ")),
          Map.entry('A', List.of(" ### ", "#   #", "#####", "#   #", "#   #")),
          Map.entry('m', List.of("     ", "     ", "#####", "# # #", "# # #")),
          Map.entry('O', List.of("#####", "#   #", "#   #", "#   #", "#####")),
          Map.entry('F', List.of("#####", "#    ", "#### ", "#    ", "#    ")));

  private RunText() {}

  /**
   * The screen of a moment.
   *
   * @param job name of the job
   * @param number place of the step in the job, from 1
   * @param paused whether the clock stands
   */
  public static String of(String job, int number, StepRun run, boolean paused) {
    TextPage page = new TextPage();
    page.heading(job + "  " + number + "  " + run.step().name() + (paused ? "  PAUSED" : ""));
    page.plain("");
    big(big(run)).forEach(page::plain);
    page.plain("");
    page.line(label(run), "%s", setting(run));
    if (run.electric()) {
      page.line(
          "charge",
          "%s of %s A.h passed, %s A.h %s",
          ampereHours(run.passedAh()),
          ampereHours(run.step().chargeAh().orElse(0)),
          ampereHours(run.overAh() > 0 ? run.overAh() : run.leftAh()),
          run.overAh() > 0 ? "too many" : "left");
    }
    page.line("time", "%s gone, %s left", Figures.time(run.elapsedS()), Figures.time(run.leftS()));
    page.line("", "%s %.0f %%", bar(run.share()), 100 * run.share());
    run.pass().ifPresent(p -> page.line("round", "%d of %d", p[0], p[1]));
    run.next()
        .ifPresent(
            n ->
                page.line(
                    "next",
                    "in %s set %s",
                    Figures.time(n.atS() - run.elapsedS()),
                    Figures.current(n.currentA())));
    page.plain("");
    List<String> watch = run.watch();
    watch.stream().limit(MOST_WATCHED).forEach(w -> page.line("watch", "%s", w));
    page.line(
        "cautions",
        "%s",
        String.join(", ", run.step().cautions().stream().map(Caution::hazard).distinct().toList()));
    return page.toString();
  }

  /** What is asked of a step that was broken off, and what may be typed. */
  public static String question(KeptRun seen, StepRun run, Instant now) {
    TextPage page = new TextPage();
    double gap = seen.gapS(now);
    String ago = "last seen " + Figures.time(gap) + " ago";
    if (!seen.going()) {
      page.line("kept", "%s, paused", ago);
    } else if (run.electric()) {
      double more = seen.onSince(run, now).passedAh() - seen.passedAh();
      page.line("kept", "%s while it ran; was the current on since?", ago);
      page.line("on", "yes: count %s A.h more", ampereHours(more));
    } else {
      page.line("kept", "%s while it ran; has it gone on since?", ago);
      page.line("on", "yes: count that time too");
    }
    if (seen.planChanged(run)) {
      page.line(
          "",
          "the step was of %s A.h then, it is of %s A.h now",
          ampereHours(seen.wholeAh().orElse(0)),
          ampereHours(run.step().chargeAh().orElse(0)));
    }
    page.line("off", "go on from here");
    page.line("new", "from the start");
    page.line("q", "leave it kept");
    return page.toString();
  }

  /** What is said of a reading (A) that is far from the setting; it counts all the same. */
  public static Optional<String> farOff(StepRun run, double amperes) {
    double times = run.timesOff(amperes);
    return times < FAR_OFF
        ? Optional.empty()
        : Optional.of(
            Figures.current(amperes)
                + " is "
                + Quantity.plain(times, 2)
                + " times off what is to be set; counted so, type it again if it was a slip");
  }

  /** Why a count is not kept, and what to do. */
  public static String notKept(Path folder, IOException refused) {
    return "The count cannot be kept in "
        + folder
        + " and ends with this screen: write the A.h down, or name a folder that may be written in"
        + " AMPERSKIN_HOME ("
        + refused.getClass().getSimpleName()
        + ")";
  }

  private static String label(StepRun run) {
    return run.done() ? "done" : run.electric() ? "set" : "work";
  }

  /** What to do where there is nothing to set: it is done, or takes no current. */
  public static Optional<String> doing(StepRun run) {
    if (run.done()) {
      return Optional.of(run.electric() ? end(run) : "go on with the next step");
    }
    return run.electric()
        ? Optional.empty()
        : Optional.of(run.handsBusy() ? "hands busy" : "it waits by itself");
  }

  private static String end(StepRun run) {
    if (run.step().contactAreaMm2().isPresent()) {
      return "lift the swab, then switch off";
    }
    return run.step().how() == How.ETCH
        ? "switch off and take it out at once: what stays in goes on dissolving"
        : "take it out with the current on, then switch off";
  }

  private static String setting(StepRun run) {
    Optional<String> doing = doing(run);
    if (doing.isPresent()) {
      return doing.get();
    }
    StringBuilder text = new StringBuilder(Figures.current(run.setA().getAsDouble()));
    run.step()
        .figure(Pulse.PEAK)
        .ifPresent(
            p -> text.append(" mean: pulses of " + Figures.current(p.value()) + ", " + p.basis()));
    run.step().voltageV().ifPresent(v -> text.append(", about " + Figures.volts(v)));
    run.readA().ifPresent(a -> text.append("; read " + Figures.current(a) + ", counted so"));
    return text.toString();
  }

  /** A current to be read from afar (A), in mA below a tenth. */
  public static String large(double amperes) {
    return amperes < 0.1
        ? Quantity.plain(1000 * amperes, 3) + " mA"
        : Quantity.plain(amperes, 3) + " A";
  }

  /** What is written large: the current to set, or the time left of work without current. */
  private static String big(StepRun run) {
    if (run.done()) {
      return run.electric() ? "OFF" : "0:00";
    }
    if (run.setA().isPresent()) {
      return large(run.setA().getAsDouble());
    }
    long s = (long) Math.ceil(run.leftS());
    return s >= 3600
        ? String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60)
        : String.format(Locale.ROOT, "%d:%02d", s / 60, s % 60);
  }

  private static List<String> big(String text) {
    StringBuilder[] rows = new StringBuilder[ROWS];
    for (int r = 0; r < ROWS; r++) {
      rows[r] = new StringBuilder("    ");
      for (char c : text.toCharArray()) {
        rows[r].append(GLYPHS.get(c).get(r)).append("  ");
      }
    }
    return java.util.Arrays.stream(rows).map(r -> r.toString().stripTrailing()).toList();
  }

  private static String ampereHours(double value) {
    return String.format(Locale.ROOT, value < 1 ? "%.4f" : value < 100 ? "%.3f" : "%.1f", value);
  }

  private static String bar(double share) {
    int full = (int) Math.floor(share * BAR);
    return "[" + "=".repeat(full) + " ".repeat(BAR - full) + "]";
  }
}
