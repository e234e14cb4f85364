package org.amperskin.plating;

import java.util.OptionalDouble;
import org.amperskin.units.Quantity;

/**
 * A default that was used because nothing else was said, or a value of the user's in its place.
 *
 * @param what what it is
 * @param value the value with its unit
 * @param mark how far it can be trusted
 * @param source where it comes from
 */
public record Assumption(String what, String value, Mark mark, String source) {
  static final String PRACTICE = "common practice, no source";

  static Assumption of(String what, Figure figure) {
    return new Assumption(what, figure.show(), figure.mark(), figure.source());
  }

  /** A value of the user's own that stands in place of the recipe's, else the recipe's. */
  static Assumption ownOr(String what, OptionalDouble si, Figure figure) {
    if (si.isEmpty()) {
      return of(what, figure);
    }
    String value = Quantity.show(si.getAsDouble(), figure.unit(), 3);
    return new Assumption(
        "own " + what, value + ", not the recipe's " + figure.show(), Mark.COMPUTED, "as told");
  }

  static Assumption practice(String what, String value) {
    return new Assumption(what, value, Mark.COMMON, PRACTICE);
  }
}
