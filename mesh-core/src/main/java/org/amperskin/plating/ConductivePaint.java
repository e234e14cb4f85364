package org.amperskin.plating;

import java.util.OptionalDouble;

/**
 * The conductive paint under the first metal.
 *
 * @param sheetResistanceOhm sheet resistance (ohm/sq)
 * @param farthestMm distance from the nearest contact to the painted place farthest from one (mm),
 *     if known
 */
public record ConductivePaint(double sheetResistanceOhm, OptionalDouble farthestMm) {
  public ConductivePaint {
    Faraday.positive("sheet resistance", sheetResistanceOhm, "ohm/sq");
    if (farthestMm.isPresent()) {
      Faraday.positive("farthest distance from a contact", farthestMm.getAsDouble(), "mm");
    }
  }
}
