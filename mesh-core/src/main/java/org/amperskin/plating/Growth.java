package org.amperskin.plating;

import org.amperskin.units.Area;
import org.amperskin.units.Length;
import org.amperskin.units.Volume;

/**
 * The volume of an even layer on a body that grows as it is plated.
 *
 * <p>Definition: Steiner's formula for the parallel body, {@code A d + M d^2 + (4 pi / 3) d^3},
 * with {@code M} the integral of mean curvature. Guaranteed: exact for convex bodies plated all
 * over. Not guaranteed: bodies with recesses whose offset would meet itself, and partly masked
 * bodies, whose resist walls hold the layer. Source: Schneider, Convex Bodies: The Brunn-Minkowski
 * Theory.
 */
public final class Growth {
  private Growth() {}

  /**
   * Volume of the layer.
   *
   * @param meanCurvatureIntegral integral of mean curvature over the body (a length)
   */
  public static Volume layer(Area area, Length meanCurvatureIntegral, Length thickness) {
    double d = Faraday.positive("thickness", thickness.metres(), "m");
    double a = Faraday.positive("area", area.squareMetres(), "m2");
    double m = meanCurvatureIntegral.metres();
    return new Volume(a * d + m * d * d + 4 * Math.PI / 3 * d * d * d);
  }

  /** Volume of the layer over that of a flat layer of the same area and thickness. */
  public static double factor(Area area, Length meanCurvatureIntegral, Length thickness) {
    return layer(area, meanCurvatureIntegral, thickness).cubicMetres()
        / (area.squareMetres() * thickness.metres());
  }
}
