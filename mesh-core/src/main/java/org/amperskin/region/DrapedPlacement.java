package org.amperskin.region;

import org.amperskin.geom.Vec3;

/**
 * A film cut to the outline of an unrolled patch of skin and laid on it.
 *
 * <p>Definition: the patch is laid out in the plane with the least stretch ({@link
 * org.amperskin.unroll.Unrolling}); the artwork's centre lies on the patch where {@code centre}
 * says, its up as near to {@code up} as the skin allows there. The film touches the skin; light
 * falls square on it.
 *
 * @param up what the artwork's upright points to
 * @param centre the artwork's centre lies on the patch, nearest to this point (mm); null for the
 *     patch's middle
 * @param turnDegrees turn of the artwork (deg)
 * @param scale film size over artwork size
 * @param mirror true to mirror left and right
 * @param columns how often the artwork is repeated across
 * @param rows how often it is repeated upward
 */
public record DrapedPlacement(
    Vec3 up, Vec3 centre, double turnDegrees, double scale, boolean mirror, int columns, int rows)
    implements Placement {
  /** Checks the values. */
  public DrapedPlacement {
    Placement.check(turnDegrees, scale, columns, rows);
    up = up.unit();
  }

  /** On the patch's middle, upright as near to +z as it goes, at true size. */
  public static DrapedPlacement onPatch() {
    return new DrapedPlacement(new Vec3(0, 0, 1), null, 0, 1, false, 1, 1);
  }
}
