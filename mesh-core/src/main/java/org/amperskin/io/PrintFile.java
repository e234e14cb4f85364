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
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Box;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.common.ProgressStream;
import org.amperskin.io.obj.ObjFile;
import org.amperskin.io.ply.PlyFile;
import org.amperskin.io.stl.AsciiStl;
import org.amperskin.io.stl.BinaryStl;
import org.amperskin.io.stl.StlSum;
import org.amperskin.io.threemf.ThreeMfFile;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.units.Unit;

/**
 * The file that was printed, read and welded.
 *
 * <p>Definition: the format is told by content, never by the file's name; where the two disagree, a
 * note says so. A gzip file is read as what it holds. Coordinates are in the unit the caller tells,
 * else in the file's own (3MF has one), else in millimetres.
 *
 * <p>Guaranteed: a file that is not what it claims gives one {@link PrintFileException} and no
 * mesh.
 *
 * @param format what it turned out to be
 * @param mesh the surface (mm)
 * @param storedVertices vertices or facet corners in the file, before equal ones were welded
 * @param notes what was assumed or left out
 * @param fileUnit symbol of the unit the file itself says, empty if its format has none
 */
public record PrintFile(
    Format format,
    SurfaceMesh mesh,
    long storedVertices,
    List<String> notes,
    Optional<String> fileUnit) {
  private static final int HEAD = 4096;
  private static final double MOST_SCALE = 1e9;
  private static final long MOST_TEXT = 1L << 30;

  /** The formats read. */
  public enum Format {
    /** Binary stereolithography file. */
    STL_BINARY("STL, binary", "stl"),
    /** Text stereolithography file. */
    STL_ASCII("STL, ASCII", "stl"),
    /** Wavefront object file. */
    OBJ("OBJ", "obj"),
    /** Polygon file, text or binary. */
    PLY("PLY", "ply"),
    /** 3D Manufacturing Format package. */
    THREE_MF("3MF", "3mf");

    private final String label;
    private final String extension;

    Format(String label, String extension) {
      this.label = label;
      this.extension = extension;
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
   * @param fileUnit symbol of the unit the file itself says, empty if its format has none
   */
  public record Quick(
      Format format, long triangles, double areaMm2, Box box, Optional<String> fileUnit) {}

  /**
   * Reads a file in its own unit, or in millimetres if it has none.
   *
   * @param factor by how much to scale the part
   */
  public static PrintFile read(Path path, double factor, Progress progress)
      throws IOException, PrintFileException {
    return read(path, OptionalDouble.empty(), factor, progress);
  }

  /**
   * Reads a file.
   *
   * @param unitMm millimetres for one unit of the file; empty for its own unit, or millimetres
   * @param factor by how much to scale the part
   */
  public static PrintFile read(Path path, OptionalDouble unitMm, double factor, Progress progress)
      throws IOException, PrintFileException {
    checkScale(unitMm.orElse(1));
    checkScale(factor);
    try (Opened opened = Opened.of(path)) {
      Raw raw = raw(opened, progress);
      List<String> notes = new ArrayList<>(opened.notes(raw.format().extension));
      notes.addAll(raw.notes());
      double own = raw.unit().map(PrintFile::millimetres).orElse(1.0);
      if (raw.unit().isPresent() && unitMm.isPresent() && unitMm.getAsDouble() != own) {
        notes.add(
            "the file says its unit is " + raw.unit().get() + "; read in the unit that was told");
      }
      progress.at("reading", 1);
      return new PrintFile(
          raw.format(),
          raw.mesh().build(unitMm.orElse(own) * factor),
          raw.storedVertices(),
          List.copyOf(notes),
          raw.unit());
    }
  }

  private record Raw(
      Format format,
      MeshBuilder mesh,
      long storedVertices,
      List<String> notes,
      Optional<String> unit) {
    Raw(Format format, MeshBuilder mesh, long storedVertices, List<String> notes) {
      this(format, mesh, storedVertices, notes, Optional.empty());
    }
  }

  private static Raw raw(Opened opened, Progress progress) throws IOException, PrintFileException {
    FileChannel file = opened.channel();
    byte[] head = head(file);
    Format format = format(file, head);
    switch (format) {
      case STL_BINARY -> {
        MeshBuilder mesh = BinaryStl.read(file, progress);
        long rest = file.size() - 84 - 50L * mesh.faceCount();
        List<String> notes =
            rest > 0 ? List.of(rest + " bytes after the last facet passed over") : List.of();
        return new Raw(format, mesh, 3L * mesh.faceCount(), notes);
      }
      case STL_ASCII -> {
        MeshBuilder mesh = AsciiStl.read(stream(file, head, progress));
        return new Raw(format, mesh, 3L * mesh.faceCount(), List.of());
      }
      case OBJ -> {
        ObjFile.Content c = ObjFile.read(stream(file, head, progress));
        return new Raw(format, c.mesh(), c.storedVertices(), c.notes());
      }
      case PLY -> {
        // UTF-16 takes at least a byte for each of UTF-8, so the size stays an upper bound.
        PlyFile.Content c = PlyFile.read(stream(file, head, progress), file.size());
        return new Raw(format, c.mesh(), c.storedVertices(), c.notes());
      }
      case THREE_MF -> {
        ThreeMfFile.Content c = ThreeMfFile.read(opened.file(), progress);
        return new Raw(format, c.mesh(), c.storedVertices(), c.notes(), Optional.of(c.unit()));
      }
      default -> throw new IllegalStateException("format " + format);
    }
  }

  /**
   * Reads and sums only, in the file's own unit, or in millimetres if it has none.
   *
   * @param factor by how much to scale the part
   */
  public static Quick quick(Path path, double factor, Progress progress)
      throws IOException, PrintFileException {
    return quick(path, OptionalDouble.empty(), factor, progress);
  }

  /**
   * Reads and sums only.
   *
   * @param unitMm millimetres for one unit of the file; empty for its own unit, or millimetres
   * @param factor by how much to scale the part
   */
  public static Quick quick(Path path, OptionalDouble unitMm, double factor, Progress progress)
      throws IOException, PrintFileException {
    checkScale(unitMm.orElse(1));
    checkScale(factor);
    double scale = unitMm.orElse(1) * factor;
    try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
      byte[] head = head(file);
      if (!Opened.isGzip(head) && format(file, head) == Format.STL_BINARY) {
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
        return new Quick(
            Format.STL_BINARY, sum.facets(), sum.area() * scale * scale, scaled, Optional.empty());
      }
    }
    PrintFile read = read(path, unitMm, factor, progress);
    double area = 0;
    for (int f = 0; f < read.mesh().faceCount(); f++) {
      area += read.mesh().faceAreaMm2(f);
    }
    return new Quick(
        read.format(),
        read.mesh().faceCount(),
        area,
        Box.around(read.mesh().positions()),
        read.fileUnit());
  }

  private static double millimetres(String unit) {
    return Unit.of("mm").fromSi(Unit.of(unit).toSi(1));
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
    if (head.length > 3 && head[0] == 'P' && head[1] == 'K' && head[2] == 3 && head[3] == 4) {
      return Format.THREE_MF;
    }
    if (low.startsWith("ply\n") || low.startsWith("ply\r")) {
      return Format.PLY;
    }
    boolean plain = start.chars().allMatch(PrintFile::isText);
    if (low.startsWith("solid") && plain) {
      return Format.STL_ASCII;
    }
    if (plain && (low.startsWith("#") || looksObj(start))) {
      return Format.OBJ;
    }
    if (file.size() < 84) {
      throw PrintFileException.whole(
          "neither text of an STL, OBJ or PLY file nor a binary STL: that has at least 84 bytes, found"
              + " %d",
          file.size());
    }
    BinaryStl.facets(file);
    if (BinaryStl.claimedFacets(file) * 50 < file.size() / 2) {
      throw PrintFileException.whole(
          "not recognised as STL, OBJ, PLY or 3MF: %d bytes, a binary STL with %d facets has %d",
          file.size(), BinaryStl.claimedFacets(file), 84 + 50 * BinaryStl.claimedFacets(file));
    }
    return Format.STL_BINARY;
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

  private static InputStream stream(FileChannel file, byte[] head, Progress progress)
      throws IOException, PrintFileException {
    InputStream raw = Channels.newInputStream(file.position(0));
    Charset wide = wideCharset(head);
    if (wide == null) {
      return new ProgressStream(raw, file.size(), progress);
    }
    if (file.size() > MOST_TEXT) {
      throw PrintFileException.whole(
          "UTF-16 text of %d bytes, at most %d can be read", file.size(), MOST_TEXT);
    }
    String all = new String(raw.readAllBytes(), wide);
    return new ByteArrayInputStream(all.substring(1).getBytes(StandardCharsets.UTF_8));
  }
}
