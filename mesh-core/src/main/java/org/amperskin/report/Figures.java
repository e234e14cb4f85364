package org.amperskin.report;

import java.util.Locale;
import java.util.OptionalDouble;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/** How numbers are written for people: units always, four digits unless more are sure. */
public final class Figures {
  private static final int DIGITS = 4;

  private Figures() {}

  /** An area given in mm2. */
  public static String area(double mm2) {
    return Quantity.plain(mm2 / 10_000, DIGITS) + " dm2";
  }

  /** A length given in mm. */
  public static String length(double mm) {
    return number(mm) + " mm";
  }

  /** A volume given in mm3. */
  public static String volume(double mm3) {
    return Quantity.plain(mm3 / 1000, DIGITS) + " cm3";
  }

  /** A number with up to four digits, without trailing zeros. */
  public static String number(double value) {
    String text = value == 0 ? "0" : Quantity.plain(value, DIGITS);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  /** A current given in A; in A as a supply shows it, in mA where that would read as nothing. */
  public static String current(double amperes) {
    return amperes < 0.01
        ? Quantity.show(amperes, Dimension.CURRENT, 3)
        : Quantity.plain(amperes, 3) + " A";
  }

  /** A mass given in g, in mg below a tenth, in ug below a tenth of those. */
  public static String mass(double grams) {
    if (grams > 0 && grams < 1e-4) {
      return Quantity.plain(1e6 * grams, 3) + " ug";
    }
    return grams < 0.1
        ? Quantity.show(grams / 1000, Dimension.MASS, 3)
        : Quantity.plain(grams, DIGITS) + " g";
  }

  /** A charge given in A.h, as a meter reads it and as Faraday's law wants it. */
  public static String charge(double ampereHours) {
    return number(ampereHours)
        + " A.h ("
        + Quantity.plain(Unit.of("A.h").toSi(ampereHours), DIGITS)
        + " C)";
  }

  /** A voltage in V; estimates deserve no more than two digits. */
  public static String volts(double volts) {
    return Quantity.plain(volts, 2) + " V";
  }

  /** A share of one, in percent. */
  public static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }

  /** A time in s, as a clock would tell it. */
  public static String time(double seconds) {
    if (seconds < 90) {
      return Quantity.plain(seconds, 3) + " s";
    }
    if (seconds < 3600) {
      long whole = Math.round(seconds);
      return whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
    }
    long minutes = Math.round(seconds / 60);
    return minutes / 60 + " h " + minutes % 60 + " min";
  }

  /** The two ends of a band in brackets, nothing where they read the same. */
  static String band(String low, String high) {
    return low.equals(high) ? "" : " (" + low + " to " + high + ")";
  }

  /** Something or a dash. */
  static String orDash(OptionalDouble value, java.util.function.DoubleFunction<String> show) {
    return value.isPresent() ? show.apply(value.getAsDouble()) : "-";
  }

  /** A whole number with marks at the thousands. */
  public static String count(long n) {
    return String.format(Locale.ROOT, "%,d", n);
  }
}
