package org.amperskin.plating;

/**
 * A default that was used because nothing else was said.
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

  static Assumption practice(String what, String value) {
    return new Assumption(what, value, Mark.COMMON, PRACTICE);
  }
}
