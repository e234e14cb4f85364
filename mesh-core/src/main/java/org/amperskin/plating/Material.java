package org.amperskin.plating;

import java.util.Optional;

/**
 * Something the plan uses up.
 *
 * @param total how much, with what is not known of it
 * @param why what it is for
 */
public record Material(Total total, String why) {
  /** How the names of metals on the part end. */
  public static final String DEPOSITED = " deposited";

  public Material {
    double amount = total.typical();
    if (!(amount >= 0) || !Double.isFinite(amount)) {
      throw new IllegalArgumentException(
          "amount of " + total.name() + " (" + amount + " " + total.unit() + ")");
    }
  }

  /** A known amount. */
  public Material(String name, double amount, String unit, String why) {
    this(Total.known(name, unit, amount), why);
  }

  /** What. */
  public String name() {
    return total.name();
  }

  /** How much, with everything typical (in the unit). */
  public double amount() {
    return total.typical();
  }

  /** How much in eight of ten cases (in the unit), empty if it is known. */
  public Optional<Band> band() {
    return total.band();
  }

  /** g, L or A.h. */
  public String unit() {
    return total.unit();
  }
}
