package org.amperskin.cli;

import java.util.OptionalLong;
import org.amperskin.bench.LogEntry;
import org.amperskin.units.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log weigh}. */
@Command(
    name = "weigh",
    sortOptions = false,
    description = {"Keeps the weighings of a part or coupon before and after plating.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log weigh \"strip 2\" --before 12.345g --after 12.581g --charge 0.2A.h",
      "",
      "Three coupons or more with --bath and --charge give the bath's efficiency:",
      "log calibrate. Weigh dry; write the digits the balance shows, zeros too.",
      "",
      "Exit: 0 kept, 2 usage, 3 the log cannot be read."
    })
final class LogWeighCommand extends LogVerb {
  @Parameters(paramLabel = "NAME", description = "The part or coupon.")
  private String name;

  @Option(
      names = "--before",
      required = true,
      paramLabel = "MASS",
      description = "Before plating, as 12.345g.")
  private String before;

  @Option(
      names = "--after",
      required = true,
      paramLabel = "MASS",
      description = "After plating, dry, as 12.581g.")
  private String after;

  @Option(names = "--charge", paramLabel = "CHARGE", description = "Charge between, as 0.2A.h.")
  private String charge;

  @Option(names = "--bath", paramLabel = "BATH", description = "The bath it was plated in.")
  private String bath;

  @Option(
      names = "--balance",
      paramLabel = "MASS",
      description = "Smallest step of the balance; else that of the last digit typed.")
  private String balance;

  @Option(
      names = "--job",
      paramLabel = "N",
      description = "Entry of the job whose charge this is, so that it counts once.")
  private Long job;

  @Mixin private EntryOptions entry = new EntryOptions();

  @Override
  public Integer call() throws Exception {
    double beforeG = in("g", "--before", before, Dimension.MASS);
    double afterG = in("g", "--after", after, Dimension.MASS);
    double stepG =
        balance != null
            ? in("g", "--balance", balance, Dimension.MASS)
            : Math.min(lastDigitG(before), lastDigitG(after));
    return keep(
        new LogEntry.Weighing(
            entry.head(),
            text("NAME", name).orElseThrow(),
            beforeG,
            afterG,
            stepG,
            maybe("A.h", "--charge", charge, Dimension.CHARGE),
            text("--bath", bath),
            job == null ? OptionalLong.empty() : OptionalLong.of(job)));
  }
}
