package org.amperskin.io.ply;

import java.io.IOException;
import java.io.InputStream;

/** Bytes of a stream one by one or in blocks, counted; works with any read size. */
final class ByteSource {
  private final InputStream in;
  private final long size;
  private final byte[] buffer = new byte[1 << 16];
  private int at;
  private int end;
  private long before;

  /**
   * A source.
   *
   * @param size number of bytes the stream holds
   */
  ByteSource(InputStream in, long size) {
    this.in = in;
    this.size = size;
  }

  /** The next byte, 0 to 255, or -1 at the end. */
  int next() throws IOException {
    return at < end || fill() ? buffer[at++] & 0xff : -1;
  }

  /** The byte that {@link #next} would give, without taking it. */
  int peek() throws IOException {
    return at < end || fill() ? buffer[at] & 0xff : -1;
  }

  /** Fills {@code to[0..n-1]}; false if the stream ends before. */
  boolean take(byte[] to, int n) throws IOException {
    int done = 0;
    while (done < n) {
      if (at == end && !fill()) {
        return false;
      }
      int some = Math.min(n - done, end - at);
      System.arraycopy(buffer, at, to, done, some);
      at += some;
      done += some;
    }
    return true;
  }

  /** Passes over n bytes; false if the stream ends before. */
  boolean skip(long n) throws IOException {
    long left = n;
    while (left > 0) {
      if (at == end && !fill()) {
        return false;
      }
      int some = (int) Math.min(left, end - at);
      at += some;
      left -= some;
    }
    return true;
  }

  /** Number of bytes taken. */
  long offset() {
    return before + at;
  }

  /** Number of bytes not taken yet. */
  long left() {
    return Math.max(0, size - offset());
  }

  private boolean fill() throws IOException {
    before += end;
    at = 0;
    end = 0;
    int n;
    do {
      n = in.read(buffer, 0, buffer.length);
    } while (n == 0);
    end = Math.max(0, n);
    return n > 0;
  }
}
