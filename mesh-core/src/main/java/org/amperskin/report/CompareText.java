package org.amperskin.report;

import java.util.List;
import org.amperskin.job.Comparison;
import org.amperskin.job.Estimate;

/** Jobs side by side, for people. */
public final class CompareText {
  private static final int LABEL = 32;
  private static final int AT_ONCE = 3;

  private CompareText() {}

  /** All jobs, a few at a time so that they fit the page. */
  public static String of(Comparison comparison) {
    TextPage page = new TextPage();
    List<Estimate> jobs = comparison.jobs();
    for (int from = 0; from < jobs.size(); from += AT_ONCE) {
      int to = Math.min(jobs.size(), from + AT_ONCE);
      int width = (TextPage.WIDTH - LABEL) / Math.min(AT_ONCE, jobs.size());
      if (from > 0) {
        page.plain("");
      }
      names(page, jobs.subList(from, to), width);
      for (Comparison.Row row : comparison.rows()) {
        StringBuilder line = new StringBuilder(TextPage.cut(row.label(), LABEL));
        for (int j = from; j < to; j++) {
          String text = Figures.orDash(row.values().get(j), v -> shown(v, row.unit()));
          line.append(TextPage.right(text, width));
        }
        page.plain(line.toString());
      }
    }
    for (Estimate job : jobs) {
      job.warnings().forEach(w -> page.item("!", job.job().name() + ": " + w));
    }
    return page.toString();
  }

  /** Names over the columns; a long one goes on in the next line, as its end tells jobs apart. */
  private static void names(TextPage page, List<Estimate> jobs, int width) {
    int room = width - 2;
    int lines =
        jobs.stream().mapToInt(e -> (e.job().name().length() - 1) / room + 1).max().orElse(1);
    for (int k = 0; k < lines; k++) {
      StringBuilder line = new StringBuilder(TextPage.pad("", LABEL));
      for (Estimate e : jobs) {
        String name = e.job().name();
        int start = Math.min(name.length(), k * room);
        int end = Math.min(name.length(), start + room);
        line.append(TextPage.right(name.substring(start, end), width));
      }
      page.plain(line.toString());
    }
  }

  static String shown(double value, String unit) {
    return switch (unit) {
      case "s" -> Figures.time(value);
      case "A" -> Figures.current(value);
      case "g" -> Figures.mass(value);
      case "1" -> Figures.percent(value);
      case "mm2" -> Figures.area(value);
      default -> Figures.number(value) + " " + unit;
    };
  }
}
