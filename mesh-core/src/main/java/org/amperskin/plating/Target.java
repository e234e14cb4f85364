package org.amperskin.plating;

import org.amperskin.units.Charge;
import org.amperskin.units.Length;
import org.amperskin.units.Unit;

/** When a step is done. */
public sealed interface Target {

  /**
   * A mean thickness over the open area.
   *
   * @param thickness above zero
   */
  record Thickness(Length thickness) implements Target {
    public Thickness {
      Faraday.positive("target thickness", thickness.metres(), "m");
    }
  }

  /**
   * A charge on the ampere-hour meter of the supply, wire included.
   *
   * @param charge above zero
   */
  record Passed(Charge charge) implements Target {
    public Passed {
      Faraday.positive("target charge", charge.coulombs(), "C");
    }
  }

  /**
   * Charge per open area that gave the wanted colour on a coupon.
   *
   * @param ampereHoursPerDm2 above zero (A.h/dm2)
   */
  record Coverage(double ampereHoursPerDm2) implements Target {
    private static final Unit PER_DM2 = Unit.of("A.h/dm2");

    public Coverage {
      Faraday.positive("coverage", ampereHoursPerDm2, "A.h/dm2");
    }

    /** In C/m2. */
    double coulombsPerSquareMetre() {
      return PER_DM2.toSi(ampereHoursPerDm2);
    }
  }

  /** A thickness in micrometres. */
  static Target um(double value) {
    return new Thickness(Length.ofUm(value));
  }

  /** A charge in ampere-hours. */
  static Target ampereHours(double value) {
    return new Passed(Charge.ofAmpereHours(value));
  }

  /** A coupon's charge in A.h/dm2. */
  static Target coverage(double ampereHoursPerDm2) {
    return new Coverage(ampereHoursPerDm2);
  }
}
