package org.amperskin.job;

import java.util.OptionalDouble;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.region.Region;

/** The narrow waist: hands a region's plain quantities down to plating. */
final class Surfaces {
  private Surfaces() {}

  static PlatedSurface of(Region region, MeasuredPart part) {
    double open = region.openAreaMm2();
    return new PlatedSurface(
        open,
        Math.min(region.errorMm2(), open),
        Math.max(open, region.traversedAreaMm2()),
        region.edgeLengthMm(),
        OptionalDouble.empty(),
        part.skin().displacement().volumeMm3().orElse(0));
  }
}
