package org.amperskin.job;

import java.util.OptionalDouble;
import org.amperskin.geom.Box;
import org.amperskin.plating.PartBody;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.TankShape;
import org.amperskin.region.Region;

/** The narrow waist: hands plain quantities of regions and of the part down to plating. */
final class Surfaces {
  private static final double THINNEST = 1e-3;

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

  /** The part as a body. */
  static PartBody body(MeasuredPart part, Job job) {
    Box box = part.diagnosis().box();
    OptionalDouble displaced = part.skin().displacement().volumeMm3();
    return new PartBody(
        side(box.maxX() - box.minX()),
        side(box.maxY() - box.minY()),
        side(box.maxZ() - box.minZ()),
        Math.max(THINNEST, part.skin().areaMm2()),
        displaced.orElse(0) > 0 ? displaced : OptionalDouble.empty(),
        job.part().print(),
        job.part().inside().infill(),
        job.part().inside().wallMm());
  }

  /** A sheet has no thickness, and still hangs somewhere. */
  private static double side(double mm) {
    return Math.max(THINNEST, mm);
  }

  /** The tank as told. */
  static TankShape tank(Job job) {
    Job.TankSpec told = job.tank();
    return new TankShape(
        times(told.volumeM3(), 1000),
        times(told.spacingM(), 1000),
        told.inner(),
        told.bathDensity());
  }

  private static OptionalDouble times(OptionalDouble value, double factor) {
    return value.isPresent() ? OptionalDouble.of(factor * value.getAsDouble()) : value;
  }
}
