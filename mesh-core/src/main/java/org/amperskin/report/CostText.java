package org.amperskin.report;

import java.util.Locale;
import org.amperskin.bench.Prices;

/** What a plan costs, for people. */
public final class CostText {
  /** Smaller swings of the sum are not worth a word. */
  private static final double SMALLEST_SWING = 0.01;

  private static final int MOST_SWINGS = 3;

  private CostText() {}

  /** The bill. */
  public static String of(Prices.Bill bill) {
    TextPage page = new TextPage();
    page.plain("");
    page.plain("Cost");
    for (Prices.Row row : bill.rows()) {
      if (row.cost().isPresent()) {
        page.line(
            money(row.cost().getAsDouble()),
            "%s %s, %s %s",
            bill.currency(),
            row.material().name(),
            Figures.number(row.material().amount()),
            row.material().unit());
      }
    }
    page.line(
        money(bill.total()),
        "%s in all%s, without what is used up in part",
        bill.currency(),
        bill.sum()
            .band()
            .map(b -> Figures.band(money(b.low()).strip(), money(b.high()).strip()))
            .orElse(""));
    bill.sum().swings().stream()
        .filter(w -> w.share() >= SMALLEST_SWING)
        .limit(MOST_SWINGS)
        .forEach(
            w ->
                page.line(
                    "moved by",
                    "%s: %s to %s; %s",
                    w.unknown(),
                    money(w.atLow()).strip(),
                    money(w.atHigh()).strip(),
                    w.remedy()));
    bill.preciousMg()
        .forEach(
            (metal, mg) ->
                page.line("precious", "%s mg of %s laid down", Figures.number(mg), metal));
    bill.notes().forEach(note -> page.item("!", note));
    return page.toString();
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, "%,10.2f", amount);
  }
}
