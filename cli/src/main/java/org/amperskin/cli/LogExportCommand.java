package org.amperskin.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.amperskin.report.LogJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log export}. */
@Command(
    name = "export",
    sortOptions = false,
    description = {"Writes every table of the log as CSV, for spreadsheets.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log export log-tables --replace",
      "",
      "Column names end in their unit; dates are year-month-day.",
      "",
      "Exit: 0 written, 2 usage, 3 a file that cannot be read or written."
    })
final class LogExportCommand extends LogVerb {
  @Parameters(paramLabel = "FOLDER", description = "Where to; made if it is not there.")
  private Path folder;

  @Option(names = "--replace", description = "Write over files of the same names.")
  private boolean replace;

  @Override
  public Integer call() throws Exception {
    List<Path> files = reading(log -> log.export(folder, replace));
    print(
        json
            ? LogJson.of(logFile(), List.of(), List.of(), Optional.empty(), files)
            : String.join("", files.stream().map(f -> f + "\n").toList()));
    return ExitCode.ANSWER;
  }
}
