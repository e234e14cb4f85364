package org.amperskin.io.common;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Collects the faces of a file into a welded {@link SurfaceMesh}.
 *
 * <p>Guaranteed: faces keep the file's order; groups without a face are left out. Not thread safe.
 *
 * <p>Cost: 12 bytes a face (16 with groups) and what {@link VertexWeld} takes.
 */
public final class MeshBuilder {
  /** Most faces a mesh can have: three corners each in one array. */
  public static final int MAX_FACES = (Integer.MAX_VALUE - 16) / 3;

  /**
   * Largest coordinate that is taken for one (in the file's unit): a thousand kilometres in
   * micrometres. Beyond it squares and cubes would overflow in the end, and nothing is printed.
   */
  public static final double MAX_COORDINATE = 1e12;

  private final VertexWeld weld;
  private int[] corners;
  private int[] groups;
  private int faces;
  private final Map<String, Integer> groupIndex = new LinkedHashMap<>();
  private int group;

  /**
   * An empty mesh.
   *
   * @param expectedFaces number of faces to make room for
   */
  public MeshBuilder(int expectedFaces) {
    weld = new VertexWeld(expectedFaces / 2 + 16);
    corners = new int[3 * Math.max(16, expectedFaces)];
  }

  /** Faces added from now on belong to this group. */
  public void group(String name) {
    group = indexOf(name);
    if (groups == null && !name.isEmpty()) {
      groups = new int[corners.length / 3];
      Arrays.fill(groups, 0, faces, faces == 0 ? 0 : indexOf(""));
    }
  }

  private int indexOf(String name) {
    return groupIndex.computeIfAbsent(name, n -> groupIndex.size());
  }

  /** Index of a point, the same for equal points. */
  public int vertex(double x, double y, double z) {
    return weld.add(x, y, z);
  }

  /** Adds a face on three vertices. */
  public void face(int a, int b, int c) {
    reserve(1);
    corners[3 * faces] = a;
    corners[3 * faces + 1] = b;
    corners[3 * faces + 2] = c;
    end(1);
  }

  /**
   * Adds faces by their corner points.
   *
   * @param xyz {@code xyz[9*i+3*k+axis]} of face i, corner k
   * @param count number of faces
   */
  public void faces(double[] xyz, int count) {
    reserve(count);
    weld.addAll(xyz, 3 * count, corners, 3 * faces);
    end(count);
  }

  private void end(int count) {
    if (groups != null) {
      Arrays.fill(groups, faces, faces + count, group);
    }
    faces += count;
  }

  private void reserve(int more) {
    if (faces + more > MAX_FACES) {
      throw new IllegalArgumentException("more than " + MAX_FACES + " faces");
    }
    if (3L * (faces + more) > corners.length) {
      long wanted = Math.min(3L * MAX_FACES, Math.max(3L * (faces + more), 2L * corners.length));
      corners = Arrays.copyOf(corners, (int) wanted);
      if (groups != null) {
        groups = Arrays.copyOf(groups, corners.length / 3);
      }
    }
  }

  /** Number of faces so far. */
  public int faceCount() {
    return faces;
  }

  /** Number of distinct vertices so far. */
  public int vertexCount() {
    return weld.count();
  }

  /** The mesh, in millimetres times {@code scale}. */
  public SurfaceMesh build(double scale) {
    double[] positions = weld.positions();
    if (scale != 1) {
      for (int i = 0; i < positions.length; i++) {
        positions[i] *= scale;
      }
    }
    int[] kept = corners.length == 3 * faces ? corners : Arrays.copyOf(corners, 3 * faces);
    if (groups == null) {
      return SurfaceMesh.of(positions, kept);
    }
    return withUsedGroups(positions, kept);
  }

  private SurfaceMesh withUsedGroups(double[] positions, int[] kept) {
    List<String> names = new ArrayList<>(groupIndex.keySet());
    int[] renumbered = new int[names.size()];
    Arrays.fill(renumbered, -1);
    List<String> used = new ArrayList<>();
    int[] of = new int[faces];
    for (int f = 0; f < faces; f++) {
      int g = groups[f];
      if (renumbered[g] < 0) {
        renumbered[g] = used.size();
        used.add(names.get(g));
      }
      of[f] = renumbered[g];
    }
    return SurfaceMesh.of(positions, kept, of, used);
  }
}
