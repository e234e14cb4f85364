package org.amperskin.region;

/** What a mask made of a piece of the skin. Whether a kind is open is the mask's rule. */
public enum RegionKind {
  /** Left bare by the mask, to be plated. */
  EXPOSED("exposed"),
  /** Under resist that stays. */
  MASKED("masked"),
  /** Under tape or lacquer. */
  STOPPED_OFF("stopped off"),
  /** Turned away from the light or in a shadow of it. */
  UNREACHED("unreached"),
  /** Open, but without conductive paint: no current flows there. */
  UNPAINTED("not painted");

  private final String label;

  RegionKind(String label) {
    this.label = label;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }
}
