package org.amperskin.io.threemf;

import java.util.List;

/** An object of a model part: a mesh, or components, or something that is not read. */
final class ModelObject {
  /** What an object is for; the standard's words in lower case. */
  enum Type {
    MODEL,
    SOLIDSUPPORT,
    SUPPORT,
    SURFACE,
    OTHER;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  final ModelPart part;
  final int id;
  final long line;
  Type type = Type.MODEL;
  String name = "";

  /** {@code xyz[3*v+k]}, in the part's unit. */
  double[] xyz = new double[0];

  /** {@code corners[3*t+k]}, vertices of triangle t. */
  int[] corners = new int[0];

  /** {@code properties[2*t]} the group, {@code [2*t+1]} the index; group 0 is none; may be null. */
  int[] properties;

  int propertyGroup;
  int propertyIndex;
  List<Reference> components = List.of();
  boolean hasMesh;
  boolean lowResolution;
  boolean sliced;
  long beams;

  /** Name space and element of a shape that is not read, or null. */
  String foreignShape;

  ModelObject(ModelPart part, int id, long line) {
    this.part = part;
    this.id = id;
    this.line = line;
  }

  int triangles() {
    return corners.length / 3;
  }

  /** Whether its faces belong to the finished part. */
  boolean counts() {
    return type == Type.MODEL || type == Type.SURFACE;
  }

  /** "object 7" with its name, if it has one. */
  String title() {
    return "object " + id + (name.isEmpty() ? "" : " \"" + name + "\"");
  }
}
