package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Collects what was skipped, one note per kind with a count, the lines and the ids. */
final class SvgNotes {
  private static final int MOST_LINES = 5;
  private static final int MOST_KINDS = 100;
  private final Set<String> plain = new LinkedHashSet<>();
  private final Map<String, TreeMap<Integer, String>> lines = new LinkedHashMap<>();
  private final Map<String, Integer> counts = new LinkedHashMap<>();

  void add(String note) {
    if (plain.size() < MOST_KINDS) {
      plain.add(note);
    }
  }

  /** Something like "&lt;image&gt; skipped" at an element; its line and id are told. */
  void add(String what, SvgNode at) {
    String key =
        counts.containsKey(what) || counts.size() < MOST_KINDS ? what : "further features ignored";
    counts.merge(key, 1, Integer::sum);
    String id = at.get("id", "");
    lines
        .computeIfAbsent(key, k -> new TreeMap<>())
        .merge(at.line, id.isEmpty() ? "" : "#" + cut(id), (a, b) -> a.isEmpty() ? b : a);
  }

  List<String> list() {
    List<String> out = new ArrayList<>(plain);
    counts.forEach(
        (what, count) -> {
          TreeMap<Integer, String> at = lines.get(what);
          StringBuilder text = new StringBuilder(count + " " + what);
          text.append(at.size() == 1 ? " at line " : " at lines ");
          int shown = 0;
          for (Map.Entry<Integer, String> line : at.entrySet()) {
            if (shown == MOST_LINES) {
              text.append(", ...");
              break;
            }
            text.append(shown++ == 0 ? "" : ", ").append(line.getKey());
            text.append(line.getValue().isEmpty() ? "" : " (" + line.getValue() + ")");
          }
          out.add(text.toString());
        });
    return out;
  }

  private static String cut(String id) {
    String line = id.replaceAll("\\s+", " ");
    return line.length() <= 40 ? line : line.substring(0, 37) + "...";
  }
}
