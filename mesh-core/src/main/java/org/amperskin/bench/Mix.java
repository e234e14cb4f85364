package org.amperskin.bench;

import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.plating.Caution;
import org.amperskin.plating.Mark;

/**
 * A solution weighed out: what to take, in which order, and how it can hurt.
 *
 * @param solution its name
 * @param volumeL how much it makes (L)
 * @param items what to take, in the order of adding
 * @param waterL water to begin with, about (L)
 * @param metalSymbol the metal it carries, empty if none
 * @param metalGPerL that metal (g/L)
 * @param metalLowGPerL least published (g/L)
 * @param metalHighGPerL most published (g/L)
 * @param metalSource where the published range comes from
 * @param molPerLitre strength of a developer (mol/L)
 * @param steps what to do, in order
 * @param notes what to know
 * @param cautions how it can hurt, never empty
 */
public record Mix(
    String solution,
    double volumeL,
    List<Item> items,
    double waterL,
    String metalSymbol,
    OptionalDouble metalGPerL,
    OptionalDouble metalLowGPerL,
    OptionalDouble metalHighGPerL,
    String metalSource,
    OptionalDouble molPerLitre,
    List<String> steps,
    List<String> notes,
    List<Caution> cautions) {
  public Mix {
    items = List.copyOf(items);
    steps = List.copyOf(steps);
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
  }

  /**
   * Something to weigh or measure out.
   *
   * @param name what, as on its jar
   * @param formula its formula
   * @param massG mass to weigh (g)
   * @param volumeMl volume, for liquids (mL)
   * @param strengthGPerL what it comes to in the bath (g/L)
   * @param lowGPerL least the source gives (g/L)
   * @param highGPerL most the source gives (g/L)
   * @param counts what these three count
   * @param mark how far the range can be trusted
   * @param source where it comes from
   */
  public record Item(
      String name,
      String formula,
      double massG,
      OptionalDouble volumeMl,
      double strengthGPerL,
      double lowGPerL,
      double highGPerL,
      String counts,
      Mark mark,
      String source) {
    /** Whether the strength lies in the range of the source. */
    public boolean inRange() {
      double slack = 1e-9;
      return strengthGPerL >= lowGPerL * (1 - slack) && strengthGPerL <= highGPerL * (1 + slack);
    }
  }
}
