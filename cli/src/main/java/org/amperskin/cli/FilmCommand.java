package org.amperskin.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.film.FilmSheets;
import org.amperskin.film.Paper;
import org.amperskin.film.ScaleCorrection;
import org.amperskin.film.Sheet;
import org.amperskin.film.SheetOptions;
import org.amperskin.job.Estimate;
import org.amperskin.job.JobFilm;
import org.amperskin.report.FilmJson;
import org.amperskin.report.FilmPdf;
import org.amperskin.report.FilmSvg;
import org.amperskin.report.FilmText;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin film}. */
@Command(
    name = "film",
    sortOptions = false,
    description = {"Film sheets of a job at true size, to print and expose through.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin film test-meshes/demo/visor.yaml",
      "  amperskin film test-meshes/demo/visor.yaml --out visor-film.pdf \\",
      "      --measured \"99.6 x 99.8 mm\"",
      "",
      "Exit: 0 made, 2 usage or a fault in the job, 3 a file that cannot be read."
    })
final class FilmCommand extends Verb {
  @Parameters(paramLabel = "JOB", description = "A job file (.yaml).")
  private Path file;

  @Option(names = "--film", paramLabel = "NAME", description = "One film; else all for light.")
  private String film;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Write the sheets: .pdf, or .svg with a file each sheet.")
  private Path out;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      description = "A4 (usual), A3, A2, Letter, Legal or Tabloid.")
  private String paper = "A4";

  @Option(names = "--portrait", description = "Paper upright; else what takes fewer sheets.")
  private boolean portrait;

  @Option(names = "--landscape", description = "Paper across.")
  private boolean landscape;

  @Option(names = "--layers", paramLabel = "N", description = "Films to stack: 2 (usual), 1 to 4.")
  private int layers = 2;

  @Option(
      names = "--measured",
      paramLabel = "LENGTH",
      description = {
        "What the 100 mm bars of an uncorrected sheet measure, as",
        "99.6mm, or \"99.6 x 99.8 mm\" across x along."
      })
  private String measured;

  @Option(
      names = "--mirror",
      paramLabel = "YES/NO",
      description = "yes (usual): printed mirrored, the toner faces the part.")
  private String mirror = "yes";

  @Option(
      names = "--overlap",
      paramLabel = "LENGTH",
      description = "What neighbouring tiles share: 10mm (usual).")
  private String overlap = "10mm";

  @Option(names = "--date", paramLabel = "TEXT", description = "A date to write on the sheets.")
  private String date;

  @Option(
      names = "--test-strips",
      description = "Strips to find the exposure by trial, in place of the film.")
  private boolean testStrips;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    Outputs.check("--out", out, ".pdf", ".svg");
    SheetOptions options = options();
    Estimate estimate = estimate(file);
    List<JobFilm> films;
    List<FilmSheets> sheets = new ArrayList<>();
    try {
      films = JobFilm.of(estimate, Optional.ofNullable(film));
      if (testStrips) {
        films = films.stream().map(f -> f.testStrips(estimate)).toList();
      }
      for (JobFilm each : films) {
        sheets.add(
            FilmSheets.of(each.layout(), options, each.words(estimate, Optional.ofNullable(date))));
      }
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
    List<Path> files = write(sheets, "Film sheets of " + estimate.job().name());
    print(
        json
            ? FilmJson.of(estimate.job().name(), films, sheets, files)
            : FilmText.of(films, sheets, files));
    return ExitCode.ANSWER;
  }

  private List<Path> write(List<FilmSheets> films, String title) throws IOException {
    if (out == null) {
      return List.of();
    }
    List<Sheet> all = films.stream().flatMap(f -> f.sheets().stream()).toList();
    if (Outputs.ends(out, ".pdf")) {
      FilmPdf.write(all, title, out);
      return List.of(out);
    }
    return FilmSvg.write(all, title, out);
  }

  private SheetOptions options() throws UsageFault {
    if (portrait && landscape) {
      throw new UsageFault("--portrait and --landscape: one of them fits");
    }
    try {
      return new SheetOptions(
          paper(),
          portrait
              ? SheetOptions.Turn.PORTRAIT
              : landscape ? SheetOptions.Turn.LANDSCAPE : SheetOptions.Turn.AUTO,
          layers,
          correction(),
          yes("--mirror", mirror),
          1000 * quantity("--overlap", overlap, Dimension.LENGTH));
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
  }

  private Paper paper() throws UsageFault {
    List<String> known = new ArrayList<>();
    for (Paper p : Paper.values()) {
      if (p.label().equalsIgnoreCase(paper)) {
        return p;
      }
      known.add(p.label());
    }
    throw new UsageFault(
        "--paper "
            + paper
            + " is not known"
            + NearestWord.of(paper, known)
                .map(near -> ", did you mean '" + near + "'?")
                .orElse("; there are " + String.join(", ", known)));
  }

  private ScaleCorrection correction() throws UsageFault {
    if (measured == null) {
      return ScaleCorrection.NONE;
    }
    String[] parts = measured.strip().split("\\s*[x*]\\s*");
    if (parts.length > 2) {
      throw new UsageFault("--measured " + measured + ": one length or two fit, across x along");
    }
    String unit = parts[parts.length - 1].replaceAll("[^A-Za-z]", "");
    String first = parts[0].matches("[0-9.]+") ? parts[0] + unit : parts[0];
    double across = mm("--measured", first);
    double along = parts.length == 1 ? across : mm("--measured", parts[1]);
    return new ScaleCorrection(across, along);
  }
}
