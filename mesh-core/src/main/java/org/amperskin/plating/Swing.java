package org.amperskin.plating;

/**
 * How far one unknown moves one result of a step, the others at their typical values.
 *
 * <p>Ends are those of the unknown's tenth and ninetieth percentile, so that swings of different
 * unknowns can be set side by side; what was chosen (density, contact, volume) is no unknown.
 *
 * @param result what moves: time, metal or thickness
 * @param unknown what is not known, and after a comma the steps where it works
 * @param typical the result with everything typical (in the unit)
 * @param atLow the result at the unknown's tenth percentile (in the unit)
 * @param atHigh the result at its ninetieth (in the unit)
 * @param unit unit of the three: s, g or um
 * @param remedy what to measure so that the swing shrinks
 */
public record Swing(
    String result,
    String unknown,
    double typical,
    double atLow,
    double atHigh,
    String unit,
    String remedy) {
  /** How far the result moves, over its typical value. */
  public double share() {
    return typical == 0 ? 0 : Math.abs(atHigh - atLow) / Math.abs(typical);
  }

  /** The same, with the name of its step. */
  public Swing of(String step) {
    return new Swing(result, unknown + ", " + step, typical, atLow, atHigh, unit, remedy);
  }

  /** What is not known, without the steps. */
  public String kind() {
    return unknown.split(", ", 2)[0];
  }
}
