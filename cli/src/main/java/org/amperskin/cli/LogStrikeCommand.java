package org.amperskin.cli;

import org.amperskin.bench.LogEntry;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log strike}. */
@Command(
    name = "strike",
    sortOptions = false,
    description = {"Strikes a wrong entry out: it stays readable and counts no more.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log strike 2 --why \"weighed wet\"",
      "",
      "Exit: 0 struck out, 2 usage, 3 the log cannot be read."
    })
final class LogStrikeCommand extends LogVerb {
  @Parameters(paramLabel = "N", description = "Number of the entry.")
  private long number;

  @Option(names = "--why", required = true, paramLabel = "TEXT", description = "The reason.")
  private String why;

  @Override
  public Integer call() throws Exception {
    String reason = text("--why", why).orElseThrow();
    LogEntry struck =
        reading(
            log -> {
              log.strike(number, reason);
              return log.entry(number);
            });
    show(struck);
    return ExitCode.ANSWER;
  }
}
