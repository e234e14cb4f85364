package org.amperskin.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Splits command lines as they stand in help and documents. */
final class Words {
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  private Words() {}

  /** The words of one command line, quotes taken off. */
  static String[] of(String line) {
    List<String> words = new ArrayList<>();
    Matcher m = WORD.matcher(line);
    while (m.find()) {
      words.add(m.group(1) != null ? m.group(1) : m.group(2));
    }
    return words.toArray(String[]::new);
  }

  /** Every line of a text that starts the program, continuation lines joined. */
  static List<String> commands(String text) {
    String joined = text.replaceAll("\\\\\\R\\s*", " ");
    return joined
        .lines()
        .map(String::strip)
        .map(line -> line.startsWith("$ ") ? line.substring(2) : line)
        .filter(line -> line.matches("(\\./)?amperskin [a-z-].*|source <\\(amperskin .*"))
        .toList();
  }
}
