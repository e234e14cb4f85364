package org.amperskin.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.amperskin.bench.CalibratedRecipe;
import org.amperskin.bench.Calibration;
import org.amperskin.io.common.WholeFile;
import org.amperskin.report.LogJson;
import org.amperskin.report.LogText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin log calibrate}. */
@Command(
    name = "calibrate",
    sortOptions = false,
    description = {"A bath's efficiency and coverage by its coupons, with their uncertainty.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin log calibrate \"big copper\" --log test-meshes/demo/bench-log.db",
      "",
      "--as \"my copper\" writes a recipe with that efficiency into the user's folder",
      "recipes; a job takes it as recipe: my copper.",
      "",
      "Exit: 0 calibrated, 1 no figure, 2 usage, 3 the log cannot be read."
    })
final class LogCalibrateCommand extends LogVerb {
  @Parameters(paramLabel = "BATH", description = "The bath.")
  private String bath;

  @Option(
      names = "--as",
      paramLabel = "NAME",
      description = "Write a recipe of this name, over an older one of the same.")
  private String as;

  @Override
  public Integer call() throws Exception {
    Calibration found = reading(log -> calibration(log, bath));
    boolean figure = found.fit().isPresent() || found.coverage().isPresent();
    Optional<CalibratedRecipe> recipe = Optional.empty();
    Optional<String> refusal = Optional.empty();
    if (as != null) {
      try {
        recipe = Optional.of(recipe(found));
      } catch (IllegalArgumentException cannot) {
        refusal = Optional.of(cannot.getMessage());
      }
    }
    List<Path> files = recipe.isPresent() ? List.of(write(recipe.get())) : List.of();
    if (json) {
      print(LogJson.of(logFile(), List.of(), List.of(found.state()), Optional.of(found), files));
    } else {
      print(LogText.calibration(found));
      files.forEach(f -> print("\nrecipe written:\n" + f + "\n"));
    }
    refusal.ifPresent(r -> complain("no recipe written: " + r));
    return figure && refusal.isEmpty() ? ExitCode.ANSWER : ExitCode.REFUSAL;
  }

  private CalibratedRecipe recipe(Calibration found) {
    if (found.recipe().isEmpty() || found.fit().isEmpty()) {
      throw new IllegalArgumentException("no efficiency is known for " + found.bath().name());
    }
    return CalibratedRecipe.of(found.recipe().get(), found.fit().get(), as);
  }

  /** As a whole: a plan never reads half a recipe. */
  private static Path write(CalibratedRecipe recipe) throws IOException {
    Path folder = userFolder().recipes();
    Files.createDirectories(folder);
    Path file = folder.resolve(recipe.recipe().id() + ".yaml");
    WholeFile.write(file, out -> out.write(recipe.yaml().getBytes(StandardCharsets.UTF_8)));
    return file;
  }
}
