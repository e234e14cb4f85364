package org.amperskin.pattern.motif;

import java.util.OptionalDouble;

/**
 * A motif made of lines of one width, so that the width can be solved for a wanted open area.
 *
 * <p>Guaranteed: the area of the lines grows steadily with {@link #lineMm} from nothing; the line
 * stays below {@link #widestLineMm}, which does not depend on it.
 */
public sealed interface LinedMotif extends Motif
    permits Bands, Chevrons, Hexagons, Waves, Woven, Rosettes, Dots {
  /** Width of the lines; the diameter of dots (mm). */
  double lineMm();

  /** The line must be narrower than this (mm). */
  double widestLineMm();

  /** The same with another line. */
  LinedMotif withLine(double lineMm);

  /** Area of the lines over the plane's, 0 to 1, in closed form; empty if there is none. */
  OptionalDouble coverage();
}
