package org.amperskin.report;

import org.amperskin.bench.Mix;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;

/** A weighed-out solution, for people. */
public final class MixText {
  private static final int NAME = 33;

  private MixText() {}

  /** The sheet to work from. */
  public static String of(Mix mix) {
    TextPage page = new TextPage();
    page.heading(mix.solution() + ", " + Figures.number(mix.volumeL()) + " L");
    page.plain("");
    page.plain("  take                                  weigh   or measure    in the bath");
    for (Mix.Item i : mix.items()) {
      page.plain(
          "  "
              + TextPage.cut(i.name(), NAME)
              + TextPage.right(mass(i.massG()), 10)
              + TextPage.right(Figures.orDash(i.volumeMl(), ml -> volume(ml)), 13)
              + TextPage.right(strength(i.strengthGPerL()), 15));
    }
    page.line("water to begin", "about %s L", Figures.number(mix.waterL()));
    page.line("then to", "%s L", Figures.number(mix.volumeL()));
    mix.metalGPerL()
        .ifPresent(
            m ->
                page.line(
                    "metal",
                    "%s %s g/L (%s to %s: %s)",
                    mix.metalSymbol(),
                    Figures.number(m),
                    Figures.number(mix.metalLowGPerL().orElse(m)),
                    Figures.number(mix.metalHighGPerL().orElse(m)),
                    mix.metalSource()));
    mix.molPerLitre().ifPresent(m -> page.line("strength", "%s mol/L", Figures.number(m)));
    page.heading("Order");
    int n = 0;
    for (String step : mix.steps()) {
      page.item(Integer.toString(++n), step);
    }
    page.heading("Ranges");
    for (Mix.Item i : mix.items()) {
      page.item(
          "-",
          i.counts()
              + " "
              + strength(i.lowGPerL())
              + " to "
              + strength(i.highGPerL())
              + " ["
              + i.source()
              + "]");
    }
    mix.notes().forEach(note -> page.item("!", note));
    page.heading("Cautions");
    mix.cautions()
        .forEach(c -> page.item("*", c.hazard() + ": " + c.text() + " [" + c.source() + "]"));
    return page.toString();
  }

  private static String mass(double grams) {
    return Quantity.show(grams / 1000, Dimension.MASS, 4);
  }

  private static String volume(double millilitres) {
    return Quantity.show(millilitres / 1e6, Dimension.VOLUME, 3);
  }

  private static String strength(double gPerL) {
    return Quantity.show(gPerL, Dimension.CONCENTRATION, 3);
  }
}
