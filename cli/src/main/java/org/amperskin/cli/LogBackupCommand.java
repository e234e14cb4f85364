package org.amperskin.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.amperskin.report.LogJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code amperskin log backup}. */
@Command(
    name = "backup",
    sortOptions = false,
    description = {"Copies the log as it stands, and checks the copy by opening it.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log backup bench-log-2026-03-01.db",
      "",
      "Others may go on writing meanwhile. A file that is there is never replaced.",
      "",
      "Exit: 0 copied and checked, 2 usage, 3 a file that cannot be read or written."
    })
final class LogBackupCommand extends LogVerb {
  @Parameters(paramLabel = "FILE", description = "The copy, which is not there yet.")
  private Path copy;

  @Override
  public Integer call() throws Exception {
    reading(
        log -> {
          log.backUp(copy);
          return copy;
        });
    print(
        json
            ? LogJson.of(logFile(), List.of(), List.of(), Optional.empty(), List.of(copy))
            : "copied and checked:\n" + copy + "\n");
    return ExitCode.ANSWER;
  }
}
