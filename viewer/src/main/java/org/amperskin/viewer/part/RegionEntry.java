package org.amperskin.viewer.part;

import org.amperskin.picture.Hatch;
import org.amperskin.picture.RegionColour;
import org.amperskin.region.RegionKind;

/**
 * A region of the part's surface, as listed in the legend.
 *
 * @param label its name
 * @param areaMm2 its area (mm2), 0 or more
 * @param state {@link #OPEN} if the selected mask leaves it open to plating, {@link #CLOSED} if
 *     not, empty where that is not the question
 * @param argb its colour, 0xAARRGGBB
 * @param hatch the pattern of its swatch, so that the legend never rests on colour alone
 */
public record RegionEntry(String label, double areaMm2, String state, int argb, Hatch hatch) {
  /** The mask leaves it open to plating. */
  public static final String OPEN = "open";

  /** The mask keeps it covered. */
  public static final String CLOSED = "closed";

  /** Checks the area. */
  public RegionEntry {
    if (!(areaMm2 >= 0)) {
      throw new IllegalArgumentException("region " + label + " has " + areaMm2 + " mm2");
    }
  }

  /** An entry with the usual colour of a kind of region. */
  public static RegionEntry of(RegionKind kind, double areaMm2, boolean open) {
    RegionColour colour = RegionColour.of(kind);
    return new RegionEntry(
        kind.label(), areaMm2, open ? OPEN : CLOSED, colour.argb(), colour.hatch());
  }

  /** True if the selected mask leaves it open to plating. */
  public boolean open() {
    return state.equals(OPEN);
  }
}
