package org.amperskin.plating;

import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/**
 * A number of a recipe with its range, unit, mark and source.
 *
 * @param low least value (in the unit)
 * @param typical the value used when nothing else is said (in the unit)
 * @param high greatest value (in the unit)
 * @param unit the unit of the three, except temperatures, which stand in kelvin
 * @param mark how far it can be trusted
 * @param source where it comes from
 */
public record Figure(double low, double typical, double high, Unit unit, Mark mark, String source) {
  private static final int DIGITS = 4;
  private static final double ZERO_C = Quantity.parse("0 C", Dimension.TEMPERATURE).si();

  public Figure {
    if (!(low <= typical && typical <= high)) {
      throw new IllegalArgumentException(
          "low "
              + low
              + ", typical "
              + typical
              + ", high "
              + high
              + " "
              + unit
              + " are not in order");
    }
    if (source.isBlank()) {
      throw new IllegalArgumentException("figure " + typical + " " + unit + " has no source");
    }
  }

  /** The least value in the SI-coherent unit. */
  public double lowSi() {
    return unit.toSi(low);
  }

  /** The typical value in the SI-coherent unit. */
  public double typicalSi() {
    return unit.toSi(typical);
  }

  /** The greatest value in the SI-coherent unit. */
  public double highSi() {
    return unit.toSi(high);
  }

  /** The range as a window in another unit of the same kind. */
  public Window window(Unit shown) {
    return new Window(shown.fromSi(lowSi()), shown.fromSi(highSi()));
  }

  Spread.Triangle triangleSi() {
    return new Spread.Triangle(lowSi(), typicalSi(), highSi());
  }

  /** For example {@code 2 A/dm2 (1 to 6)}. */
  public String show() {
    if (unit.equals(RecipeRules.kelvin())) {
      Figure celsius =
          new Figure(low - ZERO_C, typical - ZERO_C, high - ZERO_C, Unit.of("C"), mark, source);
      return celsius.show();
    }
    String range = low == high ? "" : " (" + number(low) + " to " + number(high) + ")";
    return number(typical) + " " + unit + range;
  }

  private String number(double value) {
    String text = Quantity.plain(value, DIGITS);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }
}
