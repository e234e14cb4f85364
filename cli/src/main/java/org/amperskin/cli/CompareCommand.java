package org.amperskin.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.amperskin.job.Comparison;
import org.amperskin.job.Estimate;
import org.amperskin.job.JobFile;
import org.amperskin.report.CompareText;
import org.amperskin.report.ComparisonPicture;
import org.amperskin.report.JsonReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin compare}. */
@Command(
    name = "compare",
    sortOptions = false,
    description = {
      "Sets jobs side by side: exposed area, smallest lines, current, time, metal.",
      ""
    },
    footer = {
      "",
      "Example:",
      "  amperskin compare test-meshes/demo/visor.yaml \\",
      "      test-meshes/demo/visor-lattice.yaml --picture layouts.png",
      "",
      "Exit: 0 compared, 1 a step has no figure, 2 usage or a fault in a job,",
      "      3 a file that cannot be read."
    })
final class CompareCommand extends Verb {
  @Parameters(paramLabel = "JOB", arity = "2..*", description = "Job files (.yaml).")
  private List<Path> files;

  @Option(
      names = "--picture",
      paramLabel = "PNG",
      description = "Draw the parts side by side, painted by region (.png).")
  private Path picture;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    Outputs.check("--picture", picture, ".png");
    List<Estimate> jobs = new ArrayList<>();
    for (Path file : files) {
      if (!JobFile.looksLikeJob(file)) {
        throw new UsageFault(file + " is not named as a job file (.yaml); jobs are compared");
      }
    }
    for (Path file : files) {
      jobs.add(estimate(file));
    }
    Comparison comparison = Comparison.of(jobs);
    if (picture != null) {
      ComparisonPicture.write(comparison, picture);
    }
    print(json ? JsonReports.compare(comparison) : CompareText.of(comparison));
    boolean refused = jobs.stream().anyMatch(Estimate::refused);
    return refused ? ExitCode.REFUSAL : ExitCode.ANSWER;
  }
}
