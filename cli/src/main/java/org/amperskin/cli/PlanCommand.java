package org.amperskin.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.amperskin.bench.BenchLog;
import org.amperskin.bench.Prices;
import org.amperskin.job.Again;
import org.amperskin.job.Estimate;
import org.amperskin.job.Job;
import org.amperskin.job.JobFile;
import org.amperskin.job.StepSpec;
import org.amperskin.plating.How;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.Target;
import org.amperskin.report.CostText;
import org.amperskin.report.JsonReports;
import org.amperskin.report.PlanText;
import org.amperskin.report.ScheduleText;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Unit;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin plan}. */
@Command(
    name = "plan",
    sortOptions = false,
    description = {"Works out a job, or one tank step on a bare part.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin plan test-meshes/demo/visor.yaml",
      "  amperskin plan test-meshes/demo/visor.stl --metal copper \\",
      "      --thickness 60um --density 1.5A/dm2",
      "  amperskin plan test-meshes/demo/visor.yaml \\",
      "      --prices test-meshes/shop/prices.yaml",
      "  amperskin plan test-meshes/demo/visor.yaml --redo \"copper build\"",
      "",
      "Exit: 0 planned, 1 a step has no figure, 2 usage or a fault in the job,",
      "      3 a file that cannot be read."
    })
final class PlanCommand extends Verb {
  private static final List<String> METALS = List.of("copper", "nickel");

  @Parameters(paramLabel = "JOB", description = "A job file (.yaml), or a print file.")
  private Path file;

  @Option(
      names = "--metal",
      paramLabel = "METAL",
      description = "Print file only: copper or nickel; its usual tank recipe is taken.")
  private String metal;

  @Option(names = "--recipe", paramLabel = "NAME", description = "Print file only: the recipe.")
  private String recipe;

  @Option(names = "--thickness", paramLabel = "LENGTH", description = "Mean thickness, as 60um.")
  private String thickness;

  @Option(names = "--charge", paramLabel = "CHARGE", description = "Charge to pass, as 3A.h.")
  private String charge;

  @Option(names = "--density", paramLabel = "DENSITY", description = "As 1.5A/dm2 or 14A/ft2.")
  private String density;

  @Option(names = "--efficiency", paramLabel = "PERCENT", description = "As 95%%.")
  private String efficiency;

  @Option(
      names = "--metal-density",
      paramLabel = "DENSITY",
      description = "Density of the deposit, as 8.9g/cm3.")
  private String metalDensity;

  @Option(names = "--unit", paramLabel = "UNIT", description = "Unit of the print file's numbers.")
  private String unit;

  @Option(names = "--scale", paramLabel = "PERCENT", description = "Scale the part, as 102.5%%.")
  private String scale;

  @Option(
      names = "--prices",
      paramLabel = "FILE",
      description = "A price file (.yaml): adds what the materials cost.")
  private Path prices;

  @Option(names = "--short", description = "The whole job on one screen.")
  private boolean brief;

  @Option(
      names = "--start",
      paramLabel = "HH:MM",
      description = "Time of day of the first step: adds a schedule by the clock.")
  private String start;

  @Option(
      names = "--continue",
      description = "Go on from the charges that the bench log has for this job file.")
  private boolean goOn;

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description = "The log to go on from; else AMPERSKIN_LOG, else the user's.")
  private Path log;

  @Option(
      names = "--redo",
      paramLabel = "STEP",
      description = "Name or number: take its layer off, plate it anew, and what comes after.")
  private String redo;

  @Option(
      names = "--depth",
      paramLabel = "UM",
      description = "With --redo: how much to take off; half of the layer if left out.")
  private String depth;

  @Option(
      names = "--resist-off",
      description = "With --redo: the resist it was plated through is off; lay it again.")
  private boolean resistOff;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    OptionalInt clock = clock();
    boolean redoMore = depth != null || resistOff;
    if (goOn && redo != null) {
      throw new UsageFault("--continue and --redo stand beside one another: one of the two fits");
    }
    if (redoMore && redo == null) {
      throw new UsageFault("--depth and --resist-off belong to --redo STEP, which is missing");
    }
    if (log != null && !goOn) {
      throw new UsageFault("--log belongs to --continue, which is missing");
    }
    if ((goOn || redo != null) && !JobFile.looksLikeJob(file)) {
      throw new UsageFault("--continue and --redo want a job file (.yaml)");
    }
    Optional<Prices> money =
        prices == null ? Optional.empty() : Optional.of(PriceFile.read(prices));
    Estimate estimate = JobFile.looksLikeJob(file) ? fromJob() : estimate(quickJob());
    if (money.isEmpty() && estimate.job().prices().isPresent()) {
      money = Optional.of(PriceFile.read(estimate.job().prices().get()));
    }
    Optional<Prices.Bill> bill = money.map(m -> m.bill(estimate.plan().materials()));
    print(
        json
            ? JsonReports.plan(estimate, bill)
            : text(estimate, clock) + bill.map(CostText::of).orElse(""));
    return estimate.refused() ? ExitCode.REFUSAL : ExitCode.ANSWER;
  }

  private String text(Estimate estimate, OptionalInt clock) {
    String schedule = ScheduleText.of(estimate.plan().schedule(), clock);
    return brief
        ? PlanText.brief(estimate) + (clock.isPresent() ? schedule : "")
        : PlanText.of(estimate) + schedule;
  }

  /** Minutes of the day, if a start is told. */
  private OptionalInt clock() throws UsageFault {
    if (start == null) {
      return OptionalInt.empty();
    }
    if (!start.matches("([01]?[0-9]|2[0-3]):[0-5][0-9]")) {
      throw new UsageFault("--start " + start + ": a time of day from 00:00 to 23:59 fits");
    }
    String[] parts = start.split(":");
    return OptionalInt.of(60 * Integer.parseInt(parts[0]) + Integer.parseInt(parts[1]));
  }

  private Estimate fromJob() throws Exception {
    for (String given :
        new String[] {
          metal, recipe, thickness, charge, density, efficiency, metalDensity, unit, scale
        }) {
      if (given != null) {
        throw new UsageFault("a job file tells everything; '" + given + "' goes into it");
      }
    }
    Job job = JobFile.read(file, library());
    try {
      if (redo != null) {
        OptionalDouble um =
            depth == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                    Unit.of("um").fromSi(positive("--depth", depth, Dimension.LENGTH)));
        return estimate(Again.redone(job, new Again.Redo(redo, um, resistOff), library()));
      }
      return estimate(goOn ? Again.continued(job, logged()) : job);
    } catch (IllegalArgumentException cannot) {
      throw new UsageFault(cannot.getMessage());
    }
  }

  /** Charge that the bench log has for the steps of this job (A.h). */
  private Map<String, Double> logged() throws Exception {
    Path from = log != null ? log : userFolder().log();
    String path = BenchLog.name(file);
    Map<String, Double> charges;
    try (BenchLog bench = BenchLog.open(from)) {
      charges = bench.charges(path);
    }
    if (charges.isEmpty()) {
      throw new UsageFault(
          "--continue: the log "
              + from
              + " has no charge for "
              + path
              + "; amperskin log job keeps it");
    }
    return charges;
  }

  private Job quickJob() throws IOException, UsageFault, YamlFault {
    Recipe used = usedRecipe();
    if ((thickness == null) == (charge == null)) {
      throw new UsageFault("a print file wants --thickness or --charge, one of them");
    }
    Target target =
        thickness != null
            ? Target.um(Unit.of("um").fromSi(positive("--thickness", thickness, Dimension.LENGTH)))
            : Target.ampereHours(
                Unit.of("A.h").fromSi(positive("--charge", charge, Dimension.CHARGE)));
    OptionalDouble share = maybe("--efficiency", efficiency, Dimension.FRACTION);
    if (share.orElse(0) > 1) {
      throw new UsageFault("--efficiency " + efficiency + " is above 100 %");
    }
    StepSpec.Settings settings =
        StepSpec.Settings.of(
            maybe("--density", density, Dimension.CURRENT_DENSITY),
            share,
            maybe("--metal-density", metalDensity, Dimension.DENSITY));
    StepSpec step =
        new StepSpec(
            used.name(),
            Job.WHOLE_SKIN,
            new StepSpec.Plate(used, Optional.of(target), settings, false),
            new Place("command line", 1, 1));
    return new Job(
        file.getFileName().toString(),
        part(file, unit, scale),
        Optional.empty(),
        Job.ContactSpec.NONE,
        Job.TankSpec.NONE,
        Job.SupplySpec.NONE,
        OptionalDouble.empty(),
        Optional.empty(),
        Job.LightSpec.USUAL,
        Map.of(),
        Map.of(),
        List.of(),
        List.of(step));
  }

  private static OptionalDouble maybe(String option, String text, Dimension dimension)
      throws UsageFault {
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(positive(option, text, dimension));
  }

  private Recipe usedRecipe() throws IOException, UsageFault, YamlFault {
    RecipeLibrary library = library();
    if ((metal == null) == (recipe == null)) {
      throw new UsageFault("a print file wants --metal or --recipe, one of them");
    }
    if (recipe != null) {
      try {
        Recipe found = library.find(recipe);
        if (found.how() != How.TANK) {
          throw new UsageFault(
              "--recipe "
                  + recipe
                  + (found.how() == How.ETCH
                      ? " takes metal off; an etch wants a job file"
                      : " is for a brush; a brush step wants a job file"));
        }
        return found;
      } catch (IllegalArgumentException unknown) {
        throw new UsageFault(unknown.getMessage());
      }
    }
    Metal wanted =
        Metal.find(metal)
            .orElseThrow(
                () ->
                    new UsageFault("--metal " + metal + " is not known" + nearest(metal, METALS)));
    // Of two copper baths the high-throw one suits painted prints with recesses.
    List<String> usual = List.of("copper-acid-high-throw", "nickel-sulfamate");
    return library.all().stream()
        .filter(r -> r.metal() == wanted && usual.contains(r.id()))
        .findFirst()
        .orElseThrow(
            () ->
                new UsageFault(
                    "--metal " + metal + " has no tank recipe here; copper and nickel have"));
  }

  private static String nearest(String word, List<String> known) {
    return NearestWord.of(word, known)
        .map(near -> ", did you mean '" + near + "'?")
        .orElse("; " + String.join(" and ", known) + " have tank recipes here");
  }
}
