package org.amperskin.plating;

/**
 * Something the plan uses up.
 *
 * @param name what
 * @param amount how much (in the unit)
 * @param unit g, L or A.h
 * @param why what it is for
 */
public record Material(String name, double amount, String unit, String why) {
  public Material {
    if (!(amount >= 0) || !Double.isFinite(amount)) {
      throw new IllegalArgumentException("amount of " + name + " (" + amount + " " + unit + ")");
    }
  }
}
