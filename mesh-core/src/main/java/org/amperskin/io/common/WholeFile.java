package org.amperskin.io.common;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file as a whole or not at all.
 *
 * <p>Definition: the content goes to a new file beside the target, which then takes the target's
 * name; where the target is a link, the file it points to is replaced.
 *
 * <p>Guaranteed: after a failure the target is as it was and the file beside it is gone. Not
 * guaranteed: that on file systems without an atomic rename nobody sees the target missing for a
 * moment; of {@link #write}, that the content outlives a power cut right after.
 */
public final class WholeFile {
  private static final int MOST_TRIES = 1000;

  private WholeFile() {}

  /** Writes the content to a stream. */
  @FunctionalInterface
  public interface Content {
    /** Writes all of it; the stream is buffered and closed by the caller. */
    void to(OutputStream out) throws IOException;
  }

  /** Writes or replaces {@code target}. */
  public static void write(Path target, Content content) throws IOException {
    write(target, content, false);
  }

  /** The same, the content on the disk before it takes the target's name. */
  public static void writeThrough(Path target, Content content) throws IOException {
    write(target, content, true);
  }

  private static void write(Path target, Content content, boolean through) throws IOException {
    Path real = Files.isSymbolicLink(target) ? target.toRealPath() : target.toAbsolutePath();
    Path beside = newFileBeside(real);
    try {
      try (OutputStream out =
          new BufferedOutputStream(
              Files.newOutputStream(beside, StandardOpenOption.WRITE), 1 << 16)) {
        content.to(out);
      }
      if (through) {
        try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
          channel.force(true);
        }
      }
      try {
        Files.move(beside, real, StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(beside, real, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  private static Path newFileBeside(Path target) throws IOException {
    for (int i = 0; i < MOST_TRIES; i++) {
      Path beside = target.resolveSibling("." + target.getFileName() + "." + i + ".part");
      try {
        return Files.createFile(beside);
      } catch (FileAlreadyExistsException e) {
        // left by a run that was killed, or another run is at work: try the next name
      }
    }
    throw new FileAlreadyExistsException(
        target + ": " + MOST_TRIES + " unfinished files beside it; remove the .part files");
  }
}
