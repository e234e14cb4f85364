package org.amperskin.io;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.amperskin.io.common.PrintFileException;

/**
 * Unpacks a gzip file to a temporary one, since readers want to go back and forth.
 *
 * <p>Guaranteed: at most {@value #MOST_BYTES} bytes and, past the first {@value #FREE_BYTES},
 * {@value #MOST_RATIO} from one; the CRC is checked; the temporary file goes when this is closed.
 */
final class Gunzip implements AutoCloseable {
  static final long MOST_BYTES = 4L << 30;
  static final long FREE_BYTES = 16L << 20;
  static final int MOST_RATIO = 200;

  private final Path file;

  private Gunzip(Path file) {
    this.file = file;
  }

  static Gunzip of(Path packed) throws IOException, PrintFileException {
    long size = Files.size(packed);
    Gunzip g = new Gunzip(Files.createTempFile("amperskin", ".unpacked"));
    try {
      g.unpack(packed, size);
      return g;
    } catch (IOException | PrintFileException | RuntimeException e) {
      g.close();
      throw e;
    }
  }

  private void unpack(Path packed, long size) throws IOException, PrintFileException {
    long count = 0;
    try (InputStream raw = Files.newInputStream(packed);
        OutputStream out = Files.newOutputStream(file)) {
      try {
        InputStream in = new GZIPInputStream(raw, 1 << 16);
        byte[] block = new byte[1 << 16];
        for (int n = in.read(block); n >= 0; n = in.read(block)) {
          count += n;
          if (count > MOST_BYTES || count > FREE_BYTES && count / size >= MOST_RATIO) {
            throw PrintFileException.whole(
                "the gzip file of %d bytes unpacks to over %d, the limits are %d bytes and %d to 1",
                size, count, MOST_BYTES, MOST_RATIO);
          }
          out.write(block, 0, n);
        }
      } catch (ZipException e) {
        throw PrintFileException.whole(
            "damaged gzip file, after %d unpacked bytes: %s", count, e.getMessage());
      } catch (EOFException e) {
        throw PrintFileException.whole(
            "the gzip file of %d bytes ends early, after %d unpacked bytes", size, count);
      }
    }
  }

  /** The unpacked file. */
  Path file() {
    return file;
  }

  @Override
  public void close() throws IOException {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      file.toFile().deleteOnExit(); // where a mapped file cannot be deleted yet
    }
  }
}
