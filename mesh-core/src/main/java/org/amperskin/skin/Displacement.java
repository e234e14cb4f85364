package org.amperskin.skin;

import java.util.OptionalDouble;

/**
 * The volume of liquid that a part pushes aside when it hangs in a full tank.
 *
 * <p>Definition: the volume within the surface that liquid reaches. What bodies share counts once;
 * a void that liquid cannot enter counts as displaced, one that is vented does not.
 *
 * <p>Method: the divergence theorem over the pieces of the skin, each with its outward side known.
 *
 * @param volumeMm3 the volume (mm3); empty where it cannot be stood behind
 * @param errorMm3 bound of its error (mm3): pieces that could not be decided, and voids to which
 *     neither a way nor the lack of one was proved
 * @param why why there is no volume, empty if there is one
 */
public record Displacement(OptionalDouble volumeMm3, double errorMm3, String why) {
  static Displacement of(double volumeMm3, double errorMm3) {
    return new Displacement(OptionalDouble.of(volumeMm3), errorMm3, "");
  }

  static Displacement unknown(String why) {
    return new Displacement(OptionalDouble.empty(), 0, why);
  }
}
