package org.amperskin.testmeshes;

import java.util.HashMap;
import java.util.Map;
import org.amperskin.mesh.SurfaceMesh;

/** Plain second ways to measure a mesh, slow and simple. */
public final class Facts {
  private Facts() {}

  /** Sum of the faces' areas (mm2). */
  public static double areaMm2(SurfaceMesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += mesh.faceAreaMm2(f);
    }
    return sum;
  }

  /** Sum of the signed tetrahedra between the faces and the origin (mm3). */
  public static double volumeMm3(SurfaceMesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      int a = mesh.corner(f, 0);
      int b = mesh.corner(f, 1);
      int c = mesh.corner(f, 2);
      sum +=
          mesh.x(a) * (mesh.y(b) * mesh.z(c) - mesh.z(b) * mesh.y(c))
              + mesh.y(a) * (mesh.z(b) * mesh.x(c) - mesh.x(b) * mesh.z(c))
              + mesh.z(a) * (mesh.x(b) * mesh.y(c) - mesh.y(b) * mesh.x(c));
    }
    return sum / 6;
  }

  /** True if every side of every face has exactly one opposite twin. */
  public static boolean closed(SurfaceMesh mesh) {
    Map<Long, Integer> sides = new HashMap<>();
    for (int f = 0; f < mesh.faceCount(); f++) {
      for (int k = 0; k < 3; k++) {
        sides.merge(side(mesh.corner(f, k), mesh.corner(f, (k + 1) % 3)), 1, Integer::sum);
      }
    }
    return sides.entrySet().stream()
        .allMatch(
            e -> e.getValue() == 1 && sides.getOrDefault(Long.rotateLeft(e.getKey(), 32), 0) == 1);
  }

  private static long side(int from, int to) {
    return (long) from << 32 | to;
  }
}
