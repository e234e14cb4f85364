package org.amperskin.io.threemf;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.amperskin.io.common.PrintFileException;

/** Reads the mesh of an object: vertices, triangles and what properties they carry. */
final class MeshReader {
  private static final int MOST = (Integer.MAX_VALUE - 16) / 3;

  private static final int[] PLACES =
      Stream.of("v1", "v2", "v3", "pid", "p1", "p2", "p3").mapToInt(PlainTags::code).toArray();

  private final XmlCursor x;
  private final ModelObject o;
  private double[] xyz = new double[3 * 64];
  private int vertices;
  private int[] corners = new int[3 * 64];
  private int triangles;
  private int[] properties;

  /** Values of a plain triangle in the order of {@link #PLACES}, -1 where it has none. */
  private final int[] plainValues = new int[PLACES.length];

  MeshReader(XmlCursor x, ModelObject o) {
    this.x = x;
    this.o = o;
  }

  void mesh() throws PrintFileException {
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.isCore("vertices")) {
        vertices();
      } else if (x.isCore("triangles")) {
        triangles();
      } else if (x.is(Namespaces.BEAMS, "beamlattice")) {
        beams();
      } else {
        x.leave();
      }
    }
    keepUsedVertices();
    o.corners = Arrays.copyOf(corners, 3 * triangles);
    o.properties = properties == null ? null : Arrays.copyOf(properties, 2 * triangles);
  }

  /** Vertices that no triangle uses must cost nothing for each copy of the object. */
  private void keepUsedVertices() {
    int[] place = new int[vertices];
    Arrays.fill(place, -1);
    int used = 0;
    for (int i = 0; i < 3 * triangles; i++) {
      if (place[corners[i]] < 0) {
        place[corners[i]] = used++;
      }
    }
    o.xyz = new double[3 * used];
    for (int v = 0; v < vertices; v++) {
      if (place[v] >= 0) {
        System.arraycopy(xyz, 3 * v, o.xyz, 3 * place[v], 3);
      }
    }
    for (int i = 0; i < 3 * triangles; i++) {
      corners[i] = place[corners[i]];
    }
  }

  private void vertices() throws PrintFileException {
    int depth = x.depth();
    Optional<PlainTags> plain = x.plainTags("vertex");
    if (plain.isPresent()) {
      PlainTags tags = plain.get();
      while (x.next(tags) && plainVertex(tags)) {
        tags.take();
      }
      x.behind(tags);
    }
    while (x.child(depth)) {
      if (x.isCore("vertex")) {
        vertex();
      }
      x.leave();
    }
  }

  /** Adds a vertex if nothing is wrong with it; what is wrong is told by {@link #vertex}. */
  private boolean plainVertex(PlainTags tags) {
    if (vertices == MOST || tags.count() != 3) {
      return false;
    }
    roomForVertex();
    int seen = 0;
    for (int i = 0; i < 3; i++) {
      int k = tags.name(i) - 'x';
      double v = k >= 0 && k < 3 ? tags.real(i) : Double.NaN;
      if (!Double.isFinite(v)) {
        return false;
      }
      xyz[3 * vertices + k] = v;
      seen |= 1 << k;
    }
    vertices += seen == 7 ? 1 : 0;
    return seen == 7;
  }

  private void roomForVertex() {
    if (3 * vertices == xyz.length) {
      xyz = Arrays.copyOf(xyz, (int) Math.min(2L * xyz.length, 3L * MOST));
    }
  }

  private void vertex() throws PrintFileException {
    if (vertices == MOST) {
      throw x.fault("object %d: more than %d vertices", o.id, MOST);
    }
    roomForVertex();
    int seen = 0;
    for (int i = 0; i < x.attributes(); i++) {
      String name = x.attributeName(i);
      int k = name.length() == 1 ? name.charAt(0) - 'x' : -1;
      if (k >= 0 && k < 3) {
        double v = Numbers.real(x.attributeValue(i));
        if (!Double.isFinite(v)) {
          throw x.fault(
              "object %d: vertex %d: %s is \"%s\", not a finite number",
              o.id, vertices, name, ModelReader.cut(x.attributeValue(i)));
        }
        xyz[3 * vertices + k] = v;
        seen |= 1 << k;
      }
    }
    for (int k = 0; k < 3; k++) {
      if ((seen & 1 << k) == 0) {
        throw x.fault("object %d: vertex %d has no %s", o.id, vertices, "xyz".charAt(k));
      }
    }
    vertices++;
  }

  private void triangles() throws PrintFileException {
    int depth = x.depth();
    Optional<PlainTags> plain = x.plainTags("triangle");
    if (plain.isPresent()) {
      PlainTags tags = plain.get();
      while (x.next(tags) && plainTriangle(tags)) {
        tags.take();
      }
      x.behind(tags);
    }
    while (x.child(depth)) {
      if (x.isCore("triangle")) {
        triangle();
      }
      x.leave();
    }
  }

  /** Adds a triangle if nothing is wrong with it; what is wrong is told by {@link #triangle}. */
  private boolean plainTriangle(PlainTags tags) {
    if (triangles == MOST) {
      return false;
    }
    roomForTriangle();
    Arrays.fill(plainValues, -1);
    for (int i = 0; i < tags.count(); i++) {
      int place = place(tags.name(i));
      int value = tags.index(i);
      if (place < 0 || plainValues[place] >= 0 || value < 0 || place < 3 && value >= vertices) {
        return false;
      }
      plainValues[place] = value;
    }
    for (int k = 0; k < 3; k++) {
      if (plainValues[k] < 0) {
        return false;
      }
      corners[3 * triangles + k] = plainValues[k];
    }
    properties(plainValues[3], plainValues[4], plainValues[5], plainValues[6]);
    triangles++;
    return true;
  }

  private static int place(int name) {
    for (int i = 0; i < PLACES.length; i++) {
      if (PLACES[i] == name) {
        return i;
      }
    }
    return -1;
  }

  private void roomForTriangle() {
    if (3 * triangles == corners.length) {
      corners = Arrays.copyOf(corners, (int) Math.min(2L * corners.length, 3L * MOST));
    }
  }

  private void triangle() throws PrintFileException {
    if (triangles == MOST) {
      throw x.fault("object %d: more than %d triangles", o.id, MOST);
    }
    roomForTriangle();
    int seen = 0;
    int pid = -1;
    int p1 = -1;
    int p2 = -1;
    int p3 = -1;
    for (int i = 0; i < x.attributes(); i++) {
      switch (x.attributeName(i)) {
        case "v1" -> seen |= corner(0, i);
        case "v2" -> seen |= corner(1, i);
        case "v3" -> seen |= corner(2, i);
        case "pid" -> pid = property(i);
        case "p1" -> p1 = property(i);
        case "p2" -> p2 = property(i);
        case "p3" -> p3 = property(i);
        default -> {}
      }
    }
    if (seen != 7) {
      throw x.fault("object %d: triangle %d needs v1, v2 and v3", o.id, triangles);
    }
    properties(pid, p1, p2, p3);
    triangles++;
  }

  /** The group of a triangle is its own or the object's; without p1 the object's counts whole. */
  private void properties(int pid, int p1, int p2, int p3) {
    int other = p2 >= 0 && p2 != p1 ? p2 : p3;
    if (properties == null && pid < 0 && p1 < 0) {
      return;
    }
    if (properties == null) {
      properties = new int[2 * (corners.length / 3)];
      for (int t = 0; t < triangles; t++) {
        properties[2 * t] = o.propertyGroup;
        properties[2 * t + 1] = o.propertyIndex;
      }
    }
    if (2 * triangles >= properties.length) {
      properties = Arrays.copyOf(properties, 2 * (corners.length / 3));
    }
    properties[2 * triangles] = p1 >= 0 && pid >= 0 ? pid : o.propertyGroup;
    properties[2 * triangles + 1] = p1 >= 0 ? p1 : o.propertyIndex;
    o.part.gradients |= other >= 0 && other != p1;
  }

  private int corner(int k, int attribute) throws PrintFileException {
    int v = Numbers.index(x.attributeValue(attribute));
    if (v < 0 || v >= vertices) {
      throw x.fault(
          "object %d: triangle %d: %s is \"%s\", of %d vertices (0 to %d)",
          o.id,
          triangles,
          x.attributeName(attribute),
          ModelReader.cut(x.attributeValue(attribute)),
          vertices,
          vertices - 1);
    }
    corners[3 * triangles + k] = v;
    return 1 << k;
  }

  private int property(int attribute) throws PrintFileException {
    int p = Numbers.index(x.attributeValue(attribute));
    if (p < 0) {
      throw x.fault(
          "object %d: triangle %d: %s is \"%s\", not a whole number",
          o.id,
          triangles,
          x.attributeName(attribute),
          ModelReader.cut(x.attributeValue(attribute)));
    }
    return p;
  }

  private void beams() throws PrintFileException {
    int depth = x.depth();
    while (x.child(depth)) {
      int inner = x.depth();
      if (!x.is(Namespaces.BEAMS, "beams")) {
        x.leave();
        continue;
      }
      while (x.child(inner)) {
        o.beams++;
        x.leave();
      }
    }
    o.beams = Math.max(1, o.beams);
  }
}
