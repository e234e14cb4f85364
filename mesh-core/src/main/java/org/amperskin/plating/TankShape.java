package org.amperskin.plating;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The user's tank, as far as it is told.
 *
 * @param volumeL volume of solution in it (L)
 * @param spacingMm clearance from part to anode (mm)
 * @param inner its inner size, if told
 * @param bathDensity density of the solution (kg/m3), if told
 */
public record TankShape(
    OptionalDouble volumeL,
    OptionalDouble spacingMm,
    Optional<Inner> inner,
    OptionalDouble bathDensity) {

  /** Nothing told. */
  public static final TankShape UNKNOWN =
      new TankShape(
          OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());

  /**
   * Inner size of a tank.
   *
   * @param lengthMm along its longer walls (mm)
   * @param widthMm across (mm)
   * @param depthMm from rim to floor (mm)
   */
  public record Inner(double lengthMm, double widthMm, double depthMm) {
    public Inner {
      Faraday.positive("length of the tank", lengthMm, "mm");
      Faraday.positive("width of the tank", widthMm, "mm");
      Faraday.positive("depth of the tank", depthMm, "mm");
    }

    /** What it holds to the rim (L). */
    public double brimL() {
      return lengthMm * widthMm * depthMm / 1e6;
    }

    /** As people write it. */
    String show() {
      return String.format(Locale.ROOT, "%.0f x %.0f x %.0f mm", lengthMm, widthMm, depthMm);
    }
  }
}
