package org.amperskin.region;

import org.amperskin.geom.Vec3;
import org.amperskin.unroll.Cone;
import org.amperskin.unroll.ConeFit;
import org.amperskin.unroll.Unrolling;

/** The form a film takes on the part. */
public sealed interface FilmForm {
  /**
   * Flat, square to light along {@code toward}; the artwork's centre on the ray at {@code centre}.
   */
  record Plane(Vec3 toward, Vec3 centre) implements FilmForm {}

  /**
   * Bent.
   *
   * @param film the cylinder or cone it takes
   * @param fit what fits the patch; the film only touches it
   */
  record Bent(Cone film, ConeFit fit) implements FilmForm {}

  /** Cut to an unrolled patch. */
  record Cut(Unrolling flat) implements FilmForm {}
}
