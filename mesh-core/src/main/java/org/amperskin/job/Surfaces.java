package org.amperskin.job;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Box;
import org.amperskin.mesh.MeanCurvature;
import org.amperskin.plating.PartBody;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.TankShape;
import org.amperskin.region.Region;

/** The narrow waist: hands plain quantities of regions and of the part down to plating. */
final class Surfaces {
  private static final double THINNEST = 1e-3;
  private static final double WHOLE = 1e-9;

  private final MeasuredPart part;
  private final Optional<MeanCurvature> bends;

  Surfaces(MeasuredPart part) {
    this.part = part;
    this.bends = bends(part);
  }

  /** A region's surface, as the step asks for it. */
  PlatedSurface of(Region region, StepSpec step) {
    double open = region.openAreaMm2();
    boolean whole = step.region().equals(Job.WHOLE_SKIN);
    Optional<MeanCurvature> bends = whole ? this.bends : Optional.empty();
    return new PlatedSurface(
        open,
        Math.min(region.errorMm2(), open),
        Math.max(open, region.traversedAreaMm2()),
        region.edgeLengthMm(),
        bends.map(b -> OptionalDouble.of(b.integralMm())).orElse(OptionalDouble.empty()),
        bends.map(MeanCurvature::convex).orElse(false),
        part.skin().displacement().volumeMm3().orElse(0),
        step.thinnest());
  }

  /** How the part bends, where all of what is stored is skin. */
  private static Optional<MeanCurvature> bends(MeasuredPart part) {
    double stored = part.diagnosis().areaMm2();
    return Math.abs(part.skin().areaMm2() - stored) <= WHOLE * stored
        ? MeanCurvature.of(part.diagnosis())
        : Optional.empty();
  }

  /** The part as a body. */
  PartBody body(Job job) {
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
