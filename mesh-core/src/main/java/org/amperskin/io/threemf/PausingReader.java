package org.amperskin.io.threemf;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;

/**
 * Decodes UTF-8 strictly and hands out no character beyond a tag that opens a list of vertices or
 * triangles until it is asked again.
 *
 * <p>There the plain elements of the list can be taken from the bytes by {@link PlainTags}, which
 * is several times faster than an XML reader. The XML reader still reads everything else, and
 * judges where the list is.
 *
 * <p>Guaranteed: {@link #pausedAfter} is true only if the last character handed out is the end of
 * the tag of the list that was met last. Every text that looks like such a tag is counted, also
 * within comments; the XML reader counts the elements it meets. Where the counts agree, no such
 * text lies behind the element met last, so the pause is at that element. Where they do not, the
 * file is read by the XML reader alone.
 */
final class PausingReader extends Reader {
  /** Bytes looked at in one go: longer tags are left to the XML reader. */
  static final int TAG = 512;

  private static final byte[] VERTICES = "vertices".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] TRIANGLES = "triangles".getBytes(StandardCharsets.US_ASCII);
  private static final int ROOM = 1 << 16;

  private final InputStream in;
  private final CharsetDecoder decoder =
      StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT);

  /** Bytes read; the one behind the last is 0, which ends every run of allowed characters. */
  final byte[] bytes = new byte[ROOM + 1];

  /** First byte not yet handed out or taken. */
  int at;

  private int end;
  private boolean ended;

  /** Up to here there is no undecided tag. */
  private int scanned;

  private int pause = -1;
  private int lists;
  private final char[] chars = new char[1 << 13];
  private int charAt;
  private int charEnd;

  PausingReader(InputStream in) {
    this.in = in;
  }

  @Override
  public int read(char[] to, int off, int len) throws IOException {
    if (len == 0) {
      return 0;
    }
    while (charAt == charEnd) {
      if (!decode()) {
        return -1;
      }
    }
    int n = Math.min(len, charEnd - charAt);
    System.arraycopy(chars, charAt, to, off, n);
    charAt += n;
    return n;
  }

  /** True if nothing behind the tag of the list met last was handed out. */
  boolean pausedAfter(int listsMet) {
    return charAt == charEnd && pause >= 0 && at == pause && lists == listsMet;
  }

  /** Makes a whole tag lie in {@code bytes} from {@code at}, where there is one. */
  void fillForTag() throws IOException {
    while (end - at < TAG && !ended) {
      fill();
    }
  }

  /** Takes the bytes up to {@code to}: the XML reader will not see them. */
  void take(int to) {
    at = to;
    scanned = to;
    pause = -1;
  }

  private boolean decode() throws IOException {
    if (at == scanned) {
      pause = -1;
      if (scanned == end) {
        if (ended) {
          return false;
        }
        fill();
      }
      scan();
    }
    ByteBuffer from = ByteBuffer.wrap(bytes, at, scanned - at);
    CharBuffer to = CharBuffer.wrap(chars);
    CoderResult result = decoder.decode(from, to, ended && scanned == end);
    if (result.isError()) {
      result.throwException();
    }
    at = from.position();
    charAt = 0;
    charEnd = to.position();
    if (result.isUnderflow() && at < scanned) {
      if (scanned < end) {
        throw new MalformedInputException(scanned - at);
      }
      fill();
    }
    return true;
  }

  private void fill() throws IOException {
    System.arraycopy(bytes, at, bytes, 0, end - at);
    end -= at;
    scanned -= at;
    pause -= at;
    at = 0;
    int n = in.read(bytes, end, ROOM - end);
    ended = n < 0;
    end += Math.max(0, n);
    bytes[end] = 0;
  }

  /** Moves {@code scanned} on: past the next tag that opens a list, or as far as is sure. */
  private void scan() throws IOException {
    int i = scanned;
    while (i < end) {
      if (bytes[i] != '<') {
        i++;
        continue;
      }
      if (end - i < TAG && !ended) {
        if (i > at) {
          scanned = i;
          return;
        }
        fill();
        i = at;
        continue;
      }
      if (opensList(i + 1)) {
        lists++;
        int close = closing(i);
        if (close > 0) {
          scanned = close + 1;
          pause = scanned;
          return;
        }
      }
      i++;
    }
    scanned = end;
  }

  private boolean opensList(int i) {
    int n = starts(i, VERTICES) ? VERTICES.length : starts(i, TRIANGLES) ? TRIANGLES.length : 0;
    return n > 0 && (bytes[i + n] == '>' || bytes[i + n] == '/' || isBlank(bytes[i + n]));
  }

  /** Whether these bytes come next; the 0 behind the last byte read ends every comparison. */
  boolean starts(int i, byte[] word) {
    for (int k = 0; k < word.length; k++) {
      if (bytes[i + k] != word[k]) {
        return false;
      }
    }
    return true;
  }

  static boolean isBlank(byte b) {
    return b == ' ' || b == '\n' || b == '\t' || b == '\r';
  }

  /** Place of the end of a tag that is not empty, -1 if it is or is too long. */
  private int closing(int from) {
    int last = Math.min(end, from + TAG);
    for (int i = from; i < last; i++) {
      if (bytes[i] == '>') {
        return bytes[i - 1] == '/' ? -1 : i;
      }
    }
    return -1;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
