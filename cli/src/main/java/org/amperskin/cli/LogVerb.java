package org.amperskin.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.amperskin.bench.Bath;
import org.amperskin.bench.BenchLog;
import org.amperskin.bench.Calibration;
import org.amperskin.bench.LogEntry;
import org.amperskin.plating.Recipe;
import org.amperskin.report.LogJson;
import org.amperskin.report.LogText;
import org.amperskin.units.Dimension;
import org.amperskin.units.Unit;
import picocli.CommandLine.Option;

/** What the verbs of the bench log share: the file, JSON, reading of dates and amounts. */
abstract class LogVerb extends Verb {
  private static final Pattern NUMBER = Pattern.compile("\\s*([0-9]*\\.?[0-9]+)\\s*(.*)");

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description = "The log; else AMPERSKIN_LOG, else bench-log.db in the user's folder.")
  private Path file;

  @Option(names = "--json", description = "Answer as JSON.")
  boolean json;

  Path logFile() {
    return file != null ? file : userFolder().log();
  }

  /** Something asked of a log. */
  interface Question<T> {
    /** Asks it. */
    T ask(BenchLog log) throws Exception;
  }

  /** Asks a log that is there; what the log does not know is a fault of usage. */
  <T> T reading(Question<T> question) throws Exception {
    try (BenchLog log = BenchLog.open(logFile())) {
      return question.ask(log);
    } catch (IllegalArgumentException unknown) {
      throw new UsageFault(unknown.getMessage());
    }
  }

  /** Writes to a log, which is made if it is not there, and says so. */
  <T> T writing(Question<T> question) throws Exception {
    boolean made = !java.nio.file.Files.exists(logFile());
    try (BenchLog log = BenchLog.openOrMake(logFile())) {
      if (made) {
        complain("a new bench log begins: " + logFile());
      }
      return question.ask(log);
    } catch (IllegalArgumentException unknown) {
      throw new UsageFault(unknown.getMessage());
    }
  }

  /** Writes one entry and shows it. */
  int keep(LogEntry entry) throws Exception {
    LogEntry kept = writing(log -> log.entry(log.write(entry)));
    show(kept);
    return ExitCode.ANSWER;
  }

  void show(LogEntry entry) {
    print(
        json
            ? LogJson.of(logFile(), List.of(entry), List.of(), Optional.empty(), List.of())
            : LogText.entry(entry));
  }

  void showBath(Calibration of) {
    print(
        json
            ? LogJson.of(logFile(), List.of(), List.of(of.state()), Optional.empty(), List.of())
            : LogText.bath(of.state()));
  }

  /** All that the log knows of a bath. */
  static Calibration calibration(BenchLog log, String name) throws Exception {
    Bath bath = log.bath(name);
    Optional<Recipe> recipe = bath.recipe().map(library()::find);
    return Calibration.of(bath, recipe, log.entries());
  }

  /** A text that may be left out but not blank. */
  static Optional<String> text(String option, String text) throws UsageFault {
    if (text != null && text.isBlank()) {
      throw new UsageFault(option + " '" + text + "' is blank");
    }
    return Optional.ofNullable(text).map(String::strip);
  }

  /** A quantity above zero in the unit named. */
  static double in(String unit, String option, String text, Dimension dimension) throws UsageFault {
    return Unit.of(unit).fromSi(positive(option, text, dimension));
  }

  /** The same of an option that may be left out. */
  static OptionalDouble maybe(String unit, String option, String text, Dimension dimension)
      throws UsageFault {
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(in(unit, option, text, dimension));
  }

  /** The words between commas, as many as fit. */
  static List<String> parts(String option, String text, int least, int most, String shape)
      throws UsageFault {
    List<String> parts = Arrays.stream(text.split(",", -1)).map(String::strip).toList();
    if (parts.size() < least || parts.size() > most || parts.contains("")) {
      throw new UsageFault(option + " '" + text + "' has not the shape '" + shape + "'");
    }
    return parts;
  }

  /** The step of the last digit typed, such as 0.01 g of {@code 12.30 g}. */
  static double lastDigitG(String mass) throws UsageFault {
    Matcher typed = NUMBER.matcher(mass);
    if (!typed.matches()) {
      throw new UsageFault("'" + mass + "' is not a mass as a balance shows it: '12.34 g' fits");
    }
    int digits = Math.max(0, new BigDecimal(typed.group(1)).scale());
    double unitG = in("g", "mass", "1 " + typed.group(2), Dimension.MASS);
    return unitG / Math.pow(10, digits);
  }
}
