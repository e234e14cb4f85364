package org.amperskin.pattern;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A colour as lightness and opacity, 0 to 1 each.
 *
 * <p>Lightness is the weighted sum 0.2126 R + 0.7152 G + 0.0722 B of the components as written
 * (ITU-R BT.709 weights, not linearised): blending in SVG works on these, and mid grey comes out as
 * one half. Names and notations: W3C CSS Color Module Level 3, sections 4.1 to 4.3.
 */
record SvgColour(double lightness, double opacity) {
  private static final Pattern CALL = Pattern.compile("(rgba?|hsla?)\\(([^()]*)\\)");
  private static final Map<String, Integer> NAMES = names();

  /** The colour, or null if the text is none that is known. */
  static SvgColour read(String text) {
    String t = text.strip().toLowerCase(Locale.ROOT);
    if (t.startsWith("#")) {
      return hex(t.substring(1));
    }
    if (t.equals("transparent")) {
      return new SvgColour(0, 0);
    }
    Integer named = NAMES.get(t);
    if (named != null) {
      return rgb(named >> 16, named >> 8 & 255, named & 255, 1);
    }
    Matcher call = CALL.matcher(t);
    return call.matches() ? call(call.group(1), call.group(2)) : null;
  }

  /** Lightness of components 0 to 255. */
  static SvgColour rgb(double r, double g, double b, double opacity) {
    return new SvgColour(
        r == g && g == b
            ? unit(r / 255)
            : (0.2126 * unit(r / 255) + 0.7152 * unit(g / 255) + 0.0722 * unit(b / 255)),
        unit(opacity));
  }

  private static SvgColour hex(String digits) {
    if (!digits.matches("[0-9a-f]+")) {
      return null;
    }
    int[] n = new int[4];
    n[3] = 255;
    if (digits.length() == 3 || digits.length() == 4) {
      for (int i = 0; i < digits.length(); i++) {
        n[i] = 17 * Character.digit(digits.charAt(i), 16);
      }
    } else if (digits.length() == 6 || digits.length() == 8) {
      for (int i = 0; i < digits.length() / 2; i++) {
        n[i] = Integer.parseInt(digits.substring(2 * i, 2 * i + 2), 16);
      }
    } else {
      return null;
    }
    return rgb(n[0], n[1], n[2], n[3] / 255.0);
  }

  private static SvgColour call(String name, String arguments) {
    String[] parts = arguments.strip().split("\\s*[,/]\\s*|\\s+");
    if (parts.length < 3 || parts.length > 4) {
      return null;
    }
    try {
      double opacity = parts.length == 4 ? portion(parts[3], 1) : 1;
      if (name.startsWith("rgb")) {
        return rgb(portion(parts[0], 255), portion(parts[1], 255), portion(parts[2], 255), opacity);
      }
      double hue = SvgNumbers.single(parts[0].replace("deg", "")) / 60;
      double s = unit(portion(parts[1], 1));
      double l = unit(portion(parts[2], 1));
      double c = (1 - Math.abs(2 * l - 1)) * s;
      double[] rgb = new double[3];
      for (int i = 0; i < 3; i++) {
        double h = ((hue - 2 * i) % 6 + 6) % 6;
        rgb[i] =
            255
                * (l
                    - c / 2
                    + c
                        * unit(
                            Math.abs(h > 3 ? h - 6 : h) > 2 ? 0 : 2 - Math.abs(h > 3 ? h - 6 : h)));
      }
      return rgb(rgb[0], rgb[1], rgb[2], opacity);
    } catch (SvgFault notANumber) {
      return null;
    }
  }

  private static double portion(String text, double whole) {
    return text.endsWith("%")
        ? whole * SvgNumbers.single(text.substring(0, text.length() - 1)) / 100
        : SvgNumbers.single(text);
  }

  private static double unit(double value) {
    return Math.max(0, Math.min(1, value));
  }

  private static Map<String, Integer> names() {
    Map<String, Integer> map = new HashMap<>();
    String[] words = SvgColourNames.TABLE.strip().split("\\s+");
    for (int i = 0; i < words.length; i += 2) {
      map.put(words[i], Integer.parseInt(words[i + 1], 16));
    }
    return Map.copyOf(map);
  }
}
