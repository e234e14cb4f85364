package org.amperskin.pattern;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

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
          "marker-end");
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
          "mix-blend-mode");

  /** Geometry given in style rather than as attribute; SVG 2 allows it, this reader does not. */
  private static final Set<String> GEOMETRY =
      Set.of("x", "y", "cx", "cy", "r", "rx", "ry", "d", "width", "height");

  private final Map<String, String> values;

  private SvgStyle(Map<String, String> values) {
    this.values = values;
  }

  static SvgStyle initial() {
    return new SvgStyle(Map.of());
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
    return new SvgStyle(next);
  }

  private void put(
      Map<String, String> into, String key, String value, SvgNotes notes, SvgNode node) {
    if (INHERITED.contains(key) || OWN.contains(key)) {
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
      notes.add("geometry in style (" + key + ") ignored", node.line);
    }
  }

  String get(String property, String otherwise) {
    return values.getOrDefault(property, otherwise);
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
