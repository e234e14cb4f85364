package org.amperskin.picture;

/**
 * Colours and patterns of what light takes from a pattern; loud, each with its own hatch.
 *
 * <p>Hues of M. Okabe and K. Ito's set, as in {@link RegionColour}; lines and spaces differ by
 * pattern, not by colour alone.
 */
public enum LineColour {
  /** A covered line at risk. */
  LINE_AT_RISK("line at risk", 0xFFF0E442, Hatch.DOTS),
  /** An open space at risk. */
  SPACE_AT_RISK("space at risk", 0xFFF0E442, Hatch.LEVEL),
  /** A covered line that vanishes. */
  LINE_VANISHES("line vanishes", 0xFFFF2D00, Hatch.CROSS),
  /** An open space that vanishes. */
  SPACE_VANISHES("space closes", 0xFFFF2D00, Hatch.GRID);

  private final String label;
  private final int argb;
  private final Hatch hatch;

  LineColour(String label, int argb, Hatch hatch) {
    this.label = label;
    this.argb = argb;
    this.hatch = hatch;
  }

  /**
   * The colour of a piece.
   *
   * @param fate 1 at risk, 2 vanishes
   * @param open true for an open space, false for a covered line
   */
  public static LineColour of(int fate, boolean open) {
    if (fate == 1) {
      return open ? SPACE_AT_RISK : LINE_AT_RISK;
    }
    return open ? SPACE_VANISHES : LINE_VANISHES;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }

  /** The colour, 0xFFRRGGBB. */
  public int argb() {
    return argb;
  }

  /** The pattern that goes with it, on the part and in legends. */
  public Hatch hatch() {
    return hatch;
  }

  /** Patterns for {@link Painting#fates}: none on regions, each line's own after them. */
  public static Hatch[] hatches() {
    int kinds = org.amperskin.region.RegionKind.values().length;
    Hatch[] hatches = new Hatch[kinds + values().length];
    java.util.Arrays.fill(hatches, Hatch.SOLID);
    for (LineColour line : values()) {
      hatches[kinds + line.ordinal()] = line.hatch;
    }
    return hatches;
  }
}
