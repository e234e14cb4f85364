package org.amperskin.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** A program that writes entries and acknowledges each on its standard output, to be killed. */
final class LogWriterProcess {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

  private LogWriterProcess() {}

  /** Arguments: file, name of the writer, first number, how many, entries before it reopens. */
  public static void main(String[] args) throws Exception {
    Path file = Path.of(args[0]);
    int first = Integer.parseInt(args[2]);
    int last = first + Integer.parseInt(args[3]);
    int hold = Integer.parseInt(args[4]);
    System.out.println("ready");
    System.out.flush();
    BenchLog log = BenchLog.openOrMake(file);
    for (int n = first; n < last; n++) {
      if (n > first && (n - first) % hold == 0) {
        log.close();
        log = BenchLog.openOrMake(file);
      }
      log.write(entry(args[1], n));
      System.out.println("kept " + n + " .");
      System.out.flush();
    }
    log.close();
  }

  /** The entry with this number: of one page or of several. */
  static LogEntry.Weighing entry(String writer, int n) {
    String note = "remark " + "0123456789".repeat(n * 37 % 900);
    return new LogEntry.Weighing(
        LogEntry.Head.of(DAY, Optional.of(note)),
        writer + n,
        10 + n,
        10.5 + n,
        0.01,
        OptionalDouble.of(0.5),
        Optional.empty(),
        OptionalLong.empty());
  }

  /** Starts it in a Java of its own. */
  static Process start(Path folder, Path file, String writer, int first, int count, int hold)
      throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Dslf4j.internal.verbosity=ERROR",
            "-Dorg.sqlite.tmpdir=" + folder,
            "-cp",
            System.getProperty("java.class.path"),
            LogWriterProcess.class.getName(),
            file.toString(),
            writer,
            Integer.toString(first),
            Integer.toString(count),
            Integer.toString(hold))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }
}
