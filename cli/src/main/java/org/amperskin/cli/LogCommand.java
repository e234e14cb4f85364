package org.amperskin.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** {@code amperskin log}. */
@Command(
    name = "log",
    sortOptions = false,
    subcommands = {
      LogJobCommand.class,
      LogWeighCommand.class,
      LogCouponCommand.class,
      LogBathCommand.class,
      LogCounterCommand.class,
      LogListCommand.class,
      LogShowCommand.class,
      LogCalibrateCommand.class,
      LogStrikeCommand.class,
      LogExportCommand.class,
      LogBackupCommand.class
    },
    synopsisSubcommandLabel = "WHAT",
    description = {"The bench log: what was done, weighed and added, and what it teaches.", ""},
    commandListHeading = "%nWhat:%n",
    footer = {
      "",
      "Example:",
      "  amperskin log bath \"big copper\" --recipe copper-acid-high-throw \\",
      "      --volume 5L --metal 17g/L",
      "  amperskin log weigh \"strip 1\" --before 12.345g --after 12.581g \\",
      "      --charge 0.2A.h --bath \"big copper\"",
      "  amperskin log list",
      "  amperskin log show 1",
      "  amperskin log calibrate \"big copper\"",
      "",
      "The log is one file: --log FILE, else AMPERSKIN_LOG, else bench-log.db in",
      "AMPERSKIN_HOME, else in ~/.local/share/amperskin. An entry is on the disk when",
      "its number is shown. While the log is in use its newest entries stand in the",
      "file beside it that ends in -wal: copy it with 'log backup', not by hand.",
      "",
      "Exit: 0 kept or shown, 1 no figure, 2 usage, 3 the log cannot be read."
    })
final class LogCommand extends Verb {
  @CommandLine.Spec private CommandLine.Model.CommandSpec self;

  @Override
  public Integer call() throws UsageFault {
    throw new UsageFault(
        "log what? "
            + String.join(", ", self.subcommands().keySet())
            + "; see amperskin log --help");
  }
}
