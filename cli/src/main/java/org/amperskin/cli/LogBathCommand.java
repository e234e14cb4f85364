package org.amperskin.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.bench.Bath;
import org.amperskin.bench.BenchLog;
import org.amperskin.bench.Calibration;
import org.amperskin.bench.Chemical;
import org.amperskin.bench.LogEntry;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.units.Unit;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log bath}. */
@Command(
    name = "bath",
    sortOptions = false,
    description = {"Begins a bath, keeps what was found in it or added, or shows it.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log bath \"small nickel\" --recipe nickel-watts --volume 2L \\",
      "      --metal 72g/L --dose \"wetting agent, 100 mL/(kA.h)\"",
      "  amperskin log bath \"small nickel\" --add \"boric acid, 20 g\" --date 2026-03-01",
      "  amperskin log bath \"small nickel\"",
      "",
      "Metal in a chemical known to 'mix' is worked out; of others give it:",
      "--add \"concentrate, 100 mL, 18 g\".",
      "",
      "Exit: 0 kept or shown, 2 usage, 3 the log cannot be read."
    })
final class LogBathCommand extends LogVerb {
  @Parameters(paramLabel = "BATH", description = "Your name for it.")
  private String name;

  @Option(names = "--recipe", paramLabel = "NAME", description = "The recipe it was made up by.")
  private String recipe;

  @Option(
      names = "--anode",
      paramLabel = "KIND",
      description = "soluble or insoluble; else as its recipe says.")
  private String anode;

  @Option(names = "--volume", paramLabel = "VOLUME", description = "Its volume now, as 5L.")
  private String volume;

  @Option(
      names = "--metal",
      paramLabel = "STRENGTH",
      description = "Its metal by analysis, or as made up, as 17g/L.")
  private String metal;

  @Option(
      names = "--add",
      paramLabel = "WHAT",
      description = "Added: \"NAME, AMOUNT\" or \"NAME, AMOUNT, METAL\"; may be repeated.")
  private List<String> added = List.of();

  @Option(
      names = "--dose",
      paramLabel = "WHAT",
      description = "An additive's use: \"NAME, 150 mL/(kA.h)\"; may be repeated.")
  private List<String> doses = List.of();

  @Mixin private EntryOptions entry = new EntryOptions();

  @Override
  public Integer call() throws Exception {
    boolean reads = volume != null || metal != null || !added.isEmpty() || !doses.isEmpty();
    boolean begins = recipe != null || anode != null;
    if (!reads && !begins) {
      if (entry.told()) {
        throw new UsageFault("--date and --note go with --volume, --metal, --add or --dose");
      }
      showBath(reading(log -> calibration(log, name)));
      return ExitCode.ANSWER;
    }
    Bath told = new Bath(checkedName(), Optional.ofNullable(checkedRecipe()), soluble());
    Optional<LogEntry.BathReading> found = reads ? Optional.of(reading()) : Optional.empty();
    showBath(writing(log -> keep(log, told, found, begins)));
    return ExitCode.ANSWER;
  }

  /** A bath is begun by its recipe or anode; a mistyped name must not begin one. */
  private static Calibration keep(
      BenchLog log, Bath told, Optional<LogEntry.BathReading> entry, boolean begins)
      throws Exception {
    if (!begins) {
      log.bath(told.name());
    }
    log.write(told, entry);
    return calibration(log, told.name());
  }

  private String checkedName() throws UsageFault {
    return text("BATH", name).orElseThrow();
  }

  private String checkedRecipe() throws IOException, UsageFault, YamlFault {
    if (recipe != null) {
      try {
        return library().find(recipe).id();
      } catch (IllegalArgumentException unknown) {
        throw new UsageFault(unknown.getMessage());
      }
    }
    return null;
  }

  private Optional<Boolean> soluble() throws UsageFault {
    if (anode == null) {
      return Optional.empty();
    }
    if (!anode.equals("soluble") && !anode.equals("insoluble")) {
      throw new UsageFault("--anode " + anode + " is not one of [soluble, insoluble]");
    }
    return Optional.of(anode.equals("soluble"));
  }

  private LogEntry.BathReading reading() throws UsageFault {
    List<LogEntry.Addition> additions = new ArrayList<>();
    for (String what : added) {
      additions.add(addition(parts("--add", what, 2, 3, "NAME, AMOUNT, METAL")));
    }
    List<LogEntry.Dose> rates = new ArrayList<>();
    for (String what : doses) {
      List<String> parts = parts("--dose", what, 2, 2, "NAME, 150 mL/(kA.h)");
      double mlPerAh = in("mL/(A.h)", "--dose", parts.get(1), Dimension.LIQUID_PER_CHARGE);
      rates.add(new LogEntry.Dose(parts.get(0), mlPerAh));
    }
    return new LogEntry.BathReading(
        entry.head(),
        checkedName(),
        maybe("L", "--volume", volume, Dimension.VOLUME),
        maybe("g/L", "--metal", metal, Dimension.CONCENTRATION),
        additions,
        rates);
  }

  private static LogEntry.Addition addition(List<String> parts) throws UsageFault {
    String what = parts.get(0);
    Optional<Chemical> chemical = Chemical.find(what);
    String amount = parts.get(1);
    boolean liquid = isVolume(amount);
    double value =
        liquid
            ? in("mL", "--add " + what, amount, Dimension.VOLUME)
            : in("g", "--add " + what, amount, Dimension.MASS);
    double metalG = 0;
    if (parts.size() > 2) {
      metalG = in("g", "--add " + what + " metal", parts.get(2), Dimension.MASS);
    } else if (!liquid) {
      metalG = chemical.map(Chemical::metalShare).orElse(0.0) * value;
    }
    return new LogEntry.Addition(what, value, liquid ? "mL" : "g", metalG);
  }

  private static boolean isVolume(String amount) {
    try {
      return Unit.of("mL").fromSi(Quantity.parse(amount, Dimension.VOLUME).si()) != 0;
    } catch (QuantityException notOne) {
      return false; // read as a mass, whose message says what fits
    }
  }
}
