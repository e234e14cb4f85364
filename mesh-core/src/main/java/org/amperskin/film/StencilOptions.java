package org.amperskin.film;

/**
 * How a stencil is cut.
 *
 * @param leastMm narrowest line or space that a blade cuts cleanly (mm)
 * @param borderMm distance from the film's outline to the weeding border (mm)
 * @param bridgeMm width of bridges to islands (mm); 0 for none
 * @param mirror whether it is cut mirrored, from the back of the sheet
 */
public record StencilOptions(double leastMm, double borderMm, double bridgeMm, boolean mirror) {
  /** 0.5 mm (common practice, no source), border at 6 mm, no bridges, cut from the front. */
  public static final StencilOptions USUAL = new StencilOptions(0.5, 6, 0, false);

  /** Checks the values. */
  public StencilOptions {
    if (!(leastMm >= 0.01 && leastMm <= 50)) {
      throw new IllegalArgumentException("smallest feature " + leastMm + " mm: 0.01 to 50 mm fit");
    }
    if (!(borderMm >= 5 && borderMm <= 100)) {
      throw new IllegalArgumentException("weeding border " + borderMm + " mm: 5 to 100 mm fit");
    }
    if (!(bridgeMm == 0 || bridgeMm >= 0.05 && bridgeMm <= 50)) {
      throw new IllegalArgumentException("bridges of " + bridgeMm + " mm: 0.05 to 50 mm fit");
    }
  }
}
