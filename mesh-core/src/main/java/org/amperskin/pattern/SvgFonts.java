package org.amperskin.pattern;

import java.awt.Font;
import java.awt.font.TextAttribute;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiFunction;

/**
 * Finds fonts of this machine by the names a drawing asks for.
 *
 * <p>Guaranteed: a machine without fonts, or without the libraries to read them, gives no font and
 * a reason instead of an exception.
 *
 * <p>Not guaranteed: the same font on another machine; whoever draws with it says which it was.
 */
final class SvgFonts {
  /** Size at which outlines are taken (units); large, so that no hinting moves them. */
  static final float SIZE = 1000;

  /** What stands in, in this order, for a face that is not there. */
  private static final Map<String, List<String>> STAND_INS =
      Map.of(
          "sans-serif", List.of("Inter", "DejaVu Sans", "Liberation Sans", "Noto Sans"),
          "serif", List.of("DejaVu Serif", "Liberation Serif", "Noto Serif"),
          "monospace", List.of("DejaVu Sans Mono", "Liberation Mono", "Noto Sans Mono"));

  private static final Map<String, String> LOGICAL =
      Map.of("sans-serif", Font.SANS_SERIF, "serif", Font.SERIF, "monospace", Font.MONOSPACED);

  /**
   * A font for a list of names.
   *
   * @param font the font at size {@link #SIZE}, or null
   * @param name its family
   * @param asked the first name asked for
   * @param standsIn whether it is another than asked for
   * @param why why there is no font, or empty
   */
  record Pick(Font font, String name, String asked, boolean standsIn, String why) {}

  private final BiFunction<String, Integer, Font> machine;
  private final Map<String, Pick> picks = new HashMap<>();

  /** Fonts made by a function of family name and style; tests put in a machine without any. */
  SvgFonts(BiFunction<String, Integer, Font> machine) {
    this.machine = machine;
  }

  static SvgFonts ofThisMachine() {
    return new SvgFonts((name, style) -> new Font(name, style, 1));
  }

  /** The first family of a CSS list that is there, else a stand-in of the same sort. */
  Pick find(String families, boolean bold, boolean italic) {
    String key = families + (bold ? "|b" : "|") + (italic ? "i" : "");
    return picks.computeIfAbsent(key, k -> search(families, bold, italic));
  }

  private Pick search(String families, boolean bold, boolean italic) {
    int style = (bold ? Font.BOLD : 0) | (italic ? Font.ITALIC : 0);
    String asked = "";
    String generic = "sans-serif";
    try {
      for (String each : families.split(",")) {
        String name = each.strip().replaceAll("^[\"']|[\"']$", "").strip();
        if (name.isEmpty() || name.length() > 100) {
          continue;
        }
        asked = asked.isEmpty() ? name : asked;
        if (STAND_INS.containsKey(name.toLowerCase(Locale.ROOT))) {
          generic = name.toLowerCase(Locale.ROOT);
          break;
        }
        Font font = named(name, style);
        if (font != null) {
          return pick(font, asked, !name.equals(asked));
        }
        if (name.toLowerCase(Locale.ROOT).matches(".*\\b(mono|courier|code)\\b.*")) {
          generic = "monospace";
        }
      }
      for (String name : STAND_INS.get(generic)) {
        Font font = named(name, style);
        if (font != null) {
          return pick(font, asked, !STAND_INS.containsKey(asked.toLowerCase(Locale.ROOT)));
        }
      }
      return pick(machine.apply(LOGICAL.get(generic), style), asked, true);
    } catch (RuntimeException | LinkageError | InternalError | java.awt.AWTError noFonts) {
      return new Pick(
          null,
          "",
          asked,
          true,
          "no fonts can be read here: " + noFonts.getClass().getSimpleName());
    }
  }

  private static Pick pick(Font font, String asked, boolean standsIn) {
    Font sized =
        font.deriveFont(SIZE).deriveFont(Map.of(TextAttribute.KERNING, TextAttribute.KERNING_ON));
    // asks for the metrics now, so that a font that cannot be read fails here
    sized
        .createGlyphVector(new java.awt.font.FontRenderContext(null, true, true), "x")
        .getOutline();
    return new Pick(sized, font.getFamily(Locale.ROOT), asked, standsIn, "");
  }

  /** Null if the machine has no such family: it would answer with its default face. */
  private Font named(String name, int style) {
    Font font = machine.apply(name, style);
    String wanted = name.toLowerCase(Locale.ROOT);
    boolean same =
        font.getFamily(Locale.ROOT).toLowerCase(Locale.ROOT).equals(wanted)
            || font.getFontName(Locale.ROOT).toLowerCase(Locale.ROOT).equals(wanted)
            || font.getPSName().toLowerCase(Locale.ROOT).equals(wanted);
    return same ? font : null;
  }
}
