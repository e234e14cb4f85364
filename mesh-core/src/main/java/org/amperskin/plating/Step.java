package org.amperskin.plating;

/**
 * One thing done to the part, with all it takes to work it out.
 *
 * <p>Read {@link TankStep}, {@link BrushStep}, {@link EtchStep}, {@link WorkStep}. An estimate is
 * worked out by {@link #estimate()}; it never throws for a question that can be put, but refuses
 * within the estimate.
 */
public sealed interface Step permits CurrentStep, WorkStep {
  /** Name for people. */
  String name();

  /** The region it works on, "" for all of the surface. */
  String region();

  /** What geometry says of that region. */
  PlatedSurface surface();

  /** How it is done. */
  How how();

  /** Works it out. */
  StepEstimate estimate();
}
