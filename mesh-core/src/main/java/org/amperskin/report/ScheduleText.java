package org.amperskin.report;

import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.amperskin.plating.Schedule;

/** When the steps happen, for people. */
public final class ScheduleText {
  private static final int MINUTE = 60;
  private static final int DAY_MINUTES = 24 * 60;

  private ScheduleText() {}

  /**
   * A table of starts, hands and waits.
   *
   * @param startMinutes time of day of the first start (minutes), if it is known
   */
  public static String of(Schedule schedule, OptionalInt startMinutes) {
    TextPage page = new TextPage();
    if (schedule.entries().isEmpty()) {
      return "";
    }
    page.plain("");
    page.plain("Schedule");
    page.plain(
        row("", "", startMinutes.isPresent() ? "starts" : "after", "hands", "waits", "ends"));
    for (Schedule.Entry e : schedule.entries()) {
      page.plain(
          row(
              Integer.toString(e.number()),
              e.name(),
              at(e.startS(), startMinutes),
              span(e.handsS()),
              span(e.waitS()),
              at(e.endS(), startMinutes)));
    }
    page.line("hands busy", "%s", span(schedule.handsS()));
    page.line("ends", "%s after the start, at the earliest", span(schedule.elapsedS()));
    if (!schedule.freeWhile().isEmpty()) {
      page.line(
          "meanwhile",
          "%s: time for films, mixing and other parts; the order of this part's own steps leaves"
              + " nothing else to do at once",
          schedule.freeWhile().stream()
              .map(e -> span(e.waitS()) + " in step " + e.number())
              .collect(Collectors.joining(", ")));
    }
    if (!schedule.untimed().isEmpty()) {
      page.line("not counted", "%s", String.join(", ", schedule.untimed()));
    }
    return page.toString();
  }

  private static String row(
      String n, String name, String at, String hands, String wait, String end) {
    return TextPage.right(n, 4)
        + "  "
        + TextPage.cut(name, 24)
        + TextPage.right(" " + at, 13)
        + TextPage.right(" " + hands, 11)
        + TextPage.right(" " + wait, 11)
        + TextPage.right(" " + end, 13);
  }

  private static String at(double seconds, OptionalInt startMinutes) {
    if (startMinutes.isEmpty()) {
      return span(seconds);
    }
    long minutes = startMinutes.getAsInt() + Math.round(seconds / MINUTE);
    long day = minutes / DAY_MINUTES;
    return String.format(
        Locale.ROOT,
        "%s%02d:%02d",
        day == 0 ? "" : "day " + (day + 1) + " ",
        minutes % DAY_MINUTES / 60,
        minutes % 60);
  }

  private static String span(double seconds) {
    long minutes = Math.round(seconds / MINUTE);
    if (seconds > 0 && minutes == 0) {
      return "1 min";
    }
    return minutes < 60
        ? minutes + " min"
        : minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
  }
}
