package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One element of a drawing as read: local name, attributes, children, line. */
final class SvgNode {
  final String name;

  /** False for elements of other name spaces, such as an editor's own records. */
  final boolean svg;

  final int line;
  final Map<String, String> attributes = new LinkedHashMap<>();
  final List<SvgNode> children = new ArrayList<>();
  final StringBuilder text = new StringBuilder();

  SvgNode(String name, boolean svg, int line) {
    this.name = name;
    this.svg = svg;
    this.line = line;
  }

  String get(String attribute, String otherwise) {
    String value = attributes.get(attribute);
    return value == null || value.isBlank() ? otherwise : value.strip();
  }
}
