package org.amperskin.plating;

import java.util.OptionalDouble;
import org.amperskin.units.Area;

/**
 * All that plating knows of geometry: plain quantities of the surface one step works on.
 *
 * @param openAreaMm2 bare area that takes metal (mm2)
 * @param areaErrorMm2 bound of the numerical error of the open area (mm2)
 * @param traversedAreaMm2 area a swab crosses, open and masked together (mm2)
 * @param edgeLengthMm length of the border between open and masked (mm)
 * @param meanCurvatureIntegralMm integral of mean curvature over a surface plated all over (mm), if
 *     known
 * @param convex whether that surface is nowhere hollow
 * @param volumeMm3 volume of liquid that the part pushes aside (mm3), 0 when not known
 * @param minToMean thickness where it is thinnest over the mean thickness (0 to 1), if known
 */
public record PlatedSurface(
    double openAreaMm2,
    double areaErrorMm2,
    double traversedAreaMm2,
    double edgeLengthMm,
    OptionalDouble meanCurvatureIntegralMm,
    boolean convex,
    double volumeMm3,
    OptionalDouble minToMean) {

  /** A surface that is convex if its curvature is told, its evenness not known. */
  public PlatedSurface(
      double openAreaMm2,
      double areaErrorMm2,
      double traversedAreaMm2,
      double edgeLengthMm,
      OptionalDouble meanCurvatureIntegralMm,
      double volumeMm3) {
    this(
        openAreaMm2,
        areaErrorMm2,
        traversedAreaMm2,
        edgeLengthMm,
        meanCurvatureIntegralMm,
        true,
        volumeMm3,
        OptionalDouble.empty());
  }

  public PlatedSurface {
    notNegative("open area", openAreaMm2, "mm2");
    notNegative("error of the open area", areaErrorMm2, "mm2");
    notNegative("traversed area", traversedAreaMm2, "mm2");
    notNegative("edge length", edgeLengthMm, "mm");
    notNegative("volume", volumeMm3, "mm3");
    if (openAreaMm2 > traversedAreaMm2 * (1 + 1e-9)) {
      throw new IllegalArgumentException(
          "open area ("
              + openAreaMm2
              + " mm2) exceeds the traversed area ("
              + traversedAreaMm2
              + " mm2)");
    }
    if (minToMean.isPresent() && !(minToMean.getAsDouble() > 0 && minToMean.getAsDouble() <= 1)) {
      throw new IllegalArgumentException(
          "thinnest over mean thickness ("
              + minToMean.getAsDouble()
              + ") is not above 0 and up to 1");
    }
    if (meanCurvatureIntegralMm.isPresent()
        && !Double.isFinite(meanCurvatureIntegralMm.getAsDouble())) {
      meanCurvatureIntegralMm = OptionalDouble.empty();
    }
  }

  /** A surface with nothing masked, its area exact. */
  public static PlatedSurface bare(double areaMm2) {
    return new PlatedSurface(areaMm2, 0, areaMm2, 0, OptionalDouble.empty(), 0);
  }

  /** A surface partly masked, its area exact. */
  public static PlatedSurface masked(double openAreaMm2, double traversedAreaMm2) {
    return new PlatedSurface(openAreaMm2, 0, traversedAreaMm2, 0, OptionalDouble.empty(), 0);
  }

  /** Open over traversed area, 0 when nothing is traversed. */
  public double openFraction() {
    return traversedAreaMm2 > 0 ? Math.min(1, openAreaMm2 / traversedAreaMm2) : 0;
  }

  Area openArea() {
    return Area.ofMm2(openAreaMm2);
  }

  Area traversedArea() {
    return Area.ofMm2(traversedAreaMm2);
  }

  /** The open area in m2 as a triangle over its numerical error. */
  Spread.Triangle openTriangle() {
    double area = openArea().squareMetres();
    double error = Math.min(Area.ofMm2(areaErrorMm2).squareMetres(), 0.999 * area);
    return new Spread.Triangle(area - error, area, area + error);
  }

  private static void notNegative(String what, double value, String unit) {
    if (!(value >= 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(
          what + " (" + value + " " + unit + ") is negative or not finite");
    }
  }
}
