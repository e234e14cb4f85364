package org.amperskin.io.common;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.amperskin.geom.Progress;

/**
 * A stream that tells how much of it was read, once a megabyte.
 *
 * <p>What the progress throws passes through, so that reading can be given up.
 */
public final class ProgressStream extends FilterInputStream {
  private static final long STEP = 1 << 20;

  private final long bytes;
  private final Progress progress;
  private long count;
  private long next = STEP;

  /**
   * Wraps a stream.
   *
   * @param bytes its size, below 1 if not known
   */
  public ProgressStream(InputStream in, long bytes, Progress progress) {
    super(in);
    this.bytes = bytes;
    this.progress = progress;
  }

  @Override
  public int read() throws IOException {
    int b = super.read();
    count(b < 0 ? 0 : 1);
    return b;
  }

  @Override
  public int read(byte[] to, int off, int len) throws IOException {
    int n = super.read(to, off, len);
    count(n);
    return n;
  }

  @Override
  public long skip(long n) throws IOException {
    long done = super.skip(n);
    count(done);
    return done;
  }

  @Override
  public boolean markSupported() {
    return false;
  }

  private void count(long n) {
    count += Math.max(0, n);
    if (count >= next) {
      next = count + STEP;
      progress.at("reading", bytes > 0 ? Math.min(1, (double) count / bytes) : Double.NaN);
    }
  }
}
