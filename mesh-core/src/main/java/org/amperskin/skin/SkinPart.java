package org.amperskin.skin;

/**
 * Surface that is not wetted, or only assumed, and why.
 *
 * @param kind why
 * @param body number of the body concerned, from 1; 0 if none
 * @param faces faces, or cells of faces
 * @param areaMm2 their area (mm2)
 * @param message one sentence for people
 */
public record SkinPart(Kind kind, int body, long faces, double areaMm2, String message) {
  /** Why surface is told apart. */
  public enum Kind {
    /** Inside another body. */
    INSIDE("inside"),
    /** In a closed void. */
    ENCLOSED("enclosed"),
    /** On another face, which is counted in its stead. */
    DOUBLED("doubled"),
    /** Added where faces are missing. */
    ASSUMED("assumed"),
    /** Both sides of a sheet are wet. */
    SHEET("sheet");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** The word used in JSON and text. */
    public String label() {
      return label;
    }
  }
}
