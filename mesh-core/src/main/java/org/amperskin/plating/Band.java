package org.amperskin.plating;

/**
 * Where a result lies in eight of ten cases: from the tenth to the ninetieth percentile, widened
 * where the central value lies outside them.
 *
 * @param low tenth percentile
 * @param high ninetieth percentile
 */
public record Band(double low, double high) {
  public Band {
    if (!(low <= high) || !Double.isFinite(low) || !Double.isFinite(high)) {
      throw new IllegalArgumentException("band from " + low + " to " + high + " is upside down");
    }
  }

  /** This band, widened to hold a value: one that is typical may be the end of all that can be. */
  Band with(double value) {
    return new Band(Math.min(low, value), Math.max(high, value));
  }

  /** This band, widened to at least half the value to either side. */
  Band atLeastHalf(double value) {
    return new Band(Math.min(low, 0.5 * value), Math.max(high, 1.5 * value));
  }
}
