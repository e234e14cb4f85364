package org.amperskin.report;

import java.util.Locale;
import org.amperskin.bench.Prices;

/** What a plan costs, for people. */
public final class CostText {
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
    page.line(money(bill.total()), "%s in all, without what is used up in part", bill.currency());
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
