package org.amperskin.demo;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Thickens a {@link MidSurface} into a closed shell with half-round edges.
 *
 * <p>Definition: the set of points within half the thickness of the middle surface, its outside and
 * inside following the normals and every free edge closed by a half circle. So its area and volume
 * follow from the middle surface alone: with r half the thickness, A the area, L the length of all
 * edges and chi = 1 - holes, area = 2 A + pi r L + 4 pi r^2 chi and volume = 2 r A + pi r^2 L / 2 +
 * 4/3 pi r^3 chi (H. Weyl, "On the Volume of Tubes", American Journal of Mathematics 61, 1939, with
 * the half tubes of the edges added).
 *
 * <p>Guaranteed: closed and outward oriented by construction, as long as every radius of curvature
 * exceeds half the thickness. Coordinates are whole micrometres.
 */
final class Shell {
  private final List<double[]> vertices = new ArrayList<>();
  private final List<int[]> faces = new ArrayList<>();
  private final List<String> names = new ArrayList<>();
  private final List<Integer> groups = new ArrayList<>();

  private final int edgeSteps;

  private Shell(int edgeSteps) {
    this.edgeSteps = edgeSteps;
  }

  /**
   * Makes the shell.
   *
   * @param surface the middle surface
   * @param patch its net
   * @param thicknessMm the thickness (mm)
   * @param edgeSteps number of facets round an edge's half circle
   * @param edgeTags group of each edge loop, in the order of {@link Patch#loops()}
   */
  static SurfaceMesh of(
      MidSurface surface, Patch patch, double thicknessMm, int edgeSteps, List<String> edgeTags) {
    return new Shell(edgeSteps).build(surface, patch, thicknessMm / 2, edgeTags);
  }

  private SurfaceMesh build(MidSurface surface, Patch patch, double halfMm, List<String> edgeTags) {
    int n = patch.pointCount();
    double[][] middle = new double[n][];
    double[][] normal = new double[n][];
    int[] outer = new int[n];
    int[] inner = new int[n];
    for (int[] cell : patch.cells()) {
      for (int p : cell) {
        if (middle[p] == null) {
          double[] uv = patch.pointAt(p);
          middle[p] = surface.at(uv[0], uv[1]);
          normal[p] = surface.normal(uv[0], uv[1]);
          outer[p] = vertex(MidSurface.step(middle[p], halfMm, normal[p], 0, normal[p]));
          inner[p] = vertex(MidSurface.step(middle[p], -halfMm, normal[p], 0, normal[p]));
        }
      }
    }
    for (int c = 0; c < patch.cells().size(); c++) {
      int[] cell = patch.cells().get(c);
      String tag = patch.tag(c);
      int[] order = shorterDiagonal(cell, middle);
      for (int k = 0; k < 6; k += 3) {
        int a = order[k];
        int b = order[k + 1];
        int d = order[k + 2];
        face(tag.isEmpty() ? "outside" : tag, outer[a], outer[b], outer[d]);
        face(tag.isEmpty() ? "inside" : tag, inner[a], inner[d], inner[b]);
      }
    }
    List<int[]> loops = patch.loops();
    if (loops.size() != edgeTags.size()) {
      throw new IllegalArgumentException(edgeTags.size() + " tags for " + loops.size() + " edges");
    }
    for (int l = 0; l < loops.size(); l++) {
      closeEdge(loops.get(l), middle, normal, outer, inner, halfMm, edgeTags.get(l));
    }
    return mesh();
  }

  private static int[] shorterDiagonal(int[] cell, double[][] middle) {
    double ac = MidSurface.length(MidSurface.step(middle[cell[0]], -1, middle[cell[2]], 0, ZERO));
    double bd = MidSurface.length(MidSurface.step(middle[cell[1]], -1, middle[cell[3]], 0, ZERO));
    return ac <= bd
        ? new int[] {cell[0], cell[1], cell[2], cell[0], cell[2], cell[3]}
        : new int[] {cell[0], cell[1], cell[3], cell[1], cell[2], cell[3]};
  }

  private static final double[] ZERO = new double[3];

  private void closeEdge(
      int[] loop,
      double[][] middle,
      double[][] normal,
      int[] outer,
      int[] inner,
      double halfMm,
      String tag) {
    int n = loop.length;
    int[][] rings = new int[n][edgeSteps + 1];
    for (int i = 0; i < n; i++) {
      int p = loop[i];
      double[] along =
          MidSurface.step(middle[loop[(i + 1) % n]], -1, middle[loop[(i + n - 1) % n]], 0, ZERO);
      double[] away = MidSurface.unit(MidSurface.cross(along, normal[p]));
      rings[i][0] = outer[p];
      rings[i][edgeSteps] = inner[p];
      for (int k = 1; k < edgeSteps; k++) {
        double turn = StrictMath.PI * k / edgeSteps;
        rings[i][k] =
            vertex(
                MidSurface.step(
                    middle[p],
                    halfMm * StrictMath.cos(turn),
                    normal[p],
                    halfMm * StrictMath.sin(turn),
                    away));
      }
    }
    for (int i = 0; i < n; i++) {
      int[] p = rings[i];
      int[] q = rings[(i + 1) % n];
      for (int k = 0; k < edgeSteps; k++) {
        face(tag, q[k], p[k], p[k + 1]);
        face(tag, q[k], p[k + 1], q[k + 1]);
      }
    }
  }

  private int vertex(double[] p) {
    vertices.add(
        new double[] {
          StrictMath.rint(p[0] * 1000) / 1000,
          StrictMath.rint(p[1] * 1000) / 1000,
          StrictMath.rint(p[2] * 1000) / 1000
        });
    return vertices.size() - 1;
  }

  private void face(String tag, int a, int b, int c) {
    if (!names.contains(tag)) {
      names.add(tag);
    }
    faces.add(new int[] {a, b, c});
    groups.add(names.indexOf(tag));
  }

  private SurfaceMesh mesh() {
    double[] positions = new double[3 * vertices.size()];
    for (int v = 0; v < vertices.size(); v++) {
      System.arraycopy(vertices.get(v), 0, positions, 3 * v, 3);
    }
    // Faces group by group, so that a file that names groups names each once.
    int[] corners = new int[3 * faces.size()];
    int[] ofGroup = new int[faces.size()];
    int at = 0;
    for (int g = 0; g < names.size(); g++) {
      for (int f = 0; f < faces.size(); f++) {
        if (groups.get(f) == g) {
          System.arraycopy(faces.get(f), 0, corners, 3 * at, 3);
          ofGroup[at++] = g;
        }
      }
    }
    return SurfaceMesh.of(positions, corners, ofGroup, names);
  }
}
