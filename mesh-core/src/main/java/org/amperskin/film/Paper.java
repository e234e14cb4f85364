package org.amperskin.film;

/**
 * Sizes of sheets, upright.
 *
 * <p>A sizes as in ISO 216, inch sizes as in ANSI/ASME Y14.1 and US office practice (from memory).
 */
public enum Paper {
  /** 210 x 297 mm. */
  A4(210, 297),
  /** 297 x 420 mm. */
  A3(297, 420),
  /** 420 x 594 mm. */
  A2(420, 594),
  /** 8.5 x 11 in. */
  LETTER(8.5 * 25.4, 11 * 25.4),
  /** 8.5 x 14 in. */
  LEGAL(8.5 * 25.4, 14 * 25.4),
  /** 11 x 17 in. */
  TABLOID(11 * 25.4, 17 * 25.4);

  private final double widthMm;
  private final double heightMm;

  Paper(double widthMm, double heightMm) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /** Width of the upright sheet (mm). */
  public double widthMm() {
    return widthMm;
  }

  /** Height of the upright sheet (mm). */
  public double heightMm() {
    return heightMm;
  }

  /** As people write it. */
  public String label() {
    return name().startsWith("A") && name().length() == 2
        ? name()
        : name().charAt(0) + name().substring(1).toLowerCase(java.util.Locale.ROOT);
  }
}
