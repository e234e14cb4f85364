package org.amperskin.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.geom.Polygons;

/**
 * Closes holes where faces are missing, as a slicer would.
 *
 * <p>Definition: a hole is a loop of edges with one face, of a body that encloses a volume once its
 * loops are closed; it is capped by triangles on the loop's own vertices. A body that encloses no
 * volume is a sheet and stays open.
 *
 * <p>Guaranteed: caps continue the sense of the faces around them. Not guaranteed: that the cap is
 * what the part's maker meant; its area is told as assumed.
 *
 * @param mesh the mesh with its caps behind the other faces, or the mesh itself if it has none
 * @param firstCap index of the first cap face
 * @param holes what was closed
 * @param sheets bodies of the original mesh that are sheets
 */
public record HoleCaps(SurfaceMesh mesh, int firstCap, List<Hole> holes, List<Integer> sheets) {
  /** Volume over that of a ball of the same area, below which a body is a sheet. */
  private static final double SHEET = 1e-4;

  /**
   * One closed hole.
   *
   * @param body body it was in
   * @param edges edges of its loop
   * @param areaMm2 area of the cap (mm2)
   * @param vertex a vertex of the loop
   */
  public record Hole(int body, int edges, double areaMm2, int vertex) {}

  /**
   * Closes what can be closed.
   *
   * @param nothing true to take every open body as a sheet
   */
  public static HoleCaps of(MeshDiagnosis diagnosis, boolean nothing) {
    SurfaceMesh mesh = diagnosis.mesh();
    int faces = mesh.faceCount();
    Map<Integer, List<int[]>> loops = loops(diagnosis);
    if (loops.isEmpty()) {
      return new HoleCaps(mesh, faces, List.of(), List.of());
    }
    double[] volume = new double[diagnosis.bodies().size()];
    for (int f = 0; f < faces; f++) {
      if (diagnosis.bodyOf(f) >= 0) {
        volume[diagnosis.bodyOf(f)] += signedVolume(mesh, mesh.corners(), 3 * f);
      }
    }
    List<Integer> sheets = new ArrayList<>();
    List<Hole> holes = new ArrayList<>();
    int[] corners = mesh.corners();
    int used = corners.length;
    for (Map.Entry<Integer, List<int[]>> entry : loops.entrySet()) {
      int body = entry.getKey();
      List<int[]> caps = entry.getValue().stream().map(l -> cap(mesh, l)).toList();
      double closed = volume[body];
      for (int[] cap : caps) {
        for (int i = 0; i < cap.length; i += 3) {
          closed += signedVolume(mesh, cap, i);
        }
      }
      double area = diagnosis.bodies().get(body).areaMm2();
      double ball = Math.pow(area, 1.5) / (6 * Math.sqrt(Math.PI));
      if (nothing || Math.abs(closed) < SHEET * ball) {
        sheets.add(body);
        continue;
      }
      for (int i = 0; i < caps.size(); i++) {
        int[] cap = caps.get(i);
        int[] loop = entry.getValue().get(i);
        corners = Arrays.copyOf(corners, used + cap.length);
        System.arraycopy(cap, 0, corners, used, cap.length);
        used += cap.length;
        holes.add(new Hole(body, loop.length, area(mesh, cap), loop[0]));
      }
    }
    if (holes.isEmpty()) {
      return new HoleCaps(mesh, faces, List.of(), List.copyOf(sheets));
    }
    SurfaceMesh capped = withGroups(mesh, corners);
    return new HoleCaps(capped, faces, List.copyOf(holes), List.copyOf(sheets));
  }

  private static SurfaceMesh withGroups(SurfaceMesh mesh, int[] corners) {
    if (mesh.groupNames().isEmpty()) {
      return SurfaceMesh.of(mesh.positions(), corners);
    }
    List<String> names = new ArrayList<>(mesh.groupNames());
    names.add("assumed");
    int[] groups = new int[corners.length / 3];
    for (int f = 0; f < groups.length; f++) {
      groups[f] = f < mesh.faceCount() ? mesh.group(f) : names.size() - 1;
    }
    return SurfaceMesh.of(mesh.positions(), corners, groups, names);
  }

  /** Total area of the caps (mm2). */
  public double areaMm2() {
    return holes.stream().mapToDouble(Hole::areaMm2).sum();
  }

  /** Loops of vertices around holes, by body, walked against the faces' sense. */
  private static Map<Integer, List<int[]>> loops(MeshDiagnosis d) {
    SurfaceMesh mesh = d.mesh();
    Map<Integer, List<Integer>> from = new HashMap<>();
    List<Integer> open = new ArrayList<>();
    for (int h = 0; h < 3 * mesh.faceCount(); h++) {
      if (d.mate(h) == MeshDiagnosis.OPEN) {
        // The loop runs from the edge's end to its start.
        from.computeIfAbsent(end(mesh, h), k -> new ArrayList<>()).add(h);
        open.add(h);
      }
    }
    Map<Integer, List<int[]>> loops = new java.util.TreeMap<>();
    boolean[] used = new boolean[3 * mesh.faceCount()];
    for (int start : open) {
      if (used[start]) {
        continue;
      }
      List<Integer> walk = new ArrayList<>();
      int h = start;
      boolean closed = false;
      while (h >= 0 && !used[h]) {
        used[h] = true;
        walk.add(end(mesh, h));
        int to = mesh.corners()[h];
        if (to == end(mesh, start)) {
          closed = true;
          break;
        }
        h = -1;
        for (int next : from.getOrDefault(to, List.of())) {
          if (!used[next] && d.bodyOf(next / 3) == d.bodyOf(start / 3)) {
            h = next;
            break;
          }
        }
      }
      if (closed && walk.size() >= 3) {
        int[] loop = walk.stream().mapToInt(Integer::intValue).toArray();
        loops.computeIfAbsent(d.bodyOf(start / 3), k -> new ArrayList<>()).add(loop);
      }
    }
    return loops;
  }

  private static int end(SurfaceMesh mesh, int h) {
    return mesh.corner(h / 3, (h % 3 + 1) % 3);
  }

  private static int[] cap(SurfaceMesh mesh, int[] loop) {
    int[] triangles =
        loop.length == 3
            ? new int[] {0, 1, 2}
            : Polygons.triangulate(mesh.positions(), loop, loop.length);
    int[] cap = new int[triangles.length];
    for (int i = 0; i < cap.length; i++) {
      cap[i] = loop[triangles[i]];
    }
    return cap;
  }

  private static double area(SurfaceMesh mesh, int[] cap) {
    SurfaceMesh only = SurfaceMesh.of(mesh.positions(), cap);
    double area = 0;
    for (int f = 0; f < only.faceCount(); f++) {
      area += only.faceAreaMm2(f);
    }
    return area;
  }

  private static double signedVolume(SurfaceMesh mesh, int[] corners, int at) {
    double[] p = mesh.positions();
    int o = 3 * mesh.corners()[0];
    int a = 3 * corners[at];
    int b = 3 * corners[at + 1];
    int c = 3 * corners[at + 2];
    double ax = p[a] - p[o];
    double ay = p[a + 1] - p[o + 1];
    double az = p[a + 2] - p[o + 2];
    double bx = p[b] - p[o];
    double by = p[b + 1] - p[o + 1];
    double bz = p[b + 2] - p[o + 2];
    double cx = p[c] - p[o];
    double cy = p[c + 1] - p[o + 1];
    double cz = p[c + 2] - p[o + 2];
    return (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }
}
