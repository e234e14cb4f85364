package org.amperskin.plating;

import org.amperskin.units.Area;
import org.amperskin.units.Length;

/**
 * The bare copper wire that brings the current to the part, as far as it is submerged.
 *
 * @param diameter its diameter
 * @param submerged its length under the surface of the bath
 */
public record ContactWire(Length diameter, Length submerged) {
  public ContactWire {
    Faraday.positive("wire diameter", diameter.metres(), "m");
    Faraday.positive("submerged wire", submerged.metres(), "m");
  }

  /** Area that takes metal: pi d L. */
  public Area area() {
    return new Area(Math.PI * diameter.metres() * submerged.metres());
  }

  /** Resistance from end to end, of copper. */
  public double resistanceOhm() {
    double section = Math.PI * diameter.metres() * diameter.metres() / 4;
    return Constant.RESISTIVITY_CU.si() * submerged.metres() / section;
  }
}
