package org.amperskin.io;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.io.common.PrintFileException;

/** A print file opened, unpacked first if it is a gzip file. */
final class Opened implements AutoCloseable {
  private static final List<String> KNOWN = List.of("stl", "obj", "ply", "3mf");

  private final Path named;
  private final Gunzip unpacked;
  private final FileChannel channel;

  private Opened(Path named, Gunzip unpacked, FileChannel channel) {
    this.named = named;
    this.unpacked = unpacked;
    this.channel = channel;
  }

  static Opened of(Path path) throws IOException, PrintFileException {
    FileChannel file = FileChannel.open(path, StandardOpenOption.READ);
    try {
      if (!isGzip(Channels.newInputStream(file).readNBytes(2))) {
        return new Opened(path, null, file);
      }
    } catch (IOException | RuntimeException e) {
      file.close();
      throw e;
    }
    file.close();
    Gunzip unpacked = Gunzip.of(path);
    FileChannel inner = FileChannel.open(unpacked.file(), StandardOpenOption.READ);
    if (isGzip(Channels.newInputStream(inner).readNBytes(2))) {
      inner.close();
      unpacked.close();
      throw PrintFileException.whole("a gzip file within a gzip file; unpack it first");
    }
    return new Opened(path, unpacked, inner);
  }

  static boolean isGzip(byte[] head) {
    return head.length > 1 && (head[0] & 0xff) == 0x1f && (head[1] & 0xff) == 0x8b;
  }

  FileChannel channel() {
    return channel;
  }

  Path file() {
    return unpacked == null ? named : unpacked.file();
  }

  /** What the file is not, though its name says so. */
  List<String> notes(String extension) {
    List<String> notes = new ArrayList<>();
    String name = named.getFileName().toString();
    String low = name.toLowerCase(Locale.ROOT);
    boolean packedName = low.endsWith(".gz");
    if (unpacked != null) {
      notes.add(
          "gzip file, unpacked and read"
              + (packedName ? "" : "; its name \"" + name + "\" does not say so"));
    }
    String plain = packedName ? low.substring(0, low.length() - 3) : low;
    String says = plain.substring(plain.lastIndexOf('.') + 1);
    if (KNOWN.contains(says) && !says.equals(extension)) {
      notes.add(
          "named as "
              + says.toUpperCase(Locale.ROOT)
              + ", but its content is "
              + extension.toUpperCase(Locale.ROOT)
              + ": read as that");
    }
    return notes;
  }

  @Override
  public void close() throws IOException {
    channel.close();
    if (unpacked != null) {
      unpacked.close();
    }
  }
}
