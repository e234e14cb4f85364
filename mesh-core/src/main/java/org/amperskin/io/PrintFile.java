package org.amperskin.io;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.geom.Box;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.obj.ObjFile;
import org.amperskin.io.stl.AsciiStl;
import org.amperskin.io.stl.BinaryStl;
import org.amperskin.io.stl.StlSum;
import org.amperskin.mesh.SurfaceMesh;

/**
 * The file that was printed, read and welded.
 *
 * <p>Definition: the format is told by content, never by the file's name. Coordinates are taken as
 * {@code scale} millimetres a unit, since neither STL nor OBJ says its unit.
 *
 * <p>Guaranteed: a file that is not what it claims gives one {@link PrintFileException} and no
 * mesh.
 *
 * @param format what it turned out to be
 * @param mesh the surface (mm)
 * @param storedVertices vertices or facet corners in the file, before equal ones were welded
 * @param notes what was assumed or left out
 */
public record PrintFile(Format format, SurfaceMesh mesh, long storedVertices, List<String> notes) {
  private static final int HEAD = 4096;
  private static final long MOST_TEXT = 1L << 30;
  private static final double MOST_SCALE = 1e9;

  /** The formats read. */
  public enum Format {
    /** Binary stereolithography file. */
    STL_BINARY("STL, binary"),
    /** Text stereolithography file. */
    STL_ASCII("STL, ASCII"),
    /** Wavefront object file. */
    OBJ("OBJ");

    private final String label;

    Format(String label) {
      this.label = label;
    }

    /** The words shown to people. */
    public String label() {
      return label;
    }
  }

  /**
   * Area and box of a file, without a mesh where the format allows.
   *
   * @param format what it turned out to be
   * @param triangles number of triangles
   * @param areaMm2 their area (mm2)
   * @param box box around them (mm)
   */
  public record Quick(Format format, long triangles, double areaMm2, Box box) {}

  /**
   * Reads a file.
   *
   * @param scale millimetres for one unit of the file
   */
  public static PrintFile read(Path path, double scale, Progress progress)
      throws IOException, PrintFileException {
    checkScale(scale);
    try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
      byte[] head = head(file);
      Format format = format(file, head);
      List<String> notes = new ArrayList<>();
      MeshBuilder mesh;
      long stored;
      switch (format) {
        case STL_BINARY -> {
          mesh = BinaryStl.read(file, progress);
          stored = 3L * mesh.faceCount();
          long rest = file.size() - 84 - 50L * mesh.faceCount();
          if (rest > 0) {
            notes.add(rest + " bytes after the last facet passed over");
          }
        }
        case STL_ASCII -> {
          mesh = AsciiStl.read(stream(file, head));
          stored = 3L * mesh.faceCount();
        }
        case OBJ -> {
          ObjFile.Content content = ObjFile.read(stream(file, head));
          mesh = content.mesh();
          stored = content.storedVertices();
          notes.addAll(content.notes());
        }
        default -> throw new IllegalStateException("format " + format);
      }
      progress.at("reading", 1);
      return new PrintFile(format, mesh.build(scale), stored, List.copyOf(notes));
    }
  }

  /**
   * Reads and sums only.
   *
   * @param scale millimetres for one unit of the file
   */
  public static Quick quick(Path path, double scale, Progress progress)
      throws IOException, PrintFileException {
    checkScale(scale);
    try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
      if (format(file, head(file)) == Format.STL_BINARY) {
        StlSum sum = StlSum.of(file);
        Box b = sum.box();
        Box scaled =
            new Box(
                b.minX() * scale,
                b.minY() * scale,
                b.minZ() * scale,
                b.maxX() * scale,
                b.maxY() * scale,
                b.maxZ() * scale);
        return new Quick(Format.STL_BINARY, sum.facets(), sum.area() * scale * scale, scaled);
      }
    }
    PrintFile read = read(path, scale, progress);
    double area = 0;
    for (int f = 0; f < read.mesh().faceCount(); f++) {
      area += read.mesh().faceAreaMm2(f);
    }
    return new Quick(
        read.format(), read.mesh().faceCount(), area, Box.around(read.mesh().positions()));
  }

  private static void checkScale(double scale) {
    if (!(scale >= 1 / MOST_SCALE && scale <= MOST_SCALE)) {
      throw new IllegalArgumentException(
          "scale " + scale + " mm a unit, expected 1e-9 to " + MOST_SCALE);
    }
  }

  private static byte[] head(FileChannel file) throws IOException {
    InputStream in = Channels.newInputStream(file.position(0));
    return in.readNBytes((int) Math.min(HEAD, file.size()));
  }

  private static Format format(FileChannel file, byte[] head)
      throws IOException, PrintFileException {
    if (head.length == 0) {
      throw PrintFileException.whole("the file is empty (0 bytes)");
    }
    if (file.size() >= 84 && file.size() == 84 + 50 * BinaryStl.claimedFacets(file)) {
      return Format.STL_BINARY;
    }
    String start = text(head);
    String low = start.strip().toLowerCase(Locale.ROOT);
    refuseKnown(head, low);
    boolean plain = start.chars().allMatch(PrintFile::isText);
    if (low.startsWith("solid") && plain) {
      return Format.STL_ASCII;
    }
    if (plain && (low.startsWith("#") || looksObj(start))) {
      return Format.OBJ;
    }
    if (file.size() < 84) {
      throw PrintFileException.whole(
          "neither text of an STL or OBJ file nor a binary STL: that has at least 84 bytes, found"
              + " %d",
          file.size());
    }
    BinaryStl.facets(file);
    if (BinaryStl.claimedFacets(file) * 50 < file.size() / 2) {
      throw PrintFileException.whole(
          "not recognised as STL or OBJ: %d bytes, a binary STL with %d facets has %d",
          file.size(), BinaryStl.claimedFacets(file), 84 + 50 * BinaryStl.claimedFacets(file));
    }
    return Format.STL_BINARY;
  }

  private static void refuseKnown(byte[] head, String low) throws PrintFileException {
    String found = null;
    if (head.length > 3 && head[0] == 'P' && head[1] == 'K' && head[2] == 3) {
      found = "a ZIP archive (3MF or other)";
    } else if (head.length > 1 && (head[0] & 0xff) == 0x1f && (head[1] & 0xff) == 0x8b) {
      found = "a gzip archive; unpack it first";
    } else if (low.startsWith("ply")) {
      found = "a PLY file";
    }
    if (found != null) {
      throw PrintFileException.whole("expected STL or OBJ, found %s; this is not read yet", found);
    }
  }

  private static boolean isText(int c) {
    return c >= ' ' || c >= '\t' && c <= '\r';
  }

  private static boolean looksObj(String start) {
    return start.lines().map(String::strip).anyMatch(PrintFile::isObjLine);
  }

  private static boolean isObjLine(String line) {
    return line.startsWith("v ")
        || line.startsWith("v\t")
        || line.startsWith("f ")
        || line.startsWith("mtllib ")
        || line.startsWith("o ")
        || line.startsWith("g ");
  }

  private static Charset wideCharset(byte[] head) {
    if (head.length >= 2 && (head[0] & 0xff) == 0xfe && (head[1] & 0xff) == 0xff) {
      return StandardCharsets.UTF_16BE;
    }
    if (head.length >= 2 && (head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xfe) {
      return StandardCharsets.UTF_16LE;
    }
    return null;
  }

  private static String text(byte[] head) {
    Charset wide = wideCharset(head);
    String s = new String(head, wide == null ? StandardCharsets.UTF_8 : wide);
    return s.startsWith("\ufeff") ? s.substring(1) : s;
  }

  private static InputStream stream(FileChannel file, byte[] head)
      throws IOException, PrintFileException {
    InputStream raw = Channels.newInputStream(file.position(0));
    Charset wide = wideCharset(head);
    if (wide == null) {
      return raw;
    }
    if (file.size() > MOST_TEXT) {
      throw PrintFileException.whole(
          "UTF-16 text of %d bytes, at most %d can be read", file.size(), MOST_TEXT);
    }
    String all = new String(raw.readAllBytes(), wide);
    return new ByteArrayInputStream(all.substring(1).getBytes(StandardCharsets.UTF_8));
  }
}
