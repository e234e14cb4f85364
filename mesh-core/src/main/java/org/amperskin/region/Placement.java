package org.amperskin.region;

import org.amperskin.geom.Vec3;

/**
 * How a film lies on the part: {@link FlatPlacement before it}, {@link WrappedPlacement bent round
 * it} or {@link DrapedPlacement cut to follow it}.
 *
 * <p>What all share: artwork is turned, scaled, mirrored and repeated on the film in the same way;
 * who looks square at the film from the lamp's side sees it upright.
 */
public sealed interface Placement permits FlatPlacement, WrappedPlacement, DrapedPlacement {
  /** Turn of the artwork, counter-clockwise (deg). */
  double turnDegrees();

  /** Film size over artwork size. */
  double scale();

  /** Where the artwork's centre lies (mm); null for the middle of what the film faces. */
  Vec3 centre();

  /** True if left and right are mirrored. */
  boolean mirror();

  /** How often the artwork is repeated across. */
  int columns();

  /** How often the artwork is repeated upward. */
  int rows();

  /**
   * Checks what all placements share.
   *
   * @throws IllegalArgumentException naming the value
   */
  static void check(double turnDegrees, double scale, int columns, int rows) {
    if (!(scale > 0) || Double.isInfinite(scale)) {
      throw new IllegalArgumentException("scale " + scale);
    }
    if (!Double.isFinite(turnDegrees)) {
      throw new IllegalArgumentException("turn " + turnDegrees + " deg");
    }
    if (columns < 1 || rows < 1) {
      throw new IllegalArgumentException(
          "repeat " + columns + "x" + rows + ": at least one column and one row fit, as 3x2");
    }
  }
}
