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
 * .class} or these joined ({@code rect.dark}), also within others ({@code g.layer rect}, {@code g >
 * rect}), in lists. Anything else is noted and ignored; so are rules that begin with {@code @}.
 *
 * <p>Source: W3C Selectors Level 3, sections 5, 6.1, 6.4, 6.5, 8.1, 8.2 and 9.
 */
final class SvgStyleSheet {
  private static final Pattern SIMPLE =
      Pattern.compile("(\\*|[A-Za-z][\\w-]*)?((?:[.#][A-Za-z_][\\w-]*)*)");
  private static final Pattern COMMENT = Pattern.compile("(?s)/\\*.*?\\*/");
  private static final Pattern PART = Pattern.compile("([.#])([\\w-]+)");

  /** One element of a selector; {@code child} if it must stand right within the one before. */
  private record Step(String element, List<String> ids, List<String> classes, boolean child) {
    boolean matches(SvgNode node) {
      return (element == null || element.equals(node.name))
          && (ids.isEmpty() || ids.stream().allMatch(node.get("id", "")::equals))
          && (classes.isEmpty() || node.classes().containsAll(classes));
    }
  }

  private record Rule(List<Step> steps, Map<String, String> declarations) {
    int weight() {
      int sum = 0;
      for (Step step : steps) {
        sum += 10_000 * step.ids.size() + 100 * step.classes.size();
        sum += step.element == null ? 0 : 1;
      }
      return sum;
    }

    boolean matches(SvgNode node) {
      int last = steps.size() - 1;
      return steps.get(last).matches(node) && (last == 0 || above(node, last));
    }

    /** Whether the steps before the given one are found in the elements around the node. */
    private boolean above(SvgNode node, int step) {
      if (step == 0) {
        return true;
      }
      for (SvgNode up = node.parent; up != null; up = up.parent) {
        if (steps.get(step - 1).matches(up) && above(up, step - 1)) {
          return true;
        }
        if (steps.get(step).child) {
          return false;
        }
      }
      return false;
    }
  }

  private static final int MOST_STEPS = 6;
  private final List<Rule> rules = new ArrayList<>();

  SvgStyleSheet(String text, SvgNotes notes) {
    String css = COMMENT.matcher(text).replaceAll(" ").replaceAll("<!--|-->", " ");
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
    List<Step> steps = new ArrayList<>();
    boolean child = false;
    boolean sound = !selector.isEmpty();
    for (String word : selector.replace(">", " > ").strip().split("\\s+")) {
      if (word.equals(">")) {
        sound &= !child && !steps.isEmpty();
        child = true;
        continue;
      }
      Matcher simple = SIMPLE.matcher(word);
      if (!simple.matches()) {
        sound = false;
        break;
      }
      steps.add(step(simple, child));
      child = false;
    }
    if (!sound || child || steps.isEmpty() || steps.size() > MOST_STEPS) {
      notes.add("style selector ignored: " + SvgFault.shortened(selector));
      return;
    }
    rules.add(new Rule(List.copyOf(steps), declarations));
  }

  private static Step step(Matcher simple, boolean child) {
    List<String> ids = new ArrayList<>();
    List<String> classes = new ArrayList<>();
    Matcher part = PART.matcher(simple.group(2));
    while (part.find()) {
      (part.group(1).equals("#") ? ids : classes).add(part.group(2));
    }
    String element = simple.group(1);
    return new Step("*".equals(element) ? null : element, ids, classes, child);
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
    if (node.matched != null || rules.isEmpty()) {
      return node.matched == null ? Map.of() : node.matched;
    }
    Map<String, String> out = new LinkedHashMap<>();
    for (Rule rule : rules) {
      if (rule.matches(node)) {
        out.putAll(rule.declarations);
      }
    }
    node.matched = out;
    return out;
  }

  /** Reads {@code name: value; name: value}. */
  static Map<String, String> declarations(String text) {
    Map<String, String> out = new LinkedHashMap<>();
    String bare = text.contains("/*") ? COMMENT.matcher(text).replaceAll(" ") : text;
    for (String each : bare.split(";")) {
      int colon = each.indexOf(':');
      if (colon > 0) {
        String value = each.substring(colon + 1).strip();
        if (value.indexOf('!') >= 0) {
          value = value.replaceFirst("(?i)\\s*!\\s*important", "").strip();
        }
        out.put(each.substring(0, colon).strip().toLowerCase(java.util.Locale.ROOT), value);
      }
    }
    return out;
  }
}
