package org.amperskin.plating;

import org.amperskin.units.Area;
import org.amperskin.units.Charge;
import org.amperskin.units.Current;
import org.amperskin.units.Length;
import org.amperskin.units.Mass;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Time;
import org.amperskin.units.Volume;

/**
 * Faraday's law of electrolysis, each way round.
 *
 * <p>{@code m = eps I t M / (n F)} and {@code thickness = m / (rho A)}; for a current that varies,
 * {@code I t} is the integral of the current. Guaranteed: exact in the constants used. Not
 * guaranteed: evenness; thickness is the mean over the area. Source: any text of electrochemistry.
 */
public final class Faraday {
  private Faraday() {}

  /**
   * Metal deposited by a charge.
   *
   * @param efficiency cathode current efficiency (0..1)
   */
  public static Mass mass(Charge charge, Ion ion, double efficiency) {
    return new Mass(charge.coulombs() * ion.kilogramsPerCoulomb() * checked(efficiency));
  }

  /**
   * Charge that deposits a mass of metal.
   *
   * @param efficiency cathode current efficiency (0..1)
   */
  public static Charge charge(Mass mass, Ion ion, double efficiency) {
    return new Charge(mass.kilograms() / (ion.kilogramsPerCoulomb() * checked(efficiency)));
  }

  /**
   * Charge that deposits a mean thickness on an area.
   *
   * @param efficiency cathode current efficiency (0..1)
   */
  public static Charge charge(
      Length thickness, Area area, Ion ion, MassDensity density, double efficiency) {
    return charge(mass(thickness, area, density), ion, efficiency);
  }

  /** Mass of a layer. */
  public static Mass mass(Length thickness, Area area, MassDensity density) {
    return new Mass(thickness.metres() * area.squareMetres() * density.kilogramsPerCubicMetre());
  }

  /** Mean thickness of a mass spread over an area. */
  public static Length thickness(Mass mass, Area area, MassDensity density) {
    positive("area", area.squareMetres(), "m2");
    positive("density", density.kilogramsPerCubicMetre(), "kg/m3");
    return new Length(mass.kilograms() / (area.squareMetres() * density.kilogramsPerCubicMetre()));
  }

  /** Time a constant current takes to pass a charge. */
  public static Time time(Charge charge, Current current) {
    positive("current", current.amperes(), "A");
    return new Time(charge.coulombs() / current.amperes());
  }

  /** Charge a constant current passes in a time. */
  public static Charge charge(Current current, Time time) {
    return new Charge(current.amperes() * time.seconds());
  }

  /**
   * Hydrogen freed by the current that deposits no metal, two electrons to a molecule.
   *
   * @param sideCharge charge that went into hydrogen
   * @param kelvin temperature of the gas, at one standard atmosphere
   */
  public static Volume hydrogen(Charge sideCharge, double kelvin) {
    positive("temperature", kelvin, "K");
    double mol = sideCharge.coulombs() / (2 * Constant.FARADAY.si());
    return new Volume(mol * Constant.GAS.si() * kelvin / Constant.ATMOSPHERE.si());
  }

  /** The efficiency, if it is one: above 0 and up to 1. */
  static double checked(double efficiency) {
    if (!(efficiency > 0 && efficiency <= 1)) {
      throw new IllegalArgumentException(
          "efficiency " + efficiency + " is not above 0 and up to 1");
    }
    return efficiency;
  }

  static double positive(String what, double value, String unit) {
    if (!(value > 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " (" + value + " " + unit + ") is not above zero");
    }
    return value;
  }
}
