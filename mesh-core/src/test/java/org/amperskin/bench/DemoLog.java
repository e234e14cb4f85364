package org.amperskin.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** The bench log of the invented theatre workshop; run it to make the stored file anew. */
final class DemoLog {
  static final String COPPER = "big copper";
  static final String NICKEL = "small nickel";
  static final String DARK = "dark brush";

  private DemoLog() {}

  /** Argument: the file to make. */
  public static void main(String[] args) throws Exception {
    Files.deleteIfExists(Path.of(args[0]));
    make(Path.of(args[0]));
  }

  static void make(Path file) throws Exception {
    try (BenchLog log = BenchLog.openOrMake(file)) {
      log.write(
          new Bath(COPPER, Optional.of("copper-acid-high-throw"), Optional.empty()),
          Optional.of(
              new LogEntry.BathReading(
                  head(1, ""),
                  COPPER,
                  OptionalDouble.of(12),
                  OptionalDouble.of(17.3),
                  List.of(),
                  List.of(new LogEntry.Dose("brightener", 0.15)))));
      log.write(
          new Bath(NICKEL, Optional.of("nickel-watts"), Optional.of(false)),
          Optional.of(
              new LogEntry.BathReading(
                  head(1, "platinised titanium anodes"),
                  NICKEL,
                  OptionalDouble.of(2),
                  OptionalDouble.of(72),
                  List.of(),
                  List.of())));
      log.write(
          new Bath(DARK, Optional.of("chromium-brush-dark-trivalent"), Optional.empty()),
          Optional.empty());
      double[] charge = {0.10, 0.15, 0.20, 0.25, 0.30, 0.20};
      double[] gain = {0.117, 0.175, 0.234, 0.291, 0.349, 0.261};
      for (int i = 0; i < charge.length; i++) {
        log.write(
            new LogEntry.Weighing(
                head(3 + i, ""),
                "strip " + (i + 1),
                4.1,
                Math.round(1000 * (4.1 + gain[i])) / 1000.0,
                0.001,
                OptionalDouble.of(charge[i]),
                Optional.of(COPPER),
                OptionalLong.empty()));
      }
      log.strike(8, "weighed wet");
      String step = "copper build";
      log.write(
          new LogEntry.Job(
              head(12, "first visor"),
              "test-meshes/demo/visor.yaml",
              List.of(new LogEntry.Step(step, 22.6, Optional.of(COPPER)))));
      for (int i = 0; i < 3; i++) {
        log.write(
            new LogEntry.Coupon(
                head(14, ""),
                "dark " + (i + 1),
                new double[] {0.82, 0.91, 0.88}[i],
                OptionalDouble.of(0.2),
                OptionalDouble.of(new double[] {0.164, 0.182, 0.176}[i]),
                Optional.of(i == 0 ? "grey at one edge" : "even black"),
                Optional.empty(),
                Optional.of(DARK)));
      }
      log.write(
          new LogEntry.Counter(
              head(15, ""), NICKEL, OptionalDouble.of(6.5), OptionalDouble.empty()));
      log.write(
          new LogEntry.BathReading(
              head(16, ""),
              COPPER,
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              List.of(new LogEntry.Addition("brightener", 2.5, "mL", 0)),
              List.of()));
    }
  }

  private static LogEntry.Head head(int day, String note) {
    return LogEntry.Head.of(
        LocalDate.of(2026, 3, day), Optional.of(note).filter(n -> !n.isEmpty()));
  }
}
