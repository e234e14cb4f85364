package org.amperskin.plating;

/**
 * Where a result lies in eight of ten cases: from the tenth to the ninetieth percentile.
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
}
