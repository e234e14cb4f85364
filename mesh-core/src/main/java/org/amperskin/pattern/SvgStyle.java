package org.amperskin.pattern;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The properties of one element after inheritance, presentation attributes, style sheet and style
 * attribute (in rising order of weight; W3C SVG 2 section 6).
 */
final class SvgStyle {
  private static final Set<String> INHERITED =
      Set.of(
          "fill",
          "fill-rule",
          "fill-opacity",
          "stroke",
          "stroke-width",
          "stroke-linecap",
          "stroke-linejoin",
          "stroke-miterlimit",
          "stroke-dasharray",
          "stroke-dashoffset",
          "stroke-opacity",
          "color",
          "visibility",
          "clip-rule",
          "paint-order",
          "marker",
          "marker-start",
          "marker-mid",
          "marker-end",
          "font-family",
          "font-size",
          "font-weight",
          "font-style",
          "letter-spacing",
          "word-spacing",
          "text-anchor",
          "white-space",
          "writing-mode",
          "direction",
          "image-rendering");
  private static final Set<String> OWN =
      Set.of(
          "opacity",
          "display",
          "clip-path",
          "mask",
          "filter",
          "overflow",
          "transform",
          "transform-origin",
          "transform-box",
          "vector-effect",
          "mix-blend-mode",
          "mask-type",
          "stop-color",
          "stop-opacity",
          "text-decoration",
          "dominant-baseline",
          "baseline-shift");

  /** Geometry given in style rather than as attribute; SVG 2 allows it, this reader does not. */
  private static final Set<String> GEOMETRY =
      Set.of("x", "y", "cx", "cy", "r", "rx", "ry", "d", "width", "height");

  /** Size of the initial font (px), W3C CSS Fonts 3 section 3.5, and so of {@code 1rem}. */
  static final double MEDIUM_PX = 16;

  private static final Pattern FONT =
      Pattern.compile(
          "(?s)((?:[a-z0-9-]+\\s+)*?)([0-9.]+(?:px|pt|pc|mm|cm|in|q|em|ex|rem|%)|(?:xx?-)?(?:small|large)|medium|smaller|larger)"
              + "(?:\\s*/\\s*\\S+)?\\s+(.+)",
          Pattern.CASE_INSENSITIVE);

  private final Map<String, String> values;

  /** Size of the font in user units. */
  private final double fontSize;

  private SvgStyle(Map<String, String> values, double fontSize) {
    this.values = values;
    this.fontSize = fontSize;
  }

  static SvgStyle initial() {
    return new SvgStyle(Map.of(), MEDIUM_PX);
  }

  /** Size of the font in user units. */
  double fontSize() {
    return fontSize;
  }

  /** Style of a child element. */
  SvgStyle of(SvgNode node, SvgStyleSheet sheet, SvgNotes notes) {
    Map<String, String> next = new HashMap<>();
    values.forEach(
        (key, value) -> {
          if (INHERITED.contains(key)) {
            next.put(key, value);
          }
        });
    node.attributes.forEach((key, value) -> put(next, key, value, null, node));
    sheet.matching(node).forEach((key, value) -> put(next, key, value, notes, node));
    String inline = node.attributes.get("style");
    if (inline != null) {
      SvgStyleSheet.declarations(inline)
          .forEach((key, value) -> put(next, key, value, notes, node));
    }
    String size = next.get("font-size");
    return new SvgStyle(
        next,
        size == null || size.equals(values.get("font-size")) && !ownSize(node, sheet)
            ? fontSize
            : fontSize(size, fontSize));
  }

  /** A size such as 2em counts anew where it is written, not where it is only inherited. */
  private static boolean ownSize(SvgNode node, SvgStyleSheet sheet) {
    String inline = node.attributes.getOrDefault("style", "");
    return node.attributes.containsKey("font-size")
        || inline.contains("font")
        || sheet.matching(node).containsKey("font-size")
        || sheet.matching(node).containsKey("font");
  }

  private static double fontSize(String text, double parent) {
    String word = text.toLowerCase(Locale.ROOT);
    double medium = MEDIUM_PX;
    return switch (word) {
      case "xx-small" -> medium * 3 / 5;
      case "x-small" -> medium * 3 / 4;
      case "small" -> medium * 8 / 9;
      case "medium" -> medium;
      case "large" -> medium * 6 / 5;
      case "x-large" -> medium * 3 / 2;
      case "xx-large" -> medium * 2;
      case "smaller" -> parent / 1.2;
      case "larger" -> parent * 1.2;
      case "inherit", "unset" -> parent;
      default -> {
        SvgNumbers.Length length = SvgNumbers.length(text);
        double size =
            switch (length.unit()) {
              case "", "px" -> length.value();
              case "%" -> length.value() / 100 * parent;
              case "em" -> length.value() * parent;
              case "ex" -> length.value() * parent / 2;
              case "rem" -> length.value() * medium;
              default -> length.mm() / SvgNumbers.MM_PER_PX;
            };
        SvgFault.unless(size >= 0, "font-size of 0 or more", text);
        yield size;
      }
    };
  }

  private void put(
      Map<String, String> into, String key, String value, SvgNotes notes, SvgNode node) {
    if (key.equals("font") && !node.name.equals("font")) {
      shorthand(into, value, notes, node);
    } else if (INHERITED.contains(key) || OWN.contains(key)) {
      if (value.equals("inherit")) {
        String parent = values.get(key);
        if (parent == null) {
          into.remove(key);
        } else {
          into.put(key, parent);
        }
      } else if (!value.isBlank()) {
        into.put(key, value.strip());
      }
    } else if (notes != null && GEOMETRY.contains(key) && !node.name.equals("svg")) {
      notes.add("geometry in style (" + key + ") ignored", node);
    }
  }

  /** {@code font: italic bold 12px/1.2 "A face", serif}. */
  private void shorthand(Map<String, String> into, String value, SvgNotes notes, SvgNode node) {
    Matcher font = FONT.matcher(value.strip());
    if (value.length() > 1000 || !font.matches()) {
      return;
    }
    into.put("font-style", "normal");
    into.put("font-weight", "normal");
    for (String word : font.group(1).strip().split("\\s+")) {
      if (word.equals("italic") || word.equals("oblique")) {
        into.put("font-style", word);
      } else if (word.equals("bold") || word.equals("bolder") || word.matches("[1-9]00")) {
        into.put("font-weight", word);
      }
    }
    put(into, "font-size", font.group(2), notes, node);
    put(into, "font-family", font.group(3), notes, node);
  }

  String get(String property, String otherwise) {
    return values.getOrDefault(property, otherwise);
  }

  /** The same without the element's own opacity. */
  SvgStyle opaque() {
    if (!values.containsKey("opacity")) {
      return this;
    }
    Map<String, String> next = new HashMap<>(values);
    next.remove("opacity");
    return new SvgStyle(next, fontSize);
  }

  /** A number between 0 and 1; percent allowed. */
  double portion(String property) {
    String text = values.get(property);
    if (text == null) {
      return 1;
    }
    double value =
        text.endsWith("%")
            ? SvgNumbers.single(text.substring(0, text.length() - 1)) / 100
            : SvgNumbers.single(text);
    return Math.max(0, Math.min(1, value));
  }
}
