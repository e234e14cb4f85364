package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The simple part of CSS: rules whose selectors are {@code *}, an element, {@code #id}, {@code
 * .class} or these joined ({@code rect.dark}), in lists. Anything else is noted and ignored.
 */
final class SvgStyleSheet {
  private static final Pattern SIMPLE =
      Pattern.compile("(\\*|[A-Za-z][\\w-]*)?((?:[.#][A-Za-z_][\\w-]*)*)");
  private static final Pattern PART = Pattern.compile("([.#])([\\w-]+)");

  private record Rule(
      String element, List<String> ids, List<String> classes, Map<String, String> declarations) {
    int weight() {
      return 10_000 * ids.size() + 100 * classes.size() + (element == null ? 0 : 1);
    }

    boolean matches(SvgNode node) {
      String[] own = node.get("class", "").split("\\s+");
      return (element == null || element.equals(node.name))
          && ids.stream().allMatch(node.get("id", "")::equals)
          && List.of(own).containsAll(classes);
    }
  }

  private final List<Rule> rules = new ArrayList<>();

  SvgStyleSheet(String text, SvgNotes notes) {
    String css = text.replaceAll("(?s)/\\*.*?\\*/", " ").replaceAll("<!--|-->", " ");
    int at = 0;
    while (at < css.length()) {
      int brace = css.indexOf('{', at);
      int semicolon = css.indexOf(';', at);
      boolean atRule = css.substring(at).stripLeading().startsWith("@");
      if (atRule && semicolon >= 0 && (brace < 0 || semicolon < brace)) {
        notes.add("style rule ignored: " + SvgFault.shortened(css.substring(at, semicolon)));
        at = semicolon + 1;
        continue;
      }
      if (brace < 0) {
        break;
      }
      int end = closing(css, brace);
      String head = css.substring(at, brace).strip();
      if (atRule) {
        notes.add("style rule ignored: " + SvgFault.shortened(head));
      } else {
        Map<String, String> declarations = declarations(css.substring(brace + 1, end));
        for (String selector : head.split(",")) {
          add(selector.strip(), declarations, notes);
        }
      }
      at = Math.min(end + 1, css.length());
    }
    rules.sort(Comparator.comparingInt(Rule::weight)); // stable: later rules win among equals
  }

  private void add(String selector, Map<String, String> declarations, SvgNotes notes) {
    Matcher simple = SIMPLE.matcher(selector);
    if (selector.isEmpty() || !simple.matches()) {
      notes.add("style selector ignored: " + SvgFault.shortened(selector));
      return;
    }
    List<String> ids = new ArrayList<>();
    List<String> classes = new ArrayList<>();
    Matcher part = PART.matcher(simple.group(2));
    while (part.find()) {
      (part.group(1).equals("#") ? ids : classes).add(part.group(2));
    }
    String element = simple.group(1);
    rules.add(new Rule("*".equals(element) ? null : element, ids, classes, declarations));
  }

  private static int closing(String css, int brace) {
    int depth = 0;
    for (int i = brace; i < css.length(); i++) {
      depth += css.charAt(i) == '{' ? 1 : css.charAt(i) == '}' ? -1 : 0;
      if (depth == 0) {
        return i;
      }
    }
    return css.length();
  }

  /** Declarations that apply to an element, weightier ones last. */
  Map<String, String> matching(SvgNode node) {
    Map<String, String> out = new LinkedHashMap<>();
    for (Rule rule : rules) {
      if (rule.matches(node)) {
        out.putAll(rule.declarations);
      }
    }
    return out;
  }

  /** Reads {@code name: value; name: value}. */
  static Map<String, String> declarations(String text) {
    Map<String, String> out = new LinkedHashMap<>();
    for (String each : text.replaceAll("(?s)/\\*.*?\\*/", " ").split(";")) {
      int colon = each.indexOf(':');
      if (colon > 0) {
        String value = each.substring(colon + 1).replaceFirst("(?i)\\s*!\\s*important", "").strip();
        out.put(each.substring(0, colon).strip().toLowerCase(java.util.Locale.ROOT), value);
      }
    }
    return out;
  }
}
