package org.amperskin.job;

import java.util.Arrays;
import java.util.List;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.units.NearestWord;

/** Takes some of a file's parts: groups by name, bodies by number. */
final class PartPick {
  private PartPick() {}

  /**
   * The faces of the parts named, as they were before their cracks were stitched.
   *
   * @param mesh the mesh that was diagnosed
   * @param names names of groups, or numbers of bodies from 1
   * @throws IllegalArgumentException naming the nearest part, or all of them
   */
  static SurfaceMesh of(SurfaceMesh mesh, MeshDiagnosis diagnosis, List<String> names) {
    boolean[] taken = new boolean[mesh.faceCount()];
    for (String name : names) {
      int group = mesh.groupNames().indexOf(name);
      int body = group >= 0 ? -1 : body(name, diagnosis);
      // A face given keeps its number; its further pieces belong to the same body.
      for (int f = 0; f < taken.length; f++) {
        taken[f] |= group >= 0 ? mesh.group(f) == group : diagnosis.bodyOf(f) == body;
      }
    }
    int[] corners = new int[mesh.corners().length];
    int[] groups = new int[taken.length];
    int n = 0;
    for (int f = 0; f < taken.length; f++) {
      if (taken[f]) {
        System.arraycopy(mesh.corners(), 3 * f, corners, 3 * n, 3);
        groups[n++] = mesh.group(f);
      }
    }
    return compact(mesh, Arrays.copyOf(corners, 3 * n), Arrays.copyOf(groups, n));
  }

  /** Leaves out vertices that no face uses, so that the box is that of the parts. */
  private static SurfaceMesh compact(SurfaceMesh mesh, int[] corners, int[] groups) {
    int[] number = new int[mesh.vertexCount()];
    Arrays.fill(number, -1);
    double[] positions = new double[3 * mesh.vertexCount()];
    int count = 0;
    for (int i = 0; i < corners.length; i++) {
      int v = corners[i];
      if (number[v] < 0) {
        System.arraycopy(mesh.positions(), 3 * v, positions, 3 * count, 3);
        number[v] = count++;
      }
      corners[i] = number[v];
    }
    double[] kept = Arrays.copyOf(positions, 3 * count);
    return mesh.groupNames().isEmpty()
        ? SurfaceMesh.of(kept, corners)
        : SurfaceMesh.of(kept, corners, groups, mesh.groupNames());
  }

  private static int body(String name, MeshDiagnosis diagnosis) {
    int bodies = diagnosis.bodies().size();
    if (name.matches("\\d{1,9}")) {
      int number = Integer.parseInt(name);
      if (number >= 1 && number <= bodies) {
        return number - 1;
      }
    }
    List<String> groups = diagnosis.mesh().groupNames();
    String hint =
        NearestWord.of(name, groups)
            .map(near -> ", did you mean '" + near + "'?")
            .orElse(groups.isEmpty() ? "; it has no groups" : "; its groups are " + groups);
    throw new IllegalArgumentException(
        "the print file has no part '" + name + "'" + hint + "; its bodies are 1 to " + bodies);
  }
}
