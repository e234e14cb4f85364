package org.amperskin.testmeshes;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.amperskin.mesh.SurfaceMesh;

/** Print files as bytes, written apart from the product's writers. */
public final class PrintBytes {
  private PrintBytes() {}

  /** Binary STL with that header text; all normals zero. */
  public static byte[] stlBinary(SurfaceMesh mesh, String header) {
    ByteBuffer b = ByteBuffer.allocate(84 + 50 * mesh.faceCount()).order(ByteOrder.LITTLE_ENDIAN);
    b.put(Arrays.copyOf(header.getBytes(StandardCharsets.US_ASCII), 80));
    b.putInt(mesh.faceCount());
    for (int f = 0; f < mesh.faceCount(); f++) {
      b.putFloat(0).putFloat(0).putFloat(0);
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        b.putFloat((float) mesh.x(v)).putFloat((float) mesh.y(v)).putFloat((float) mesh.z(v));
      }
      b.putShort((short) 0);
    }
    return b.array();
  }

  /** ASCII STL with that name and line end. */
  public static String stlAscii(SurfaceMesh mesh, String name, String lineEnd) {
    StringBuilder s = new StringBuilder("solid " + name + lineEnd);
    for (int f = 0; f < mesh.faceCount(); f++) {
      s.append("  facet normal 0 0 0").append(lineEnd).append("    outer loop").append(lineEnd);
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        s.append("      vertex " + mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v)).append(lineEnd);
      }
      s.append("    endloop").append(lineEnd).append("  endfacet").append(lineEnd);
    }
    return s.append("endsolid " + name + lineEnd).toString();
  }

  /** PLY as text with that line end. */
  public static String plyAscii(SurfaceMesh mesh, String lineEnd) {
    StringBuilder s = new StringBuilder(plyHead(mesh, "ascii", "double", lineEnd));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      s.append(mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v)).append(lineEnd);
    }
    for (int f = 0; f < mesh.faceCount(); f++) {
      s.append("3 " + mesh.corner(f, 0) + " " + mesh.corner(f, 1) + " " + mesh.corner(f, 2));
      s.append(lineEnd);
    }
    return s.toString();
  }

  /** Binary PLY with doubles, in that byte order. */
  public static byte[] plyBinary(SurfaceMesh mesh, boolean bigEndian) {
    String format = bigEndian ? "binary_big_endian" : "binary_little_endian";
    byte[] head = plyHead(mesh, format, "double", "\n").getBytes(StandardCharsets.US_ASCII);
    ByteBuffer b =
        ByteBuffer.allocate(head.length + 24 * mesh.vertexCount() + 13 * mesh.faceCount())
            .order(bigEndian ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    b.put(head);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      b.putDouble(mesh.x(v)).putDouble(mesh.y(v)).putDouble(mesh.z(v));
    }
    for (int f = 0; f < mesh.faceCount(); f++) {
      b.put((byte) 3);
      b.putInt(mesh.corner(f, 0)).putInt(mesh.corner(f, 1)).putInt(mesh.corner(f, 2));
    }
    return b.array();
  }

  private static String plyHead(SurfaceMesh mesh, String format, String type, String end) {
    return String.join(
            end,
            "ply",
            "format " + format + " 1.0",
            "comment made for a test",
            "element vertex " + mesh.vertexCount(),
            "property " + type + " x",
            "property " + type + " y",
            "property " + type + " z",
            "element face " + mesh.faceCount(),
            "property list uchar int vertex_indices",
            "end_header")
        + end;
  }

  /** OBJ with that line end. */
  public static String obj(SurfaceMesh mesh, String lineEnd) {
    StringBuilder s = new StringBuilder();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      s.append("v " + mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v)).append(lineEnd);
    }
    for (int f = 0; f < mesh.faceCount(); f++) {
      s.append("f");
      for (int k = 0; k < 3; k++) {
        s.append(" " + (mesh.corner(f, k) + 1));
      }
      s.append(lineEnd);
    }
    return s.toString();
  }
}
