package org.amperskin.plating;

import java.util.List;
import org.amperskin.units.Mass;
import org.amperskin.units.Volume;

/**
 * A caustic developer for positive resist, weighed out.
 *
 * <p>Sodium hydroxide in water at the strength given; 7 g/L is the usual one (common practice, and
 * from memory of a resist maker's sheet). Not guaranteed: that it suits the resist at hand; its
 * data sheet goes before this.
 *
 * @param volume how much developer
 * @param sodiumHydroxide how much to weigh
 * @param molPerLitre the strength
 */
public record DeveloperMix(Volume volume, Mass sodiumHydroxide, double molPerLitre) {
  /** The usual strength in g/L. */
  public static final double USUAL_G_PER_L = 7;

  private static final double STRONGEST_G_PER_L = 20;

  /** Developer of the usual strength. */
  public static DeveloperMix of(Volume volume) {
    return of(volume, USUAL_G_PER_L);
  }

  /**
   * Developer of a given strength.
   *
   * @param gramsPerLitre sodium hydroxide (g/L), up to 20: stronger strips the resist
   */
  public static DeveloperMix of(Volume volume, double gramsPerLitre) {
    Faraday.positive("volume", volume.cubicMetres(), "m3");
    if (!(gramsPerLitre > 0 && gramsPerLitre <= STRONGEST_G_PER_L)) {
      throw new IllegalArgumentException(
          "developer strength "
              + gramsPerLitre
              + " g/L is not above 0 and up to "
              + STRONGEST_G_PER_L
              + " g/L: stronger caustic takes unexposed resist as well");
    }
    Mass mass = Mass.ofGrams(gramsPerLitre * volume.inLitres());
    return new DeveloperMix(volume, mass, gramsPerLitre / Constant.NAOH_MOLAR_MASS.value());
  }

  /** The hazards of mixing it. */
  public List<Caution> cautions() {
    return Caution.of(List.of(Hazard.CAUSTIC, Hazard.WASTE));
  }
}
