package org.amperskin.plating;

import java.util.OptionalDouble;
import org.amperskin.units.Charge;
import org.amperskin.units.Dimension;
import org.amperskin.units.Length;
import org.amperskin.units.Mass;
import org.amperskin.units.Quantity;

/**
 * What of a step was done before it was broken off, or came out too thin or too shallow.
 *
 * <p>For an etch the gain is what was lost, and the reading a depth. One of the three is enough.
 * Charge together with a gain tells the efficiency of this very bath.
 *
 * @param chargeAh charge on the meter (A.h)
 * @param gainG what the part gained, weighed as it hangs, its wire included (g)
 * @param readingUm thickness read on it, taken as the mean (um)
 */
public record Already(OptionalDouble chargeAh, OptionalDouble gainG, OptionalDouble readingUm) {
  public Already {
    chargeAh.ifPresent(v -> Faraday.positive("charge already passed", v, "A.h"));
    gainG.ifPresent(v -> Faraday.positive("gain already weighed", v, "g"));
    readingUm.ifPresent(v -> Faraday.positive("thickness already read", v, "um"));
    if (readingUm.isPresent() && (chargeAh.isPresent() || gainG.isPresent())) {
      throw new IllegalArgumentException(
          "a thickness reading stands beside a charge or a gain: give one or the other");
    }
    if (chargeAh.isEmpty() && gainG.isEmpty() && readingUm.isEmpty()) {
      throw new IllegalArgumentException("nothing is told of what was already done");
    }
  }

  /** By the ampere-hour meter. */
  public static Already charge(double ampereHours) {
    OptionalDouble none = OptionalDouble.empty();
    return new Already(OptionalDouble.of(ampereHours), none, none);
  }

  /** By a thickness reading. */
  public static Already reading(double um) {
    OptionalDouble none = OptionalDouble.empty();
    return new Already(none, none, OptionalDouble.of(um));
  }

  /** Efficiency that charge and gain tell together. */
  OptionalDouble efficiency(Ion ion) {
    if (chargeAh.isEmpty() || gainG.isEmpty()) {
      return OptionalDouble.empty();
    }
    double all = Faraday.mass(Charge.ofAmpereHours(chargeAh.getAsDouble()), ion, 1).inGrams();
    return OptionalDouble.of(gainG.getAsDouble() / all);
  }

  /**
   * The charge that it stands for (C).
   *
   * @param perVolume charge that deposits a volume of metal, whatever its efficiency (C/m3)
   * @param perMass the same by mass (C/kg)
   * @param area what took metal, wire included (m2)
   * @param growth volume over that of a flat layer
   */
  double coulombs(double perVolume, double perMass, double area, double growth) {
    if (chargeAh.isPresent()) {
      return Charge.ofAmpereHours(chargeAh.getAsDouble()).coulombs();
    }
    return gainG.isPresent()
        ? Mass.ofGrams(gainG.getAsDouble()).kilograms() * perMass
        : Length.ofUm(readingUm.getAsDouble()).metres() * growth * area * perVolume;
  }

  /** How it was found, for people. */
  String basis() {
    if (chargeAh.isPresent() && gainG.isPresent()) {
      return "by "
          + Quantity.plain(chargeAh.getAsDouble(), 4)
          + " A.h and the weighing of "
          + Quantity.show(Mass.ofGrams(gainG.getAsDouble()).kilograms(), Dimension.MASS);
    }
    if (chargeAh.isPresent()) {
      return "by " + Quantity.plain(chargeAh.getAsDouble(), 4) + " A.h on the meter";
    }
    return gainG.isPresent()
        ? "by the weighing of "
            + Quantity.show(Mass.ofGrams(gainG.getAsDouble()).kilograms(), Dimension.MASS)
        : "as told, taken as the mean";
  }
}
