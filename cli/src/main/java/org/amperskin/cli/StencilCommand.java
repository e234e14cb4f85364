package org.amperskin.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.amperskin.film.Stencil;
import org.amperskin.film.StencilOptions;
import org.amperskin.job.Estimate;
import org.amperskin.job.JobFilm;
import org.amperskin.report.StencilFile;
import org.amperskin.report.StencilJson;
import org.amperskin.report.StencilText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin stencil}. */
@Command(
    name = "stencil",
    sortOptions = false,
    description = {"Outlines of a job's film for a cutting plotter: the other way to mask.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin stencil test-meshes/demo/visor.yaml --bridges 0.8mm",
      "  amperskin stencil test-meshes/demo/visor.yaml --out visor.dxf",
      "",
      "Exit: 0 made, 2 usage or a fault in the job, 3 a file that cannot be read."
    })
final class StencilCommand extends Verb {
  @Parameters(paramLabel = "JOB", description = "A job file (.yaml).")
  private Path file;

  @Option(
      names = "--film",
      paramLabel = "NAME",
      description = "Film or stop-off to cut; needed if the job has several.")
  private String film;

  @Option(names = "--out", paramLabel = "FILE", description = "Write the outlines: .svg or .dxf.")
  private Path out;

  @Option(
      names = "--bridges",
      paramLabel = "LENGTH",
      description = "Tie islands down with bridges of this width, as 0.8mm.")
  private String bridges;

  @Option(
      names = "--least",
      paramLabel = "LENGTH",
      description = "Narrowest line or space the blade cuts: 0.5mm (usual).")
  private String least = "0.5mm";

  @Option(
      names = "--border",
      paramLabel = "LENGTH",
      description = "From the film to the weeding border: 6mm (usual).")
  private String border = "6mm";

  @Option(
      names = "--mirror",
      paramLabel = "YES/NO",
      description = "no (usual): cut from the front; yes: from the back.")
  private String mirror = "no";

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    Outputs.check("--out", out, ".svg", ".dxf");
    StencilOptions options = options();
    Estimate estimate = estimate(file);
    JobFilm cut;
    Stencil stencil;
    try {
      cut = JobFilm.of(estimate, Optional.of(name(estimate))).get(0);
      stencil = Stencil.of(cut.layout(), options);
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
    if (out != null) {
      StencilFile.write(stencil, "Stencil of " + estimate.job().name(), out);
    }
    Optional<Path> written = Optional.ofNullable(out);
    print(
        json
            ? StencilJson.of(estimate.job().name(), cut, stencil, written)
            : StencilText.of(cut, stencil, written));
    return ExitCode.ANSWER;
  }

  private String name(Estimate estimate) throws UsageFault {
    Set<String> films = estimate.job().films().keySet();
    if (film == null && films.size() > 1) {
      throw new UsageFault("job has the films " + films + ": name one with --film");
    }
    return film != null ? film : films.stream().findFirst().orElse("");
  }

  private StencilOptions options() throws UsageFault {
    try {
      return new StencilOptions(
          mm("--least", least),
          mm("--border", border),
          bridges == null ? 0 : mm("--bridges", bridges),
          yes("--mirror", mirror));
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
  }
}
