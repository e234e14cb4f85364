package org.amperskin.cli;

import org.amperskin.bench.LogEntry;
import org.amperskin.units.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log counter}. */
@Command(
    name = "counter",
    sortOptions = false,
    description = {"Keeps charge passed through a bath beside the jobs of the log.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log bath \"counted copper\" --recipe copper-acid-high-throw",
      "  amperskin log counter \"counted copper\" --add 1.5A.h",
      "  amperskin log counter \"counted copper\" --reading 130A.h",
      "",
      "A reading is all charge of the bath so far and replaces what the log had.",
      "",
      "Exit: 0 kept, 2 usage, 3 the log cannot be read."
    })
final class LogCounterCommand extends LogVerb {
  @Parameters(paramLabel = "BATH", description = "The bath.")
  private String bath;

  @Option(names = "--add", paramLabel = "CHARGE", description = "Charge passed, as 1.5A.h.")
  private String add;

  @Option(
      names = "--reading",
      paramLabel = "CHARGE",
      description = "What the bath's meter reads, as 130A.h.")
  private String reading;

  @Mixin private EntryOptions entry = new EntryOptions();

  @Override
  public Integer call() throws Exception {
    if ((add == null) == (reading == null)) {
      throw new UsageFault("a counter wants --add or --reading, one of them");
    }
    return keep(
        new LogEntry.Counter(
            entry.head(),
            bath,
            maybe("A.h", "--add", add, Dimension.CHARGE),
            maybe("A.h", "--reading", reading, Dimension.CHARGE)));
  }
}
