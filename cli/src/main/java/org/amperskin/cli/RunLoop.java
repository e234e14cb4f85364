package org.amperskin.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.amperskin.plating.StepRun;
import org.amperskin.report.RunText;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;

/** Shows a running step, anew each second, until it is ended. */
final class RunLoop {
  private static final String HOME_AND_CLEAR = "\u001b[H\u001b[2J";
  private static final String HELP =
      "  Enter after: a current as read (6.5 A), p pauses and goes on, q ends";

  private final String job;
  private final int number;
  private final Clock clock;
  private final BlockingQueue<String> typed;
  private final PrintWriter out;
  private StepRun run;
  private long last;
  private boolean paused;
  private boolean rung;
  private String said = "";

  RunLoop(
      String job,
      int number,
      StepRun run,
      Clock clock,
      BlockingQueue<String> typed,
      PrintWriter out) {
    this.job = job;
    this.number = number;
    this.run = run;
    this.clock = clock;
    this.typed = typed;
    this.out = out;
    this.last = clock.millis();
  }

  /** Runs until q is typed; gives the step as it then stands. */
  StepRun untilEnded() throws InterruptedException {
    while (true) {
      show();
      String word = typed.poll(1, TimeUnit.SECONDS);
      tick();
      if (word != null && !obey(word.strip())) {
        return run;
      }
    }
  }

  private void tick() {
    long now = clock.millis();
    if (!paused) {
      run = run.after(Math.max(0, now - last) / 1000.0);
    }
    last = now;
  }

  private void show() {
    out.print(HOME_AND_CLEAR);
    out.print(RunText.of(job, number, run, paused));
    out.println();
    out.println(HELP);
    if (!said.isEmpty()) {
      out.println("  " + said);
    }
    if (run.done() && !rung) {
      out.print('\u0007');
      rung = true;
    }
    out.flush();
  }

  private boolean obey(String word) {
    said = "";
    switch (word) {
      case "q" -> {
        return false;
      }
      case "p" -> paused = !paused;
      case "" -> {
        // a bare Enter only draws anew
      }
      default -> read(word);
    }
    return true;
  }

  private void read(String word) {
    String text = word.matches("[0-9.]+") ? word + " A" : word;
    try {
      run = run.reading(Quantity.parse(text, Dimension.CURRENT).si());
    } catch (IllegalArgumentException bad) {
      said = "'" + word + "' is not p, q or a current: " + bad.getMessage();
    }
  }
}
