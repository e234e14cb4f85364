package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One element of a drawing as read: local name, attributes, children, line. Inside a text element a
 * piece of bare text is a child named {@link #TEXT}.
 */
final class SvgNode {
  static final String TEXT = "#text";

  final String name;

  /** False for elements of other name spaces, such as an editor's own records. */
  final boolean svg;

  final int line;

  /** The element around this one; null for the outermost. */
  final SvgNode parent;

  final Map<String, String> attributes = new LinkedHashMap<>();
  final List<SvgNode> children = new ArrayList<>();
  final StringBuilder text = new StringBuilder();

  /** What the style sheet says about this element; null until asked. */
  Map<String, String> matched;

  private Set<String> classes;

  SvgNode(String name, boolean svg, int line, SvgNode parent) {
    this.name = name;
    this.svg = svg;
    this.line = line;
    this.parent = parent;
  }

  String get(String attribute, String otherwise) {
    String value = attributes.get(attribute);
    return value == null || value.isBlank() ? otherwise : value.strip();
  }

  /** The names in the attribute {@code class}. */
  Set<String> classes() {
    if (classes == null) {
      String text = get("class", "");
      classes = text.isEmpty() ? Set.of() : new HashSet<>(Arrays.asList(text.split("\\s+")));
    }
    return classes;
  }

  boolean within(String element) {
    for (SvgNode n = this; n != null; n = n.parent) {
      if (n.svg && n.name.equals(element)) {
        return true;
      }
    }
    return false;
  }
}
