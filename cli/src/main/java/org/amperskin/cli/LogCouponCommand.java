package org.amperskin.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.bench.BenchLog;
import org.amperskin.bench.LogEntry;
import org.amperskin.units.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log coupon}. */
@Command(
    name = "coupon",
    sortOptions = false,
    description = {"Keeps a coupon plated to the colour wanted: its charge per area.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log coupon \"dark 1\" --area 0.2dm2 --charge 0.17A.h \\",
      "      --colour \"even black, satin\"",
      "  amperskin log coupon \"dark 2\" --coverage 0.9A.h/dm2",
      "",
      "Exit: 0 kept, 2 usage, 3 the log or the photo cannot be read."
    })
final class LogCouponCommand extends LogVerb {
  @Parameters(paramLabel = "NAME", description = "The coupon.")
  private String name;

  @Option(
      names = "--coverage",
      paramLabel = "CHARGE",
      description = "Charge per area to the colour, as 0.9A.h/dm2; else by area and charge.")
  private String coverage;

  @Option(names = "--area", paramLabel = "AREA", description = "Its area, as 0.2dm2.")
  private String area;

  @Option(names = "--charge", paramLabel = "CHARGE", description = "Charge passed, as 0.17A.h.")
  private String charge;

  @Option(names = "--colour", paramLabel = "TEXT", description = "What it looks like.")
  private String colour;

  @Option(names = "--photo", paramLabel = "FILE", description = "A photo; its path is kept.")
  private Path photo;

  @Option(names = "--bath", paramLabel = "BATH", description = "The bath or brush solution.")
  private String bath;

  @Mixin private EntryOptions entry = new EntryOptions();

  @Override
  public Integer call() throws Exception {
    OptionalDouble areaDm2 = maybe("dm2", "--area", area, Dimension.AREA);
    OptionalDouble chargeAh = maybe("A.h", "--charge", charge, Dimension.CHARGE);
    if (photo != null && !Files.isRegularFile(photo)) {
      throw new java.nio.file.NoSuchFileException(photo.toString());
    }
    return keep(
        new LogEntry.Coupon(
            entry.head(),
            text("NAME", name).orElseThrow(),
            coverage(areaDm2, chargeAh),
            areaDm2,
            chargeAh,
            text("--colour", colour),
            Optional.ofNullable(photo).map(BenchLog::name),
            text("--bath", bath)));
  }

  private double coverage(OptionalDouble areaDm2, OptionalDouble chargeAh) throws UsageFault {
    boolean both = areaDm2.isPresent() && chargeAh.isPresent();
    if (coverage == null && !both) {
      throw new UsageFault("a coupon wants --coverage, or --area and --charge");
    }
    if (coverage == null) {
      return chargeAh.getAsDouble() / areaDm2.getAsDouble();
    }
    double told = in("A.h/dm2", "--coverage", coverage, Dimension.CHARGE_PER_AREA);
    if (both) {
      double found = chargeAh.getAsDouble() / areaDm2.getAsDouble();
      if (Math.abs(found / told - 1) > 0.01) {
        throw new UsageFault(
            "--coverage "
                + coverage
                + " is not --charge "
                + charge
                + " over --area "
                + area
                + ", which is "
                + org.amperskin.report.Figures.number(found)
                + " A.h/dm2");
      }
    }
    return told;
  }
}
