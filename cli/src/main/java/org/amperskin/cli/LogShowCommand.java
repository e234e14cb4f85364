package org.amperskin.cli;

import org.amperskin.bench.BenchLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code amperskin log show}. */
@Command(
    name = "show",
    sortOptions = false,
    description = {"One entry in full, or a bath as it is now.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log show 3 --log test-meshes/demo/bench-log.db",
      "  amperskin log show \"big copper\" --log test-meshes/demo/bench-log.db",
      "",
      "Exit: 0 shown, 2 usage, 3 the log cannot be read."
    })
final class LogShowCommand extends LogVerb {
  @Parameters(paramLabel = "WHAT", description = "Number of an entry, or name of a bath.")
  private String what;

  @Override
  public Integer call() throws Exception {
    if (what.matches("[0-9]{1,18}")) {
      show(reading((BenchLog log) -> log.entry(Long.parseLong(what))));
    } else {
      showBath(reading((BenchLog log) -> calibration(log, what)));
    }
    return ExitCode.ANSWER;
  }
}
