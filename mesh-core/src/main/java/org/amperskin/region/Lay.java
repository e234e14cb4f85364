package org.amperskin.region;

/**
 * How artwork lies on a film: turned, mirrored, scaled.
 *
 * @param cos cosine of the turn, exact for quarter turns, so that square artwork stays exact
 * @param sin sine of the turn
 * @param scale film size over artwork size, negative if mirrored
 */
public record Lay(double cos, double sin, double scale) {
  /** Of a placement. */
  public static Lay of(Placement placement) {
    double turn = Math.toRadians(placement.turnDegrees());
    boolean quarter = placement.turnDegrees() % 90 == 0;
    return new Lay(
        quarter ? Math.rint(Math.cos(turn)) : Math.cos(turn),
        quarter ? Math.rint(Math.sin(turn)) : Math.sin(turn),
        placement.mirror() ? -placement.scale() : placement.scale());
  }

  /** Artwork millimetres across, for film millimetres across and upward. */
  public double x(double across, double up) {
    return (cos * across + sin * up) / scale;
  }

  /** Artwork millimetres upward. */
  public double y(double across, double up) {
    return (cos * up - sin * across) / Math.abs(scale);
  }

  /**
   * The other way: from artwork to film.
   *
   * @param out {@code out[at], out[at+1]}: film millimetres across and upward
   */
  public void toFilm(double artworkX, double artworkY, double[] out, int at) {
    double x = scale * artworkX;
    double y = Math.abs(scale) * artworkY;
    out[at] = cos * x - sin * y;
    out[at + 1] = sin * x + cos * y;
  }
}
