package org.amperskin.skin;

import java.util.Arrays;
import java.util.List;
import org.amperskin.mesh.SurfaceMesh;

/** Collects faces and pieces of faces into the mesh of a skin. */
final class SkinBuilder {
  private int[] corners = new int[3 * 1024];
  private int[] sources = new int[1024];
  private int faces;
  private double[] points = new double[3 * 64];
  private int pointCount;

  /** Takes a face whole. */
  void face(SurfaceMesh mesh, int f, boolean turned) {
    add(f, mesh.corner(f, 0), mesh.corner(f, turned ? 2 : 1), mesh.corner(f, turned ? 1 : 2));
  }

  /** Takes a convex piece of a face, given by barycentric weights. */
  void piece(SurfaceMesh mesh, int f, double[] weights, boolean turned) {
    int n = weights.length / 3;
    int first = pointCount;
    if (3 * (pointCount + n) > points.length) {
      points = Arrays.copyOf(points, 2 * (points.length + 3 * n));
    }
    for (int i = 0; i < n; i++) {
      for (int axis = 0; axis < 3; axis++) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
          sum += weights[3 * i + k] * mesh.positions()[3 * mesh.corner(f, k) + axis];
        }
        points[3 * pointCount + axis] = sum;
      }
      pointCount++;
    }
    for (int i = 1; i + 1 < n; i++) {
      add(f, ~first, ~(first + (turned ? i + 1 : i)), ~(first + (turned ? i : i + 1)));
    }
  }

  private void add(int source, int a, int b, int c) {
    if (faces == sources.length) {
      corners = Arrays.copyOf(corners, 6 * faces);
      sources = Arrays.copyOf(sources, 2 * faces);
    }
    corners[3 * faces] = a;
    corners[3 * faces + 1] = b;
    corners[3 * faces + 2] = c;
    sources[faces++] = source;
  }

  Skin build(
      SurfaceMesh from,
      int firstAssumed,
      double errorMm2,
      double assumedMm2,
      List<SkinPart> parts,
      List<String> doubts,
      boolean sound,
      Displacement displacement) {
    boolean same = pointCount == 0 && faces == from.faceCount() && firstAssumed == faces;
    same &= Arrays.equals(corners, 0, 3 * faces, from.corners(), 0, from.corners().length);
    int base = from.vertexCount();
    double[] positions = from.positions();
    if (pointCount > 0) {
      positions = Arrays.copyOf(positions, 3 * (base + pointCount));
      System.arraycopy(points, 0, positions, 3 * base, 3 * pointCount);
    }
    int[] kept = Arrays.copyOf(corners, 3 * faces);
    for (int i = 0; i < kept.length; i++) {
      kept[i] = kept[i] >= 0 ? kept[i] : base + ~kept[i];
    }
    int[] source = Arrays.copyOf(sources, faces);
    int[] groups = from.groupNames().isEmpty() ? null : new int[faces];
    for (int f = 0; f < faces; f++) {
      if (groups != null) {
        groups[f] = from.group(source[f]);
      }
      source[f] = source[f] < firstAssumed ? source[f] : -1;
    }
    SurfaceMesh mesh = same ? from : SurfaceMesh.of(positions, kept, groups, from.groupNames());
    return new Skin(mesh, source, errorMm2, assumedMm2, parts, doubts, sound, displacement);
  }
}
