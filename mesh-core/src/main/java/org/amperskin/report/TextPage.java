package org.amperskin.report;

import java.util.Locale;

/**
 * Text for a terminal of 80 columns: headings, labelled lines, wrapped paragraphs.
 *
 * <p>Guaranteed: no line longer than {@value #WIDTH} characters, unless one word is.
 */
public final class TextPage {
  /** Columns a line may have. */
  public static final int WIDTH = 80;

  private static final int LABEL = 14;

  private final StringBuilder out = new StringBuilder();

  /** A line that stands out. */
  public TextPage heading(String text) {
    if (out.length() > 0) {
      out.append('\n');
    }
    return wrapped("", 0, text);
  }

  /** A labelled line: label on the left, text wrapped beside it. */
  public TextPage line(String label, String format, Object... values) {
    String text = values.length == 0 ? format : String.format(Locale.ROOT, format, values);
    return wrapped("  " + pad(label, LABEL), LABEL + 2, text);
  }

  /** A paragraph with a hanging mark. */
  public TextPage item(String mark, String text) {
    return wrapped("  " + mark + " ", 3 + mark.length(), text);
  }

  /** A line as it is. */
  public TextPage plain(String text) {
    out.append(text.stripTrailing()).append('\n');
    return this;
  }

  private TextPage wrapped(String start, int indent, String text) {
    StringBuilder line = new StringBuilder(start);
    boolean fresh = true;
    for (String word : text.split(" ")) {
      if (!fresh && line.length() + 1 + word.length() > WIDTH) {
        plain(line.toString());
        line = new StringBuilder(" ".repeat(indent));
        fresh = true;
      }
      if (!fresh) {
        line.append(' ');
      }
      line.append(word);
      fresh = false;
    }
    return plain(line.toString());
  }

  /** A text filled up with blanks on the right. */
  static String pad(String text, int width) {
    return text.length() >= width ? text + " " : text + " ".repeat(width - text.length());
  }

  /** A text of exactly this many columns: filled up, or cut with a mark and a blank after it. */
  static String cut(String text, int width) {
    return text.length() < width ? pad(text, width) : text.substring(0, width - 2) + "~ ";
  }

  /** A text filled up with blanks on the left. */
  static String right(String text, int width) {
    return text.length() >= width ? text : " ".repeat(width - text.length()) + text;
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
