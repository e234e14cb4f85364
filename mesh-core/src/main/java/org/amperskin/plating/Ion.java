package org.amperskin.plating;

import org.amperskin.units.Charge;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.Mass;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Unit;

/**
 * A metal ion and the electrons one atom of it takes: the electrochemical equivalents.
 *
 * <p>All figures are for 100 % efficiency. Method: Faraday's law with the constants of {@link
 * Constant}. Chromium shows why the valence is part of the question: from a hexavalent bath an atom
 * takes six electrons, from a trivalent one three.
 *
 * @param metal the metal
 * @param valence electrons per atom (n)
 */
public record Ion(Metal metal, int valence) {
  private static final Unit A_H_PER_DM2_UM = Unit.of("A.h/(dm2.um)");
  private static final Unit A_H_PER_FT2_MIL = Unit.of("A.h/(ft2.mil)");

  public Ion {
    if (!metal.valences().contains(valence)) {
      throw new IllegalArgumentException(
          "valence " + valence + " of " + metal.label() + " is not one of " + metal.valences());
    }
  }

  /** Mass per charge in kg/C. */
  public double kilogramsPerCoulomb() {
    return metal.molarMassKgPerMol() / (valence * Constant.FARADAY.si());
  }

  /** Mass deposited by one ampere-hour. */
  public Mass massPerAmpereHour() {
    return new Mass(kilogramsPerCoulomb() * Charge.ofAmpereHours(1).coulombs());
  }

  /** Charge per volume of metal (C/m3), which is also charge per area and thickness. */
  public double coulombsPerCubicMetre(MassDensity density) {
    return density.kilogramsPerCubicMetre() / kilogramsPerCoulomb();
  }

  /** Ampere-hours for 1 um on 1 dm2. */
  public double ampereHoursPerDm2Um(MassDensity density) {
    return A_H_PER_DM2_UM.fromSi(coulombsPerCubicMetre(density));
  }

  /** Ampere-hours for 0.001 in on 1 ft2. */
  public double ampereHoursPerFt2Mil(MassDensity density) {
    return A_H_PER_FT2_MIL.fromSi(coulombsPerCubicMetre(density));
  }

  /** Thickness grown in one hour at this current density. */
  public Length thicknessPerHour(CurrentDensity current, MassDensity density) {
    return new Length(
        current.amperesPerSquareMetre() * Unit.of("h").toSi(1) / coulombsPerCubicMetre(density));
  }

  /** As a plater writes it, such as {@code Cu(II)}. */
  @Override
  public String toString() {
    String[] roman = {"", "I", "II", "III", "IV", "V", "VI"};
    return metal.symbol() + "(" + roman[valence] + ")";
  }
}
