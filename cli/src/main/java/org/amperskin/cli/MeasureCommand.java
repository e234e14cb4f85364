package org.amperskin.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.amperskin.io.PrintFile;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.job.Job;
import org.amperskin.job.MeasuredPart;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.report.JsonReports;
import org.amperskin.report.MeasureText;
import org.amperskin.skin.Skin;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin measure}. */
@Command(
    name = "measure",
    sortOptions = false,
    description = {"Area, volume, box and faults of print files.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin measure test-meshes/demo/visor.stl",
      "  amperskin measure --json test-meshes/demo/shoulder-plate.obj",
      "  amperskin measure --list --json test-meshes/demo/shoulder-plate.obj",
      "  amperskin measure --quick --unit in test-meshes/examples/cube20.stl",
      "",
      "A file that cannot be read is told and passed over; the others are measured.",
      "Exit: 0 measured, 2 usage, 3 a file that cannot be read."
    })
final class MeasureCommand extends Verb {
  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "Print files: STL, OBJ, PLY or 3MF, also packed with gzip.")
  private List<Path> files;

  @Option(names = "--quick", description = "Only read and sum the area.")
  private boolean quick;

  @Option(
      names = "--no-overlaps",
      description = "Look neither for crossing faces nor for inner shells.")
  private boolean noOverlaps;

  @Option(names = "--no-spray", description = "Do not work out where sprayed paint reaches.")
  private boolean noSpray;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      description =
          "Unit of the file's numbers: mm, cm, m, in, ft, um. Else the file's own, else mm.")
  private String unit;

  @Option(
      names = "--part",
      paramLabel = "PART",
      description = "Only this part: a group's name or a body's number; may be repeated.")
  private List<String> parts = List.of();

  @Option(names = "--sheets", description = "Take open bodies as sheets, wet on both sides.")
  private boolean sheets;

  @Option(names = "--list", description = "List bodies and groups too, each with its box.")
  private boolean list;

  @Option(names = "--scale", paramLabel = "PERCENT", description = "Scale the part, as 102.5%%.")
  private String scale;

  @Option(
      names = "--json",
      description = "Answer as JSON: one object, or an array for several files.")
  private boolean json;

  @Override
  public Integer call() throws UsageFault {
    Skin.OpenBodies open = sheets ? Skin.OpenBodies.SHEETS : Skin.OpenBodies.CLOSED;
    List<String> answers = new ArrayList<>();
    int code = ExitCode.ANSWER;
    for (Path file : files) {
      try {
        answers.add(answer(part(file, unit, scale).with(parts, open)));
      } catch (PrintFileException bad) {
        complain(file + ": " + bad.getMessage());
        code = ExitCode.UNREADABLE;
      } catch (IllegalArgumentException noSuchPart) {
        throw new UsageFault(file + ": " + noSuchPart.getMessage());
      } catch (IOException bad) {
        complain(Faults.message(bad));
        code = ExitCode.UNREADABLE;
      }
    }
    if (json && files.size() > 1) {
      print("[\n" + String.join(",\n", answers.stream().map(String::strip).toList()) + "\n]\n");
    } else {
      print(String.join(json ? "" : "\n", answers));
    }
    return code;
  }

  private String answer(Job.PartSpec part) throws IOException, PrintFileException {
    try (ProgressLine progress = progress()) {
      if (quick) {
        PrintFile.Quick sum = MeasuredPart.quick(part, progress);
        String used = part.unit().or(sum::fileUnit).orElse(MeasuredPart.USUAL_UNIT);
        boolean assumed = part.unit().isEmpty() && sum.fileUnit().isEmpty();
        return json
            ? JsonReports.quick(part.file(), sum, used, assumed, part.scale())
            : MeasureText.quick(part.file(), sum, used, assumed, part.scale());
      }
      MeshDiagnosis.Search search =
          noOverlaps ? MeshDiagnosis.Search.NO_OVERLAPS : MeshDiagnosis.Search.ALL;
      MeasuredPart measured = MeasuredPart.of(part, search, !noSpray && !noOverlaps, progress);
      return json
          ? JsonReports.measure(measured, list)
          : MeasureText.of(measured) + (list ? MeasureText.parts(measured) : "");
    }
  }
}
