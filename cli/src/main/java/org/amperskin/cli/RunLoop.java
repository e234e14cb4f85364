package org.amperskin.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.amperskin.job.KeptRun;
import org.amperskin.job.RunKeeper;
import org.amperskin.plating.StepRun;
import org.amperskin.report.RunText;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;

/**
 * Shows a running step, anew each second, until it is ended.
 *
 * <p>It is kept on the disk every few seconds and at each word typed; a step that was broken off is
 * asked about first.
 */
final class RunLoop {
  private static final String HOME_AND_CLEAR = "\u001b[H\u001b[2J";
  private static final String HELP =
      "  Enter after: a current as read (6.5 A), p pauses and goes on, q ends";
  private static final double KEPT_EACH_S = 5;

  private final String job;
  private final int number;
  private final RunKeeper keeper;
  private final Clock clock;
  private final BlockingQueue<String> typed;
  private final PrintWriter out;
  private final StepRun fresh;
  private StepRun run;
  private Optional<KeptRun> kept = Optional.empty();
  private long last;
  private double unkeptS = KEPT_EACH_S; // the first second is kept too
  private String unkept = "";
  private boolean paused;
  private boolean rung;
  private String said = "";

  /**
   * A step that has not begun, or was broken off.
   *
   * @param job name of the job
   * @param number place of the step in the job, from 1
   */
  RunLoop(
      String job,
      int number,
      StepRun fresh,
      RunKeeper keeper,
      Clock clock,
      BlockingQueue<String> typed,
      PrintWriter out) {
    this.job = job;
    this.number = number;
    this.fresh = fresh;
    this.run = fresh;
    this.keeper = keeper;
    this.clock = clock;
    this.typed = typed;
    this.out = out;
    this.last = clock.millis();
  }

  /**
   * Runs until q is typed; gives the step as it then stands.
   *
   * @throws IOException if the step was broken off and its count cannot be read
   */
  StepRun untilEnded() throws InterruptedException, IOException {
    kept = keeper.kept();
    kept.ifPresent(k -> run = k.offSince(fresh));
    while (true) {
      show();
      String word = typed.poll(1, TimeUnit.SECONDS);
      tick();
      if (word != null && !obey(word.strip())) {
        if (kept.isEmpty()) {
          keep(run.done());
        }
        return run;
      }
    }
  }

  private void tick() {
    long now = clock.millis();
    double seconds = Math.max(0, now - last) / 1000.0;
    last = now;
    if (paused || kept.isPresent()) {
      return;
    }
    run = run.after(seconds);
    unkeptS += seconds;
    if (unkeptS >= KEPT_EACH_S) {
      keep();
    }
  }

  private void keep() {
    keep(false);
  }

  /**
   * Keeps the count; a disk that refuses is told of once and does not end the run.
   *
   * @param over whether the step came to its end and was left: then nothing is kept
   */
  private void keep(boolean over) {
    unkeptS = 0;
    if (!unkept.isEmpty()) {
      return;
    }
    try {
      if (over) {
        keeper.forget();
      } else if (run.share() > 0) {
        keeper.keep(KeptRun.of(run, !paused, clock.instant()));
      }
    } catch (IOException refused) {
      unkept = RunText.notKept(keeper.file().getParent(), refused);
    }
  }

  private void show() {
    out.print(HOME_AND_CLEAR);
    out.print(RunText.of(job, number, run, paused || kept.isPresent()));
    out.println();
    if (kept.isPresent()) {
      out.print(RunText.question(kept.get(), run, clock.instant()));
    } else {
      out.println(HELP);
    }
    for (String line : List.of(unkept, said)) {
      if (!line.isEmpty()) {
        out.println("  " + line);
      }
    }
    if (run.done() && !rung) {
      out.print('\u0007');
      rung = true;
    }
    out.flush();
  }

  private boolean obey(String word) {
    said = "";
    if (word.equals("q")) {
      return false;
    }
    if (kept.isPresent()) {
      answer(word, kept.get(), clock.instant());
      return true;
    }
    switch (word) {
      case "p" -> paused = !paused;
      case "" -> {
        // a bare Enter only draws anew
      }
      default -> read(word);
    }
    keep();
    return true;
  }

  private static String givenUp(KeptRun seen) {
    return seen.passedAh() == 0
        ? ""
        : "The "
            + Quantity.plain(seen.passedAh(), 4)
            + " A.h of before are given up here; if that metal is on the part, log them";
  }

  private void answer(String word, KeptRun seen, Instant now) {
    switch (word) {
      case "on" -> run = seen.onSince(fresh, now);
      case "off" -> run = seen.offSince(fresh);
      case "new" -> {
        run = fresh;
        said = givenUp(seen);
      }
      default -> {
        said = word.isEmpty() ? "" : "'" + word + "' is not on, off, new or q";
        return;
      }
    }
    kept = Optional.empty();
    try {
      keeper.forget();
    } catch (IOException refused) {
      unkept = "What was kept cannot be put away: " + refused;
    }
    keep();
  }

  private void read(String word) {
    if (!run.electric()) {
      said = "'" + word + "' is not p or q; this step takes 0 A";
      return;
    }
    String text = word.matches("[0-9.]+") ? word + " A" : word;
    try {
      double amperes = Quantity.parse(text, Dimension.CURRENT).si();
      said = RunText.farOff(run, amperes).orElse("");
      run = run.reading(amperes);
    } catch (IllegalArgumentException bad) {
      said = "'" + word + "' is not p, q or a current: " + bad.getMessage();
    }
  }
}
