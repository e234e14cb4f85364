package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Collects what was skipped, one note per kind with a count and the lines. */
final class SvgNotes {
  private static final int MOST_LINES = 5;
  private static final int MOST_KINDS = 100;
  private final List<String> plain = new ArrayList<>();
  private final Map<String, TreeSet<Integer>> lines = new LinkedHashMap<>();
  private final Map<String, Integer> counts = new LinkedHashMap<>();

  void add(String note) {
    if (!plain.contains(note)) {
      plain.add(note);
    }
  }

  /** Something like "&lt;text&gt; skipped" at a line. */
  void add(String what, int line) {
    String key =
        counts.containsKey(what) || counts.size() < MOST_KINDS ? what : "further features ignored";
    counts.merge(key, 1, Integer::sum);
    lines.computeIfAbsent(key, k -> new TreeSet<>()).add(line);
  }

  List<String> list() {
    List<String> out = new ArrayList<>(plain);
    counts.forEach(
        (what, count) -> {
          TreeSet<Integer> at = lines.get(what);
          StringBuilder text = new StringBuilder(count + " " + what);
          text.append(at.size() == 1 ? " at line " : " at lines ");
          int shown = 0;
          for (int line : at) {
            if (shown == MOST_LINES) {
              text.append(", ...");
              break;
            }
            text.append(shown++ == 0 ? "" : ", ").append(line);
          }
          out.add(text.toString());
        });
    return out;
  }
}
