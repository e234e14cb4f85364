package org.amperskin.io.threemf;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * Takes plain empty elements, {@code <vertex x="1" y="2" z="3"/>}, straight from the bytes of a
 * list.
 *
 * <p>Definition: plain is an element without prefix whose attributes have names of one to three
 * letters or digits and values of digits, points, signs and e, with nothing around the equals sign.
 *
 * <p>Guaranteed: anything else, whether allowed or not, is left where it is for the XML reader,
 * with all that follows; so is what the caller does not {@link #take}. Numbers are the nearest
 * doubles, as {@link Numbers} gives them.
 */
final class PlainTags {
  private static final int MOST_ATTRIBUTES = 8;
  private static final long EXACT = 1L << 53;
  private static final double[] TENS = new double[23];

  static {
    // Powers of ten up to 10^22 are doubles exactly, so one division rounds once.
    TENS[0] = 1;
    for (int i = 1; i < TENS.length; i++) {
      TENS[i] = TENS[i - 1] * 10;
    }
  }

  private final PausingReader in;
  private final byte[] bytes;
  private final byte[] open;
  private final int[] name = new int[MOST_ATTRIBUTES];
  private final int[] from = new int[MOST_ATTRIBUTES];
  private final int[] to = new int[MOST_ATTRIBUTES];
  private int count;
  private int lines;
  private int end;
  private long taken;

  PlainTags(PausingReader in, String element) {
    this.in = in;
    this.bytes = in.bytes;
    this.open = ("<" + element).getBytes(StandardCharsets.US_ASCII);
  }

  /** A name as a number, to be compared with {@link #name(int)}. */
  static int code(String name) {
    int code = 0;
    for (int i = 0; i < name.length(); i++) {
      code = code << 8 | name.charAt(i);
    }
    return code;
  }

  /** Looks at the next element; false if it is not plain. */
  boolean next() throws IOException {
    in.fillForTag();
    lines = 0;
    count = 0;
    int i = blanks(in.at);
    if (!in.starts(i, open)) {
      return false;
    }
    i += open.length;
    while (true) {
      int before = i;
      i = blanks(i);
      if (bytes[i] == '/') {
        end = i + 2;
        return bytes[i + 1] == '>';
      }
      if (i == before || count == MOST_ATTRIBUTES) {
        return false;
      }
      i = attribute(i);
      if (i < 0) {
        return false;
      }
    }
  }

  private int blanks(int start) {
    int i = start;
    while (PausingReader.isBlank(bytes[i])) {
      if (bytes[i] == '\n' || bytes[i] == '\r' && bytes[i + 1] != '\n') {
        lines++;
      }
      i++;
    }
    return i;
  }

  private int attribute(int start) {
    int i = start;
    int code = 0;
    while (bytes[i] >= 'a' && bytes[i] <= 'z' || bytes[i] >= '0' && bytes[i] <= '9') {
      code = code << 8 | bytes[i++];
    }
    if (i == start || i > start + 3 || bytes[start] <= '9' || bytes[i] != '=') {
      return -1;
    }
    byte quote = bytes[i + 1];
    if (quote != '"' && quote != '\'') {
      return -1;
    }
    i += 2;
    name[count] = code;
    from[count] = i;
    while (ofNumber(bytes[i])) {
      i++;
    }
    to[count++] = i;
    return bytes[i] == quote ? i + 1 : -1;
  }

  private static boolean ofNumber(byte b) {
    return b >= '0' && b <= '9' || b == '.' || b == '-' || b == '+' || b == 'e' || b == 'E';
  }

  /** Takes the element looked at. */
  void take() {
    taken += lines;
    in.take(end);
  }

  /** Line ends in what was taken. */
  long lines() {
    return taken;
  }

  int count() {
    return count;
  }

  int name(int i) {
    return name[i];
  }

  /** A whole number from 0 to 2^31 - 1, -1 if the value is none. */
  int index(int i) {
    if (to[i] == from[i] || to[i] - from[i] > 10) {
      return -1;
    }
    long value = 0;
    for (int k = from[i]; k < to[i]; k++) {
      int digit = bytes[k] - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      value = 10 * value + digit;
    }
    return value > Integer.MAX_VALUE ? -1 : (int) value;
  }

  /** A number, NaN if the value is none. */
  double real(int i) {
    int k = from[i];
    boolean minus = bytes[k] == '-';
    k += minus ? 1 : 0;
    long digits = 0;
    int places = 0;
    int point = -1;
    int first = k;
    for (; k < to[i] && k - first < 18; k++) {
      int digit = bytes[k] - '0';
      if (digit >= 0 && digit <= 9) {
        digits = 10 * digits + digit;
        places++;
      } else if (bytes[k] == '.' && point < 0) {
        point = places;
      } else {
        break;
      }
    }
    int decimals = point < 0 ? 0 : places - point;
    if (k == to[i] && places > 0 && digits < EXACT) {
      double value = digits / TENS[decimals];
      return minus ? -value : value;
    }
    try {
      return JavaDoubleParser.parseDouble(bytes, from[i], to[i] - from[i]);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }
}
