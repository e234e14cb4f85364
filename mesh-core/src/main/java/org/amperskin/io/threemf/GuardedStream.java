package org.amperskin.io.threemf;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import org.amperskin.io.common.PrintFileException;

/**
 * The bytes of a zip entry, held to the limits while they are read and to size and CRC at the end.
 *
 * <p>A fault is kept, since an XML reader hides what its stream throws.
 */
final class GuardedStream extends FilterInputStream {
  /** Below this, even the best packed text is harmless. */
  private static final long FREE_BYTES = 1 << 22;

  private final String part;
  private final ZipEntry entry;
  private final Limits limits;
  private final long already;
  private final CRC32 crc = new CRC32();
  private long count;
  private boolean done;
  private PrintFileException fault;

  GuardedStream(InputStream in, String part, ZipEntry entry, Limits limits, long already) {
    super(in);
    this.part = part;
    this.entry = entry;
    this.limits = limits;
    this.already = already;
  }

  /** Throws what went wrong, if anything did. */
  void rethrow() throws PrintFileException {
    if (fault != null) {
      throw fault;
    }
  }

  /** Number of bytes read. */
  long count() {
    return count;
  }

  /** Reads to the end, so that size and CRC are checked. */
  void drain() throws PrintFileException {
    byte[] rest = new byte[8192];
    try {
      while (read(rest, 0, rest.length) >= 0) {
        rethrow();
      }
    } catch (IOException e) {
      rethrow();
      throw PrintFileException.whole("%s", e.getMessage()).in(part);
    }
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] to, int off, int len) throws IOException {
    if (fault != null) {
      throw new IOException(fault.getMessage());
    }
    if (done) {
      return -1;
    }
    int n;
    try {
      n = super.read(to, off, len);
    } catch (IOException e) {
      throw stop(
          PrintFileException.whole(
              "damaged after %d of %d bytes: %s", count, entry.getSize(), e.getMessage()));
    }
    if (n < 0) {
      done = true;
      checkEnd();
      return -1;
    }
    crc.update(to, off, n);
    count += n;
    checkLimits();
    return n;
  }

  private void checkEnd() throws IOException {
    if (entry.getSize() >= 0 && entry.getSize() != count) {
      throw stop(
          PrintFileException.whole("the archive says %d bytes, found %d", entry.getSize(), count));
    }
    if (entry.getCrc() >= 0 && entry.getCrc() != crc.getValue()) {
      throw stop(
          PrintFileException.whole(
              "damaged: the archive says CRC %08x, found %08x", entry.getCrc(), crc.getValue()));
    }
  }

  private void checkLimits() throws IOException {
    if (count > limits.partBytes()) {
      throw stop(
          PrintFileException.whole("unpacks to more than %d bytes, the limit", limits.partBytes()));
    }
    if (already + count > limits.totalBytes()) {
      throw stop(
          PrintFileException.whole(
              "all parts unpack to more than %d bytes, the limit", limits.totalBytes()));
    }
    long packed = Math.max(1, entry.getCompressedSize());
    if (count > FREE_BYTES && count / packed >= limits.ratio()) {
      throw stop(
          PrintFileException.whole(
              "unpacks from %d to over %d bytes, more than the limit of %d to 1",
              packed, count, limits.ratio()));
    }
  }

  private IOException stop(PrintFileException why) {
    fault = why.in(part);
    return new IOException(fault.getMessage());
  }

  @Override
  public boolean markSupported() {
    return false;
  }

  @Override
  public long skip(long n) throws IOException {
    byte[] some = new byte[(int) Math.min(8192, Math.max(0, n))];
    return Math.max(0, read(some, 0, some.length));
  }
}
