package org.amperskin.region;

import org.amperskin.geom.Vec3;
import org.amperskin.unroll.ConeFit;

/**
 * A film bent round a cylinder or cone, without stretch.
 *
 * <p>Definition: the film is the cylinder or cone that fits the film's patch best, or one round a
 * given axis, moved outward (inward in a bore) until it only touches. Light falls square on the
 * film everywhere, as when the part is turned under the lamp. The artwork's centre lies where
 * {@code centre} points; x runs round the axis, to the right for who looks at the film, y along the
 * surface.
 *
 * @param axis the axis; null to fit it to the patch
 * @param form what to fit
 * @param up chooses which way along the axis is up
 * @param centre the artwork's centre lies before this point (mm); null for the patch's middle
 * @param turnDegrees turn of the artwork (deg)
 * @param scale film size over artwork size
 * @param mirror true to mirror left and right
 * @param columns how often the artwork is repeated across
 * @param rows how often it is repeated upward
 */
public record WrappedPlacement(
    Axis axis,
    ConeFit.Form form,
    Vec3 up,
    Vec3 centre,
    double turnDegrees,
    double scale,
    boolean mirror,
    int columns,
    int rows)
    implements Placement {
  private static final double NEARLY_SQUARE = 1e-3;

  /**
   * A given axis; the radius follows from the patch.
   *
   * @param point a point of it (mm)
   * @param direction where it points
   */
  public record Axis(Vec3 point, Vec3 direction) {
    /** Takes the direction as one. */
    public Axis {
      direction = direction.unit();
    }
  }

  /** Checks the values. */
  public WrappedPlacement {
    Placement.check(turnDegrees, scale, columns, rows);
    up = up.unit();
    if (axis != null && Math.abs(axis.direction().dot(up)) < 1e-6) {
      throw new IllegalArgumentException("up lies square to the axis: it cannot choose its sense");
    }
  }

  /**
   * The upright taken when none is given: +z, or +y (else +x) for an axis square to it.
   *
   * @param axis the axis; null if it is to be fitted
   */
  public static Vec3 uprightFor(Axis axis) {
    Vec3 z = new Vec3(0, 0, 1);
    if (axis == null || Math.abs(axis.direction().dot(z)) >= NEARLY_SQUARE) {
      return z;
    }
    Vec3 y = new Vec3(0, 1, 0);
    return Math.abs(axis.direction().dot(y)) > NEARLY_SQUARE ? y : new Vec3(1, 0, 0);
  }

  /** Fitted to the patch, upright +z, at true size. */
  public static WrappedPlacement fitted() {
    return new WrappedPlacement(
        null, ConeFit.Form.BEST, new Vec3(0, 0, 1), null, 0, 1, false, 1, 1);
  }
}
