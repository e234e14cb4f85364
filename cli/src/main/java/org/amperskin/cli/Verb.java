package org.amperskin.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.amperskin.bench.UserFolder;
import org.amperskin.bench.UserRecipes;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.job.Directions;
import org.amperskin.job.Estimate;
import org.amperskin.job.Job;
import org.amperskin.job.JobFile;
import org.amperskin.job.JobRun;
import org.amperskin.pattern.ArtworkFileException;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** What all verbs share: help, output, reading of quantities and of jobs. */
abstract class Verb implements Callable<Integer> {
  /** Tests give the user's folder by this property, so that no test writes into a home. */
  private static final String HOME_PROPERTY = "amperskin.home";

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  /** The user's folder by the environment. */
  static UserFolder userFolder() {
    Map<String, String> environment = new HashMap<>(System.getenv());
    String given = System.getProperty(HOME_PROPERTY);
    if (given != null) {
      environment.put(UserFolder.HOME_VARIABLE, given);
      environment.remove(UserFolder.LOG_VARIABLE);
    }
    return UserFolder.of(environment, Path.of(System.getProperty("user.home")));
  }

  /** The recipes of the program and the user's beside them. */
  static RecipeLibrary library() throws IOException, YamlFault {
    return UserRecipes.library(userFolder());
  }

  PrintWriter out() {
    return spec.commandLine().getOut();
  }

  void print(String text) {
    out().print(text);
    out().flush();
  }

  void complain(String text) {
    spec.commandLine().getErr().println("amperskin: " + text);
  }

  ProgressLine progress() {
    return new ProgressLine(spec.commandLine().getErr());
  }

  /** A yes or a no. */
  static boolean yes(String option, String text) throws UsageFault {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "yes" -> true;
      case "no" -> false;
      default -> throw new UsageFault(option + " " + text + ": yes or no fits");
    };
  }

  /** A length in mm, without the rounding of the way through metres. */
  static double mm(String option, String text) throws UsageFault {
    return Math.rint(1e12 * positive(option, text, Dimension.LENGTH)) / 1e9;
  }

  /** A quantity in the SI-coherent unit of its dimension. */
  static double quantity(String option, String text, Dimension dimension) throws UsageFault {
    try {
      return Quantity.parse(text, dimension).si();
    } catch (QuantityException bad) {
      throw new UsageFault(option + ": " + bad.getMessage());
    }
  }

  static double positive(String option, String text, Dimension dimension) throws UsageFault {
    double si = quantity(option, text, dimension);
    if (!(si > 0)) {
      throw new UsageFault(option + " " + text + " is not above zero");
    }
    return si;
  }

  /** Refuses what is not named as a job file. */
  static void jobFile(Path file, String why) throws UsageFault {
    if (!JobFile.looksLikeJob(file)) {
      throw new UsageFault(file + " is not named as a job file (.yaml); " + why);
    }
  }

  static Job.PartSpec part(Path file, String unit, String scale) throws UsageFault {
    if (unit != null) {
      try {
        Directions.millimetresPer(unit);
      } catch (IllegalArgumentException bad) {
        throw new UsageFault("--unit: " + bad.getMessage());
      }
    }
    double factor = scale == null ? 1 : positive("--scale", scale, Dimension.FRACTION);
    return Job.PartSpec.of(file, Optional.ofNullable(unit), factor);
  }

  Estimate estimate(Path jobFile)
      throws IOException, YamlFault, ArtworkFileException, UnreadableFile {
    return estimate(JobFile.read(jobFile, library()));
  }

  Estimate estimate(Job job) throws IOException, YamlFault, ArtworkFileException, UnreadableFile {
    try (ProgressLine progress = progress()) {
      return JobRun.of(job, progress);
    } catch (PrintFileException bad) {
      throw new UnreadableFile(job.part().file(), bad);
    }
  }
}
