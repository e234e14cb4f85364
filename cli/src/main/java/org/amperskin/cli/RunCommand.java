package org.amperskin.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.amperskin.job.Estimate;
import org.amperskin.job.RunKeeper;
import org.amperskin.plating.StepEstimate;
import org.amperskin.plating.StepRun;
import org.amperskin.report.RunJson;
import org.amperskin.report.RunText;
import org.amperskin.units.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin run}. */
@Command(
    name = "run",
    sortOptions = false,
    description = {
      "Shows a step while it is done: what to set in large figures, ampere-hours and",
      "time left, what to watch for.",
      ""
    },
    footer = {
      "",
      "Example:",
      "  amperskin run test-meshes/demo/visor.yaml \"copper build\" --at \"35 min\"",
      "",
      "Without --at it runs by the clock, drawn anew each second; type the current",
      "that the meter shows and the count follows it. The count is kept on the disk:",
      "after a crash the same command asks and goes on. At the end it tells the line",
      "that keeps the charge in the bench log.",
      "",
      "Exit: 0 shown, 1 the step has no figure, 2 usage or a fault in the job,",
      "      3 a file that cannot be read."
    })
final class RunCommand extends Verb {
  private static final double SMALLEST_KEPT_AH = 1e-4;

  @Parameters(index = "0", paramLabel = "JOB", description = "Job file (.yaml).")
  private Path file;

  @Parameters(index = "1", paramLabel = "STEP", description = "Name of the step, or its number.")
  private String step;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "Show once how it stands that long after the start.")
  private String at;

  @Option(
      names = "--read",
      paramLabel = "CURRENT",
      description = "The current that the meter shows, if not the one set.")
  private String read;

  @Option(names = "--json", description = "A moment as JSON: --at, or the start.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    jobFile(file, "steps of jobs are run");
    Estimate estimate = estimate(file);
    int number;
    try {
      number = estimate.job().numberOf(step);
    } catch (IllegalArgumentException unknown) {
      throw new UsageFault(unknown.getMessage());
    }
    StepEstimate chosen = estimate.plan().steps().get(number - 1);
    if (chosen.refused()) {
      complain("step '" + chosen.name() + "' has no figure: " + chosen.refusal().orElseThrow());
      return ExitCode.REFUSAL;
    }
    StepRun run =
        StepRun.of(chosen)
            .orElseThrow(() -> new UsageFault("step '" + chosen.name() + "' takes no told time"));
    if (read != null) {
      if (!run.electric()) {
        throw new UsageFault("--read " + read + ": step '" + chosen.name() + "' has no current");
      }
      run = run.reading(positive("--read", read, Dimension.CURRENT));
    }
    String job = estimate.job().name();
    RunKeeper keeper = new RunKeeper(userFolder().runs(), file, estimate.job().stepNames(), number);
    if (at != null || json) {
      double seconds = at == null ? 0 : quantity("--at", at, Dimension.TIME);
      if (!(seconds >= 0)) {
        throw new UsageFault("--at " + at + " is before the start");
      }
      StepRun then = run.after(seconds);
      print(
          json
              ? RunJson.of(job, number, then, keeper.kept())
              : RunText.of(job, number, then, false));
      return ExitCode.ANSWER;
    }
    StepRun ended =
        new RunLoop(job, number, run, keeper, Clock.systemUTC(), typed(), out()).untilEnded();
    if (ended.electric() && ended.passedAh() >= SMALLEST_KEPT_AH) {
      boolean goesOn = !ended.done() && keeper.kept().isPresent();
      print(
          String.format(
              Locale.ROOT,
              (goesOn
                      ? "It is kept as it stands: the same command goes on from here. Only if it does"
                          + " not,%nkeep it in the log, and plan --continue plans the rest:"
                      : "Keep it:")
                  + "%n  amperskin log job %s --step \"%s, %.4f A.h\"%n",
              file,
              chosen.name(),
              ended.passedAh()));
    }
    return ExitCode.ANSWER;
  }

  /** Lines typed, read aside; the end of the input ends the run. */
  private static BlockingQueue<String> typed() {
    BlockingQueue<String> lines = new LinkedBlockingQueue<>();
    Thread reader =
        new Thread(
            () -> {
              try (BufferedReader in =
                  new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                  lines.add(line);
                }
              } catch (IOException closed) {
                // the input is gone: the run ends as at its end
              }
              lines.add("q");
            },
            "typed");
    reader.setDaemon(true);
    reader.start();
    return lines;
  }
}
