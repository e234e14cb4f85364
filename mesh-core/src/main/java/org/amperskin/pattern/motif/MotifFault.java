package org.amperskin.pattern.motif;

import java.util.Locale;

/** A value that a motif cannot have; tells which, so that a reader can point at it. */
public final class MotifFault extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final MotifParameter parameter;

  MotifFault(MotifParameter parameter, String message) {
    super(message);
    this.parameter = parameter;
  }

  /** Which value. */
  public MotifParameter parameter() {
    return parameter;
  }

  /** Refuses a value outside two bounds, both allowed. */
  static void within(MotifParameter parameter, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw new MotifFault(
          parameter,
          String.format(
              Locale.ROOT,
              "%s %s does not fit: %s to %s do",
              parameter.word(),
              shown(value, parameter),
              Pencil.number(low),
              shown(high, parameter)));
    }
  }

  /** Refuses a line that is not below its limit. */
  static void line(double lineMm, double widestMm, String why) {
    if (!(widestMm > 0)) {
      throw new MotifFault(
          MotifParameter.LINE,
          "no line fits: " + why + " leaves " + Pencil.number(widestMm) + " mm");
    }
    if (!(lineMm > 0 && lineMm < widestMm)) {
      throw new MotifFault(
          MotifParameter.LINE,
          "line "
              + Pencil.number(lineMm)
              + " mm does not fit: above 0 mm, below "
              + Pencil.number(widestMm)
              + " mm, "
              + why);
    }
  }

  private static String shown(double value, MotifParameter parameter) {
    return Pencil.number(value) + (parameter.unit().isEmpty() ? "" : " " + parameter.unit());
  }
}
