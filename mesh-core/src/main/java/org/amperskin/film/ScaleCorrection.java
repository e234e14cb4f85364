package org.amperskin.film;

/**
 * What makes up for a printer that does not print at true size.
 *
 * <p>Definition: the bars on a sheet that was printed without correction measured {@code acrossMm}
 * and {@code alongMm} where {@value #BAR_MM} were meant; everything is drawn larger by the inverse,
 * so that it comes out true.
 *
 * @param acrossMm the bar across the sheet as printed (mm)
 * @param alongMm the bar along the sheet as printed (mm)
 */
public record ScaleCorrection(double acrossMm, double alongMm) {
  /** Length of the scale bars (mm). */
  public static final double BAR_MM = 100;

  /** A printer that errs by more was told to shrink or fill the page: no fault to correct. */
  private static final double MOST_MM = 3;

  /** No correction. */
  public static final ScaleCorrection NONE = new ScaleCorrection(BAR_MM, BAR_MM);

  /** Checks that this is a printer's error and not a scaled page. */
  public ScaleCorrection {
    for (double measured : new double[] {acrossMm, alongMm}) {
      if (!(Math.abs(measured - BAR_MM) <= MOST_MM)) {
        throw new IllegalArgumentException(
            "a bar of "
                + BAR_MM
                + " mm that measures "
                + measured
                + " mm is no printer's error: 97 to 103 mm fit; print at 100 %, without \"fit to"
                + " page\"");
      }
    }
  }

  /** Factor across the sheet. */
  public double factorX() {
    return BAR_MM / acrossMm;
  }

  /** Factor along the sheet. */
  public double factorY() {
    return BAR_MM / alongMm;
  }

  /** True if nothing is changed. */
  public boolean isNone() {
    return acrossMm == BAR_MM && alongMm == BAR_MM;
  }
}
