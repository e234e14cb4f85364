package org.amperskin.region;

import java.util.Locale;
import org.amperskin.geom.Vec3;

/**
 * How a flat film lies before the part.
 *
 * <p>Definition: parallel light travels along {@code toward}; the film stands square to it, on the
 * side the light comes from. Who looks along the light sees the artwork upright, its up along
 * {@code up}, turned counter-clockwise by {@code turnDegrees}. One millimetre of artwork is {@code
 * scale} millimetres on the film.
 *
 * @param toward direction in which the light travels
 * @param up what the film's upright points to; must not lie along {@code toward}
 * @param centre where the artwork's centre lies, any point on that ray (mm); null for the centre of
 *     what faces the light
 * @param turnDegrees turn of the artwork (deg)
 * @param scale film size over artwork size
 * @param mirror true to mirror left and right
 * @param columns how often the artwork is repeated across
 * @param rows how often it is repeated upward
 */
public record FlatPlacement(
    Vec3 toward,
    Vec3 up,
    Vec3 centre,
    double turnDegrees,
    double scale,
    boolean mirror,
    int columns,
    int rows)
    implements Placement {
  private static final double NEARLY_PARALLEL = 1e-6;

  /** Checks the values. */
  public FlatPlacement {
    toward = toward.unit();
    up = up.unit();
    if (toward.cross(up).length() < NEARLY_PARALLEL) {
      throw new IllegalArgumentException(
          "up " + shown(up) + " lies along the light " + shown(toward) + ": turn one of them");
    }
    Placement.check(turnDegrees, scale, columns, rows);
  }

  private static String shown(Vec3 v) {
    return String.format(Locale.ROOT, "(%.3g, %.3g, %.3g)", v.x() + 0.0, v.y() + 0.0, v.z() + 0.0);
  }

  /** Light along {@code toward}, upright +z (or +y for light along z), at true size. */
  public static FlatPlacement toward(Vec3 toward) {
    return new FlatPlacement(toward, uprightFor(toward), null, 0, 1, false, 1, 1);
  }

  /** The upright taken when none is given: +z, or +y where the light travels along z. */
  public static Vec3 uprightFor(Vec3 toward) {
    Vec3 z = new Vec3(0, 0, 1);
    return toward.unit().cross(z).length() < 1e-3 ? new Vec3(0, 1, 0) : z;
  }

  /** The same placement with another upright. */
  public FlatPlacement withUp(Vec3 newUp) {
    return new FlatPlacement(toward, newUp, centre, turnDegrees, scale, mirror, columns, rows);
  }
}
