package org.amperskin.plating;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the part is printed of, as far as a bath is concerned: its warmth and its upthrust.
 *
 * @param name name of the plastic
 * @param softeningC glass transition (C)
 * @param mark how far that can be trusted
 * @param source where that comes from
 * @param densityGPerCm3 density (g/cm3), makers' data sheets, from memory
 */
public record PrintMaterial(
    String name, double softeningC, Mark mark, String source, double densityGPerCm3) {
  /** A bath stays this much below the glass transition (K): common practice, no source. */
  public static final double MARGIN_K = 20;

  private static final String TABLE = "glass transition table, filamentspecs.com";
  private static final List<PrintMaterial> KNOWN =
      List.of(
          new PrintMaterial("PLA", 59.1, Mark.READ, TABLE, 1.24),
          new PrintMaterial("PETG", 77.4, Mark.READ, TABLE, 1.27),
          new PrintMaterial("ABS", 100, Mark.READ, TABLE + " (100-105)", 1.04),
          new PrintMaterial("resin", 50, Mark.COMMON, "common practice, no source (50-80)", 1.15));

  public PrintMaterial {
    if (!Double.isFinite(softeningC)) {
      throw new IllegalArgumentException("softening of " + name + " (" + softeningC + " C)");
    }
  }

  /** The warmest bath it should see (C). */
  public double warmestBathC() {
    return softeningC - MARGIN_K;
  }

  /** Whether alkali eats it: esters are split by it. */
  boolean polyester() {
    return name.equals("PLA") || name.equals("PETG");
  }

  /** The materials known by name. */
  public static List<PrintMaterial> known() {
    return KNOWN;
  }

  /** The material of this name, letter case aside. */
  public static Optional<PrintMaterial> find(String name) {
    String wanted = name.toLowerCase(Locale.ROOT);
    return KNOWN.stream().filter(m -> m.name().toLowerCase(Locale.ROOT).equals(wanted)).findFirst();
  }
}
