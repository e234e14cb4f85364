package org.amperskin.io.ply;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.geom.Polygons;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;

/**
 * Reads PLY: vertices, polygons and triangle strips, as text or binary in either byte order.
 *
 * <p>Definition: the element {@code vertex} has the numbers {@code x y z} of any type and in any
 * place; the elements {@code face} and {@code tristrips} have a list {@code vertex_indices} or
 * {@code vertex_index}, indices from 0, where -1 in a strip begins a new one. Elements come in any
 * order. Polygons are triangulated without crossing, also when concave.
 *
 * <p>Guaranteed: everything else is passed over by its size and, if it is a whole element, told; a
 * claim that the file is too small for is refused before memory is taken; a fault names the line of
 * the text or the byte of the binary body.
 *
 * <p>Not guaranteed: colours, normals and materials, which are not read. PLY says no unit.
 *
 * <p>Source: G. Turk, The PLY Polygon File Format, Stanford University 1994 (from memory). Cost:
 * about 0.1 us a face binary, 0.4 us as text; 24 bytes a vertex above what the mesh takes, and four
 * bytes a corner if faces come before the vertices.
 */
public final class PlyFile {
  private static final List<String> INDEX_LISTS = List.of("vertex_indices", "vertex_index");
  private static final int MOST_VERTICES = (Integer.MAX_VALUE - 16) / 3;

  private final Values values;
  private final PlyHeader header;
  private final MeshBuilder mesh = new MeshBuilder(1024);
  private final List<String> notes = new ArrayList<>();
  private final long vertices;
  private double[] positions;
  private int[] welded;
  private int[] corner = new int[16];

  /** Polygons and strips met before the vertices: length, -length for a strip, and the indices. */
  private int[] waiting = new int[0];

  private int waitingEnd;
  private long tooShort;

  private PlyFile(ByteSource in) throws IOException, PrintFileException {
    header = PlyHeader.read(in);
    values =
        switch (header.format()) {
          case ASCII -> new AsciiValues(in, header.lines());
          case BIG_ENDIAN -> new BinaryValues(in, true);
          case LITTLE_ENDIAN -> new BinaryValues(in, false);
        };
    long count = 0;
    for (PlyHeader.Element e : header.elements()) {
      if (e.name().equals("vertex")) {
        count = e.count();
        axes(e); // a header that cannot be meant so is told before its counts are
      }
    }
    vertices = count;
  }

  /**
   * What was read.
   *
   * @param mesh the faces
   * @param storedVertices number of vertex elements
   * @param notes what was left out
   */
  public record Content(MeshBuilder mesh, long storedVertices, List<String> notes) {}

  /**
   * Reads a file.
   *
   * @param in the file from its first byte; it need not fill a whole read
   * @param bytes its size
   */
  public static Content read(InputStream in, long bytes) throws IOException, PrintFileException {
    PlyFile file = new PlyFile(new ByteSource(in, bytes));
    file.elements();
    return new Content(file.mesh, file.vertices, List.copyOf(file.notes));
  }

  private void elements() throws IOException, PrintFileException {
    notes.addAll(header.strange());
    List<String> passed = new ArrayList<>();
    long surfaces = 0;
    for (PlyHeader.Element e : header.elements()) {
      values.checkRoom(e);
      switch (e.name()) {
        case "vertex" -> vertices(e);
        case "face", "tristrips" -> {
          polygons(e);
          surfaces += e.count();
        }
        default -> {
          passOver(e);
          if (e.count() > 0) {
            passed.add(e.count() + " " + e.name());
          }
        }
      }
    }
    long rest = values.trailing();
    if (mesh.faceCount() == 0) {
      throw PrintFileException.whole(
          "%d vertices and %d faces or strips that span no triangle: nothing to measure",
          vertices, surfaces);
    }
    if (!passed.isEmpty()) {
      notes.add("passed over: " + String.join(", ", passed));
    }
    if (tooShort > 0) {
      notes.add(tooShort + " faces of fewer than 3 corners left out");
    }
    if (rest > 0) {
      notes.add(rest + " bytes after the last element passed over");
    }
  }

  private void passOver(PlyHeader.Element e) throws IOException, PrintFileException {
    if (!e.hasList()) {
      values.skipAll(e);
      return;
    }
    for (long i = 0; i < e.count(); i++) {
      values.begin(e, i);
      for (PlyHeader.Property p : e.properties()) {
        values.skip(p);
      }
      values.end();
    }
  }

  private void vertices(PlyHeader.Element e) throws IOException, PrintFileException {
    if (e.count() > MOST_VERTICES) {
      throw PrintFileException.atLine(
          e.line(), "%d vertices, at most %d can be held", e.count(), MOST_VERTICES);
    }
    List<PlyHeader.Property> properties = e.properties();
    int[] axis = axes(e);
    double[] xyz = new double[3 * (int) e.count()];
    for (int i = 0; i < e.count(); i++) {
      values.begin(e, i);
      for (int p = 0; p < axis.length; p++) {
        if (axis[p] < 0) {
          values.skip(properties.get(p));
          continue;
        }
        double v = values.number(properties.get(p).type());
        if (!(Math.abs(v) <= MeshBuilder.MAX_COORDINATE)) {
          throw values.fault(
              "%s: %s is %s, expected a finite number of at most %s",
              values.at(), properties.get(p).name(), v, MeshBuilder.MAX_COORDINATE);
        }
        xyz[3 * i + axis[p]] = v;
      }
      values.end();
    }
    positions = xyz;
    welded = new int[(int) e.count()];
    Arrays.fill(welded, -1);
    addWaiting();
  }

  /** For each property its axis, 0 to 2, or -1. */
  private static int[] axes(PlyHeader.Element e) throws PrintFileException {
    int[] axis = new int[e.properties().size()];
    int[] seen = new int[3];
    for (int p = 0; p < axis.length; p++) {
      PlyHeader.Property property = e.properties().get(p);
      axis[p] = property.list() ? -1 : List.of("x", "y", "z").indexOf(property.name());
      if (axis[p] >= 0) {
        seen[axis[p]]++;
      }
    }
    for (int k = 0; k < 3; k++) {
      if (seen[k] != 1) {
        throw PrintFileException.atLine(
            e.line(), "a vertex needs one number %s, found %d", "xyz".charAt(k), seen[k]);
      }
    }
    return axis;
  }

  private void polygons(PlyHeader.Element e) throws IOException, PrintFileException {
    boolean strip = e.name().equals("tristrips");
    PlyHeader.Property indices = null;
    for (PlyHeader.Property p : e.properties()) {
      if (p.list() && INDEX_LISTS.contains(p.name())) {
        if (indices != null) {
          throw PrintFileException.atLine(
              e.line(), "%s has both %s and %s", e.name(), indices.name(), p.name());
        }
        indices = p;
      }
    }
    if (indices == null && e.count() > 0) {
      throw PrintFileException.atLine(
          e.line(), "%s needs a list vertex_indices or vertex_index, found none", e.name());
    }
    for (long i = 0; i < e.count(); i++) {
      values.begin(e, i);
      int n = 0;
      for (PlyHeader.Property p : e.properties()) {
        if (p == indices) {
          n = corners(p, strip);
        } else {
          values.skip(p);
        }
      }
      values.end();
      if (n < 3) {
        tooShort++;
      } else if (positions == null) {
        keep(n, strip);
      } else {
        add(n, strip);
      }
    }
  }

  private int corners(PlyHeader.Property p, boolean strip) throws IOException, PrintFileException {
    int n = values.length(p);
    if (n > corner.length) {
      corner = new int[Math.max(n, 2 * Math.min(corner.length, 1 << 28))];
    }
    for (int k = 0; k < n; k++) {
      double v = values.number(p.type());
      boolean known = v >= 0 && v < vertices && v == Math.rint(v);
      if (!known && !(strip && v == -1)) {
        throw values.fault(
            "%s: vertex index %s of %d vertices (0 to %d)",
            values.at(), Values.shown(v), vertices, vertices - 1);
      }
      corner[k] = (int) v;
    }
    return n;
  }

  private void keep(int n, boolean strip) throws PrintFileException {
    if (waitingEnd + (long) n + 1 > Integer.MAX_VALUE - 16) {
      throw values.fault("%s: too many corners before the vertices", values.at());
    }
    if (waitingEnd + n + 1 > waiting.length) {
      long wanted = Math.max(waitingEnd + n + 1L, 2L * waiting.length);
      waiting = Arrays.copyOf(waiting, (int) Math.min(wanted, Integer.MAX_VALUE - 16));
    }
    waiting[waitingEnd++] = strip ? -n : n;
    System.arraycopy(corner, 0, waiting, waitingEnd, n);
    waitingEnd += n;
  }

  private void addWaiting() throws PrintFileException {
    int at = 0;
    while (at < waitingEnd) {
      int n = Math.abs(waiting[at]);
      corner = corner.length < n ? new int[n] : corner;
      System.arraycopy(waiting, at + 1, corner, 0, n);
      add(n, waiting[at] < 0);
      at += n + 1;
    }
    waiting = new int[0];
    waitingEnd = 0;
  }

  private void add(int n, boolean strip) throws PrintFileException {
    if (mesh.faceCount() > MeshBuilder.MAX_FACES - n) {
      throw values.fault(
          "%s: more than %d triangles cannot be held", values.at(), MeshBuilder.MAX_FACES);
    }
    if (strip) {
      addStrip(n);
    } else if (n == 3) {
      mesh.face(vertex(corner[0]), vertex(corner[1]), vertex(corner[2]));
    } else {
      int[] t = Polygons.triangulate(positions, corner, n);
      for (int i = 0; i < t.length; i += 3) {
        mesh.face(vertex(corner[t[i]]), vertex(corner[t[i + 1]]), vertex(corner[t[i + 2]]));
      }
    }
  }

  /** A triangle at each third index of a run; every second one is turned, flat ones only join. */
  private void addStrip(int n) {
    int run = 0;
    for (int k = 0; k < n; k++) {
      run = corner[k] < 0 ? 0 : run + 1;
      if (run < 3) {
        continue;
      }
      int a = corner[k - 2];
      int b = corner[k - 1];
      int c = corner[k];
      if (a == b || b == c || a == c) {
        continue;
      }
      if (run % 2 == 1) {
        mesh.face(vertex(a), vertex(b), vertex(c));
      } else {
        mesh.face(vertex(b), vertex(a), vertex(c));
      }
    }
  }

  private int vertex(int stored) {
    if (welded[stored] < 0) {
      int p = 3 * stored;
      welded[stored] = mesh.vertex(positions[p], positions[p + 1], positions[p + 2]);
    }
    return welded[stored];
  }
}
