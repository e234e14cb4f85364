package org.amperskin.io.ply;

import java.util.Locale;
import java.util.Optional;

/** The number types of a PLY file, each under its old and its new name. */
enum PlyType {
  INT8(1, "char", "int8"),
  UINT8(1, "uchar", "uint8"),
  INT16(2, "short", "int16"),
  UINT16(2, "ushort", "uint16"),
  INT32(4, "int", "int32"),
  UINT32(4, "uint", "uint32"),
  FLOAT32(4, "float", "float32"),
  FLOAT64(8, "double", "float64");

  static final String NAMES = "char, uchar, short, ushort, int, uint, float, double";

  final int bytes;
  private final String oldName;
  private final String newName;

  PlyType(int bytes, String oldName, String newName) {
    this.bytes = bytes;
    this.oldName = oldName;
    this.newName = newName;
  }

  boolean whole() {
    return this != FLOAT32 && this != FLOAT64;
  }

  static Optional<PlyType> named(String word) {
    String low = word.toLowerCase(Locale.ROOT);
    for (PlyType t : values()) {
      if (t.oldName.equals(low) || t.newName.equals(low)) {
        return Optional.of(t);
      }
    }
    return Optional.empty();
  }
}
