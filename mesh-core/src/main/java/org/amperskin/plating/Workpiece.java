package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the plan must know of the part and its mask beside the surfaces of the steps.
 *
 * @param print what the part is printed of, if known
 * @param resistUm thickness of the resist (um), if there is one and it is known
 * @param painted whether it comes with bare conductive paint on it
 * @param overlap how the regions lie, if known; else each is taken to lie over every other
 */
public record Workpiece(
    Optional<PrintMaterial> print,
    OptionalDouble resistUm,
    boolean painted,
    Optional<Overlap> overlap) {
  public Workpiece {
    resistUm.ifPresent(um -> Faraday.positive("resist thickness", um, "um"));
  }

  /** Bare of paint or not known, with nothing known of how the regions lie. */
  public Workpiece(Optional<PrintMaterial> print, OptionalDouble resistUm) {
    this(print, resistUm, false, Optional.empty());
  }

  /** Nothing known. */
  public static Workpiece unknown() {
    return new Workpiece(Optional.empty(), OptionalDouble.empty());
  }
}
