package org.amperskin.units;

/**
 * A length of time.
 *
 * @param seconds the value (s), finite
 */
public record Time(double seconds) {
  private static final Unit MINUTES = Unit.of("min");
  private static final Unit HOURS = Unit.of("h");

  public Time {
    if (!Double.isFinite(seconds)) {
      throw new IllegalArgumentException("time (" + seconds + " s) is not finite");
    }
  }

  /** From a number of s. */
  public static Time ofSeconds(double value) {
    return new Time(value);
  }

  /** From a number of min. */
  public static Time ofMinutes(double value) {
    return new Time(MINUTES.toSi(value));
  }

  /** As a number of min. */
  public double inMinutes() {
    return MINUTES.fromSi(seconds);
  }

  /** From a number of h. */
  public static Time ofHours(double value) {
    return new Time(HOURS.toSi(value));
  }

  /** As a number of h. */
  public double inHours() {
    return HOURS.fromSi(seconds);
  }
}
