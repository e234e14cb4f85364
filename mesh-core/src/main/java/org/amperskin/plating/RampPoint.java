package org.amperskin.plating;

/**
 * From this moment on, this current.
 *
 * @param atS seconds from the start
 * @param currentA current (A)
 */
public record RampPoint(double atS, double currentA) {
  public RampPoint {
    if (!(atS >= 0) || !(currentA > 0) || !Double.isFinite(atS) || !Double.isFinite(currentA)) {
      throw new IllegalArgumentException("ramp point at " + atS + " s with " + currentA + " A");
    }
  }
}
