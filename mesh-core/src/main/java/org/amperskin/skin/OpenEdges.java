package org.amperskin.skin;

import java.util.stream.IntStream;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;

/** Looks for cracks: open edges that other open edges end on. */
final class OpenEdges {
  private static final int MOST = 6000;
  private static final double ON = 1e-7;

  private OpenEdges() {}

  /** True if a corner of an open edge lies inside another open edge; not looked at beyond many. */
  static boolean meetInsideOneAnother(MeshDiagnosis diagnosis) {
    SurfaceMesh mesh = diagnosis.mesh();
    int[] open =
        IntStream.range(0, 3 * mesh.faceCount())
            .filter(h -> diagnosis.mate(h) == MeshDiagnosis.OPEN)
            .limit(MOST + 1L)
            .toArray();
    if (open.length > MOST) {
      return false;
    }
    for (int h : open) {
      int a = mesh.corners()[h];
      int b = mesh.corner(h / 3, (h % 3 + 1) % 3);
      for (int g : open) {
        int v = mesh.corners()[g];
        if (v != a && v != b && inside(mesh, a, b, v)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean inside(SurfaceMesh mesh, int a, int b, int v) {
    double ex = mesh.x(b) - mesh.x(a);
    double ey = mesh.y(b) - mesh.y(a);
    double ez = mesh.z(b) - mesh.z(a);
    double px = mesh.x(v) - mesh.x(a);
    double py = mesh.y(v) - mesh.y(a);
    double pz = mesh.z(v) - mesh.z(a);
    double l2 = ex * ex + ey * ey + ez * ez;
    double t = (px * ex + py * ey + pz * ez) / l2;
    if (!(t > ON && t < 1 - ON)) {
      return false;
    }
    double dx = px - t * ex;
    double dy = py - t * ey;
    double dz = pz - t * ez;
    return dx * dx + dy * dy + dz * dz < ON * ON * l2;
  }
}
