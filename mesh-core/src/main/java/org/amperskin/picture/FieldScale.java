package org.amperskin.picture;

import org.amperskin.region.FaceField;

/**
 * Colours for a number: dark blue for little to light yellow for much, evenly lighter in between.
 *
 * <p>Definition: {@value #STEPS} colours whose lightness L* runs evenly from {@value #DARKEST} to
 * {@value #LIGHTEST} while the hue turns from blue over green to yellow, as colourful as a screen
 * can show up to a chroma of {@value #CHROMA}; so the order is seen also in grey and with any of
 * the usual colour-vision deficiencies. Where there is no number the colour is mid grey.
 *
 * <p>Source: CIE 1976 L*a*b* (ISO/CIE 11664-4) with daylight D65, to sRGB (IEC 61966-2-1).
 *
 * @param low the number of the darkest colour
 * @param high the number of the lightest; larger numbers have it too
 * @param label what it is
 * @param unit its unit, empty for a plain ratio
 * @param clipped true if some numbers lie above {@code high}
 */
public record FieldScale(double low, double high, String label, String unit, boolean clipped) {
  /** Number of colours. */
  public static final int STEPS = 64;

  private static final double DARKEST = 22;
  private static final double LIGHTEST = 93;
  private static final double CHROMA = 58;
  private static final double FIRST_HUE = 285;
  private static final double LAST_HUE = 98;
  private static final int TICKS = 4;
  private static final int NONE = 0xFF9AA0A6;

  /** Checks the range. */
  public FieldScale {
    if (!(low <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException("scale from " + low + " to " + high + " " + unit);
    }
  }

  /** A scale for a field, between round numbers, up to what 98 per cent of its area have. */
  public static FieldScale of(FaceField field) {
    if (Double.isNaN(field.low())) {
      return new FieldScale(0, 0, field.label(), field.unit(), false);
    }
    double from = field.low();
    double to = Math.max(from, field.quantile(0.98));
    double step = roundUp((to - from) / TICKS);
    if (step == 0) {
      // one value all over, but for rounding
      return new FieldScale(from, from, field.label(), field.unit(), false);
    }
    double low = step * Math.floor(from / step + 1e-9);
    if (low + TICKS * step < to - 1e-9 * step) {
      step = roundUp((to - low) / TICKS * (1 + 1e-9));
      low = step * Math.floor(from / step + 1e-9);
    }
    double high = low + TICKS * step;
    return new FieldScale(
        low, high, field.label(), field.unit(), field.high() > high + 1e-9 * Math.abs(high));
  }

  /** The next of 1, 2, 2.5, 4, 5, 6, 8 times a power of ten. */
  private static double roundUp(double step) {
    if (!(step > 1e-12)) {
      return 0;
    }
    double power = 1;
    while (power > step) {
      power /= 10;
    }
    while (10 * power <= step) {
      power *= 10;
    }
    for (double nice : new double[] {1, 2, 2.5, 4, 5, 6, 8}) {
      if (nice * power >= step * (1 - 1e-9)) {
        return nice * power;
      }
    }
    return 10 * power;
  }

  /** Colour of a number, 0 to {@value #STEPS} - 1; {@value #STEPS} for none. */
  public int index(double value) {
    if (Double.isNaN(value)) {
      return STEPS;
    }
    double share = high > low ? (value - low) / (high - low) : 0;
    return Math.max(0, Math.min(STEPS - 1, (int) (share * STEPS)));
  }

  /** The colours, 0xFFRRGGBB, and the one for no number last. */
  public static int[] palette() {
    int[] colours = new int[STEPS + 1];
    for (int i = 0; i < STEPS; i++) {
      double t = i / (STEPS - 1.0);
      double lightness = DARKEST + t * (LIGHTEST - DARKEST);
      double hue = Math.toRadians(FIRST_HUE + t * (LAST_HUE - FIRST_HUE));
      double chroma = CHROMA;
      while (!shown(lightness, chroma, hue)) {
        chroma -= 0.5;
      }
      colours[i] = argb(lightness, chroma, hue);
    }
    colours[STEPS] = NONE;
    return colours;
  }

  private static boolean shown(double lightness, double chroma, double hue) {
    for (double c : linear(lightness, chroma, hue)) {
      if (c < -1e-4 || c > 1 + 1e-4) {
        return false;
      }
    }
    return true;
  }

  private static double[] linear(double lightness, double chroma, double hue) {
    double fy = (lightness + 16) / 116;
    double x = 0.95047 * back(fy + chroma * StrictMath.cos(hue) / 500);
    double y = back(fy);
    double z = 1.08883 * back(fy - chroma * StrictMath.sin(hue) / 200);
    return new double[] {
      3.2404542 * x - 1.5371385 * y - 0.4985314 * z,
      -0.9692660 * x + 1.8760108 * y + 0.0415560 * z,
      0.0556434 * x - 0.2040259 * y + 1.0572252 * z
    };
  }

  private static double back(double f) {
    return f > 6.0 / 29 ? f * f * f : 3 * (6.0 / 29) * (6.0 / 29) * (f - 4.0 / 29);
  }

  private static int argb(double lightness, double chroma, double hue) {
    int out = 0xFF;
    for (double c : linear(lightness, chroma, hue)) {
      double in = Math.max(0, Math.min(1, c));
      double s = in <= 0.0031308 ? 12.92 * in : 1.055 * StrictMath.pow(in, 1 / 2.4) - 0.055;
      out = out << 8 | (int) Math.round(255 * s);
    }
    return out;
  }
}
