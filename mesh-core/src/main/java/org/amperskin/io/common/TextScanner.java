package org.amperskin.io.common;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Reads words and numbers from a text file, line by line, without a string per word.
 *
 * <p>Definition: words are separated by blanks; a line ends with LF, CR or CR LF; where asked for,
 * a backslash before the line's end joins the next line, except in a comment (a path such as {@code
 * # C:\models\} there must not swallow a vertex). A UTF-8 byte order mark is passed over.
 *
 * <p>Guaranteed: works with any read size, down to one byte a read; a line longer than {@value
 * #MAX_LINE} bytes is refused.
 */
public final class TextScanner {
  private static final int BUFFER = 1 << 16;
  private static final int MAX_LINE = 1 << 26;

  private final InputStream in;
  private final boolean joinLines;
  private final byte[] buffer = new byte[BUFFER];
  private int at;
  private int end;
  private byte[] line = new byte[256];
  private int length;
  private int next;
  private int wordStart;
  private int wordEnd;
  private long lineNumber;
  private long linesJoined = 1;
  private boolean begun;
  private boolean atEnd;

  /**
   * Scans a stream.
   *
   * @param joinLines whether a backslash at the line's end continues it
   */
  public TextScanner(InputStream in, boolean joinLines) {
    this.in = in;
    this.joinLines = joinLines;
  }

  /** Goes to the next line that has a word; false at the end of the file. */
  public boolean nextLine() throws IOException, PrintFileException {
    while (readLine()) {
      next = 0;
      if (hasWord()) {
        return true;
      }
    }
    return false;
  }

  /** Number of the line at hand, from 1. */
  public long lineNumber() {
    return lineNumber;
  }

  /** True if the line at hand has a further word. */
  public boolean hasWord() {
    while (next < length && blank(line[next])) {
      next++;
    }
    return next < length;
  }

  /** Takes the next word; false if the line has none left. */
  public boolean nextWord() {
    if (!hasWord()) {
      return false;
    }
    wordStart = next;
    while (next < length && !blank(line[next])) {
      next++;
    }
    wordEnd = next;
    return true;
  }

  /** True if the word at hand is {@code lower}, in any case. */
  public boolean is(String lower) {
    if (wordEnd - wordStart != lower.length()) {
      return false;
    }
    for (int i = 0; i < lower.length(); i++) {
      int c = line[wordStart + i];
      if (c >= 'A' && c <= 'Z') {
        c += 'a' - 'A';
      }
      if (c != lower.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /** First byte of the word at hand. */
  public int first() {
    return line[wordStart];
  }

  /** The word at hand, for messages and names; long ones are cut. */
  public String word() {
    int n = Math.min(wordEnd - wordStart, 60);
    return new String(line, wordStart, n, StandardCharsets.UTF_8);
  }

  /** What is left of the line, trimmed. */
  public String rest() {
    hasWord();
    return new String(line, next, length - next, StandardCharsets.UTF_8).strip();
  }

  /** Takes the next word as a coordinate, at most {@link MeshBuilder#MAX_COORDINATE} in size. */
  public double coordinate(String what) throws PrintFileException {
    double value = number(what);
    if (Math.abs(value) > MeshBuilder.MAX_COORDINATE) {
      throw PrintFileException.atLine(
          lineNumber,
          "expected %s within +-%s, found \"%s\"",
          what,
          MeshBuilder.MAX_COORDINATE,
          word());
    }
    return value;
  }

  private double number(String what) throws PrintFileException {
    if (!nextWord()) {
      String found = atEnd ? "file" : "line";
      throw PrintFileException.atLine(
          lineNumber, "expected %s, found the end of the %s", what, found);
    }
    double value;
    try {
      value = JavaDoubleParser.parseDouble(line, wordStart, wordEnd - wordStart);
    } catch (NumberFormatException e) {
      throw PrintFileException.atLine(lineNumber, "expected %s, found \"%s\"", what, word());
    }
    if (!Double.isFinite(value)) {
      throw PrintFileException.atLine(
          lineNumber, "expected %s, found \"%s\", which is not finite", what, word());
    }
    return value;
  }

  /** The part of the word at hand before a slash, as a whole number. */
  public long leadingInteger(String what) throws PrintFileException {
    int i = wordStart;
    boolean negative = i < wordEnd && line[i] == '-';
    if (negative || i < wordEnd && line[i] == '+') {
      i++;
    }
    int digits = i;
    long value = 0;
    while (i < wordEnd && line[i] >= '0' && line[i] <= '9' && value < Integer.MAX_VALUE * 4L) {
      value = 10 * value + line[i] - '0';
      i++;
    }
    if (i == digits || i < wordEnd && line[i] != '/') {
      throw PrintFileException.atLine(lineNumber, "expected %s, found \"%s\"", what, word());
    }
    return negative ? -value : value;
  }

  private static boolean blank(byte b) {
    return b == ' ' || b == '\t' || b == 0x0b || b == '\f';
  }

  private boolean readLine() throws IOException, PrintFileException {
    lineNumber += linesJoined;
    linesJoined = 1;
    if (!begun) {
      begun = true;
      lineNumber = 1;
      skipMark();
    }
    length = 0;
    boolean any = false;
    while (true) {
      if (at == end && !fill()) {
        atEnd = true;
        return any || length > 0;
      }
      byte b = buffer[at++];
      any = true;
      if (b != '\n' && b != '\r') {
        append(b);
        continue;
      }
      if (b == '\r' && (at < end || fill()) && buffer[at] == '\n') {
        at++;
      }
      if (!joinLines || length == 0 || line[length - 1] != '\\' || isComment()) {
        return true;
      }
      line[length - 1] = ' ';
      linesJoined++;
    }
  }

  private boolean isComment() {
    int i = 0;
    while (i < length && blank(line[i])) {
      i++;
    }
    return line[i] == '#';
  }

  private void append(byte b) throws PrintFileException {
    if (length == line.length) {
      if (length >= MAX_LINE) {
        throw PrintFileException.atLine(lineNumber, "longer than %,d bytes", MAX_LINE);
      }
      line = Arrays.copyOf(line, 2 * length);
    }
    line[length++] = b;
  }

  private void skipMark() throws IOException {
    int[] mark = {0xef, 0xbb, 0xbf};
    for (int m : mark) {
      if (at == end && !fill() || (buffer[at] & 0xff) != m) {
        return; // no mark; a file that begins with part of one is no text and fails later
      }
      at++;
    }
  }

  private boolean fill() throws IOException {
    int n = in.read(buffer, 0, buffer.length);
    at = 0;
    end = Math.max(0, n);
    return n > 0;
  }
}
