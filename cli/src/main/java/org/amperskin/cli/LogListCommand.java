package org.amperskin.cli;

import java.util.List;
import java.util.Optional;
import org.amperskin.bench.LogEntry;
import org.amperskin.report.LogJson;
import org.amperskin.report.LogText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code amperskin log list}. */
@Command(
    name = "list",
    sortOptions = false,
    description = {"A line for each entry, by date.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log list --log test-meshes/demo/bench-log.db",
      "  amperskin log list --log test-meshes/demo/bench-log.db --bath \"big copper\"",
      "",
      "Exit: 0 shown, 2 usage, 3 the log cannot be read."
    })
final class LogListCommand extends LogVerb {
  private static final List<String> KINDS = List.of("job", "weighing", "coupon", "bath", "counter");

  @Option(names = "--bath", paramLabel = "BATH", description = "Only entries of this bath.")
  private String bath;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "Only job, weighing, coupon, bath or counter.")
  private String kind;

  @Override
  public Integer call() throws Exception {
    if (kind != null && !KINDS.contains(kind)) {
      throw new UsageFault("--kind " + kind + " is not one of " + KINDS);
    }
    List<LogEntry> entries =
        reading(
            log -> {
              String only = bath == null ? null : log.bath(bath).name();
              return log.entries().stream()
                  .filter(e -> kind == null || e.kind().equals(kind))
                  .filter(e -> only == null || e.baths().stream().anyMatch(only::equalsIgnoreCase))
                  .toList();
            });
    print(
        json
            ? LogJson.of(logFile(), entries, List.of(), Optional.empty(), List.of())
            : LogText.list(entries));
    return ExitCode.ANSWER;
  }
}
