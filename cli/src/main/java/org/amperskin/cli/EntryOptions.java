package org.amperskin.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import org.amperskin.bench.LogEntry;
import picocli.CommandLine.Option;

/** When an entry of the log was made, and a remark on it. */
final class EntryOptions {
  @Option(names = "--date", paramLabel = "DAY", description = "As 2026-03-01; else today.")
  private String date;

  @Option(names = "--note", paramLabel = "TEXT", description = "A remark.")
  private String note;

  /** True if either is told. */
  boolean told() {
    return date != null || note != null;
  }

  /** The head of an entry, with the date given or today's. */
  LogEntry.Head head() throws UsageFault {
    LocalDate today = LocalDate.now();
    LocalDate day = today;
    if (date != null) {
      try {
        day = LocalDate.parse(date);
      } catch (DateTimeException bad) {
        throw new UsageFault("--date '" + date + "' is no date; year-month-day fits: 2026-03-01");
      }
      if (day.isAfter(today.plusDays(1))) { // a day of slack for other time zones
        throw new UsageFault("--date " + date + " lies after today, " + today);
      }
    }
    return LogEntry.Head.of(day, LogVerb.text("--note", note));
  }
}
