package org.amperskin.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.amperskin.job.Job;
import org.amperskin.job.JobFile;
import org.amperskin.job.RackJobs;
import org.amperskin.report.JsonReports;
import org.amperskin.report.RackText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin rack}. */
@Command(
    name = "rack",
    sortOptions = false,
    description = {
      "Hangs the parts of several jobs in one tank: who draws what, the current to set,",
      "and what happens when one leaves.",
      ""
    },
    footer = {
      "",
      "Example:",
      "  amperskin rack test-meshes/demo/visor.yaml test-meshes/demo/visor.yaml \\",
      "      test-meshes/demo/shoulder-plate.yaml",
      "",
      "Name a job twice for two such parts. All run at the lowest density asked.",
      "",
      "Exit: 0 answered, 2 usage or a fault in a job, 3 a file that cannot be read."
    })
final class RackCommand extends Verb {
  @Parameters(paramLabel = "JOB", arity = "1..*", description = "Job files (.yaml).")
  private List<Path> files;

  @Option(
      names = "--step",
      paramLabel = "NAME",
      description = "Name of the tank step; else the first job's first, and its bath.")
  private String step;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    Map<Path, Job> read = new LinkedHashMap<>();
    List<Job> jobs = new ArrayList<>();
    for (Path file : files) {
      jobFile(file, "jobs hang on a rack");
    }
    for (Path file : files) {
      Job job = read.get(file);
      if (job == null) {
        job = JobFile.read(file, library());
        read.put(file, job);
      }
      jobs.add(job);
    }
    RackJobs rack = RackJobs.of(jobs, Optional.ofNullable(step), this::estimate);
    print(json ? JsonReports.rack(rack) : RackText.of(rack));
    return ExitCode.ANSWER;
  }
}
