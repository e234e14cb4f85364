package org.amperskin.plating;

/**
 * A range in which a setting is allowed: a choice, not an uncertainty.
 *
 * @param low least allowed value
 * @param high greatest allowed value
 */
public record Window(double low, double high) {
  public Window {
    if (!(low <= high) || !Double.isFinite(low) || !Double.isFinite(high)) {
      throw new IllegalArgumentException("window from " + low + " to " + high + " is upside down");
    }
  }

  /** Whether the value lies inside, ends included (a billionth of slack for rounding). */
  public boolean contains(double value) {
    return value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9);
  }
}
