package org.amperskin.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.bench.BenchLog;
import org.amperskin.bench.LogEntry;
import org.amperskin.job.Job;
import org.amperskin.job.JobFile;
import org.amperskin.job.StepSpec;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log job}. */
@Command(
    name = "job",
    sortOptions = false,
    description = {"Keeps a job that was run, with the charge of its steps.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log job test-meshes/demo/visor.yaml \\",
      "      --step \"copper build, 20.4 A.h\" --date 2026-03-01",
      "",
      "Exit: 0 kept, 2 usage, 3 a file that cannot be read."
    })
final class LogJobCommand extends LogVerb {
  @Parameters(paramLabel = "JOB", description = "The job file.")
  private Path job;

  @Option(
      names = "--step",
      required = true,
      paramLabel = "STEP",
      description = "A step and its charge: \"NAME, 3.1 A.h\" or \"NAME, 3.1 A.h, BATH\".")
  private List<String> steps;

  @Mixin private EntryOptions entry = new EntryOptions();

  @Override
  public Integer call() throws Exception {
    Job planned = JobFile.read(job, library());
    List<String> names = planned.steps().stream().map(StepSpec::name).toList();
    List<LogEntry.Step> done = new ArrayList<>();
    for (String step : steps) {
      List<String> parts = parts("--step", step, 2, 3, "NAME, 3.1 A.h, BATH");
      String name = parts.get(0);
      if (!names.contains(name)) {
        throw new UsageFault(
            "--step '"
                + name
                + "' is not in "
                + job.getFileName()
                + NearestWord.of(name, names)
                    .map(near -> ", did you mean '" + near + "'?")
                    .orElse("; it has " + names));
      }
      double chargeAh = in("A.h", "--step " + name, parts.get(1), Dimension.CHARGE);
      done.add(
          new LogEntry.Step(
              name, chargeAh, parts.size() > 2 ? Optional.of(parts.get(2)) : Optional.empty()));
    }
    String path = BenchLog.name(job);
    return keep(new LogEntry.Job(entry.head(), path, done));
  }
}
