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
      int width = (TextPage.WIDTH - LABEL) / AT_ONCE;
      StringBuilder head = new StringBuilder(TextPage.pad("", LABEL));
      for (int j = from; j < to; j++) {
        String name = jobs.get(j).job().name();
        head.append(
            TextPage.right(
                name.length() < width ? name : name.substring(0, width - 2) + "~", width));
      }
      if (from > 0) {
        page.plain("");
      }
      page.plain(head.toString());
      for (Comparison.Row row : comparison.rows()) {
        StringBuilder line = new StringBuilder(TextPage.pad(cut(row.label()), LABEL));
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

  private static String cut(String label) {
    return label.length() < LABEL ? label : label.substring(0, LABEL - 2) + "~";
  }

  private static String shown(double value, String unit) {
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
