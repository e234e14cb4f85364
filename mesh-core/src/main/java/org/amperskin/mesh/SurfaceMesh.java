package org.amperskin.mesh;

import java.util.List;
import java.util.Objects;
import org.amperskin.geom.Vec3;

/**
 * A triangle surface as flat arrays.
 *
 * <p>Definition: vertex {@code v} lies at {@code positions[3*v+k]} (mm, k = x, y, z); face {@code
 * f} joins the vertices {@code corners[3*f+k]}, seen counter-clockwise from its outward side.
 *
 * <p>Guaranteed: whole triples, corner indices in range, finite positions. Not guaranteed: closed,
 * oriented, free of repeated or degenerate faces; {@link MeshDiagnosis} tells. The arrays are owned
 * by the mesh and handed out as they are, for speed: callers read them and never write.
 *
 * <p>Cost: 24 bytes a vertex, 12 bytes a face (16 with groups).
 */
public final class SurfaceMesh {
  private final double[] positions;
  private final int[] corners;
  private final int[] groups;
  private final List<String> groupNames;

  private SurfaceMesh(double[] positions, int[] corners, int[] groups, List<String> groupNames) {
    this.positions = positions;
    this.corners = corners;
    this.groups = groups;
    this.groupNames = groupNames;
  }

  /**
   * Makes a mesh without groups.
   *
   * @param positions {@code positions[3*v+k]}, mm; kept, not copied
   * @param corners {@code corners[3*f+k]}, vertex indices; kept, not copied
   */
  public static SurfaceMesh of(double[] positions, int[] corners) {
    return of(positions, corners, null, List.of());
  }

  /**
   * Makes a mesh whose faces belong to named groups.
   *
   * @param positions {@code positions[3*v+k]}, mm; kept, not copied
   * @param corners {@code corners[3*f+k]}, vertex indices; kept, not copied
   * @param groups {@code groups[f]}, index into {@code groupNames}; null for none
   * @param groupNames the names, in file order
   */
  public static SurfaceMesh of(
      double[] positions, int[] corners, int[] groups, List<String> groupNames) {
    Objects.requireNonNull(positions, "positions");
    Objects.requireNonNull(corners, "corners");
    if (positions.length % 3 != 0 || corners.length % 3 != 0) {
      throw new IllegalArgumentException(
          "positions and corners come in threes, got " + positions.length + ", " + corners.length);
    }
    for (double p : positions) {
      if (!Double.isFinite(p)) {
        throw new IllegalArgumentException("position " + p + " mm is not finite");
      }
    }
    int vertices = positions.length / 3;
    for (int c : corners) {
      if (c < 0 || c >= vertices) {
        throw new IllegalArgumentException("corner " + c + " of " + vertices + " vertices");
      }
    }
    if (groups != null) {
      if (groups.length != corners.length / 3) {
        throw new IllegalArgumentException("groups: one per face, got " + groups.length);
      }
      for (int g : groups) {
        if (g < 0 || g >= groupNames.size()) {
          throw new IllegalArgumentException("group " + g + " of " + groupNames.size());
        }
      }
    }
    return new SurfaceMesh(positions, corners, groups, List.copyOf(groupNames));
  }

  /** Number of vertices. */
  public int vertexCount() {
    return positions.length / 3;
  }

  /** Number of faces. */
  public int faceCount() {
    return corners.length / 3;
  }

  /** The vertex positions, {@code positions()[3*v+k]}, mm. Read only. */
  public double[] positions() {
    return positions;
  }

  /** The faces' vertices, {@code corners()[3*f+k]}. Read only. */
  public int[] corners() {
    return corners;
  }

  /** Vertex of face {@code face} at corner {@code k} (0, 1, 2). */
  public int corner(int face, int k) {
    return corners[3 * face + k];
  }

  /** Place of a vertex (mm). */
  public Vec3 point(int vertex) {
    return new Vec3(x(vertex), y(vertex), z(vertex));
  }

  /** X of a vertex (mm). */
  public double x(int vertex) {
    return positions[3 * vertex];
  }

  /** Y of a vertex (mm). */
  public double y(int vertex) {
    return positions[3 * vertex + 1];
  }

  /** Z of a vertex (mm). */
  public double z(int vertex) {
    return positions[3 * vertex + 2];
  }

  /** Names of the groups the file gave, empty if none. */
  public List<String> groupNames() {
    return groupNames;
  }

  /** Group of a face as an index into {@link #groupNames()}, -1 if the file has no groups. */
  public int group(int face) {
    return groups == null ? -1 : groups[face];
  }

  /** Area of one face (mm2), by the cross product of two edges. */
  public double faceAreaMm2(int face) {
    int a = 3 * corners[3 * face];
    int b = 3 * corners[3 * face + 1];
    int c = 3 * corners[3 * face + 2];
    double ux = positions[b] - positions[a];
    double uy = positions[b + 1] - positions[a + 1];
    double uz = positions[b + 2] - positions[a + 2];
    double vx = positions[c] - positions[a];
    double vy = positions[c + 1] - positions[a + 1];
    double vz = positions[c + 2] - positions[a + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    return 0.5 * Math.sqrt(nx * nx + ny * ny + nz * nz);
  }

  /** Outward unit normal of a face, x, y, z; zero if the face has no area. */
  public double[] unitNormal(int face) {
    int a = corners[3 * face];
    int b = corners[3 * face + 1];
    int c = corners[3 * face + 2];
    double ux = x(b) - x(a);
    double uy = y(b) - y(a);
    double uz = z(b) - z(a);
    double vx = x(c) - x(a);
    double vy = y(c) - y(a);
    double vz = z(c) - z(a);
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double l = Math.sqrt(nx * nx + ny * ny + nz * nz);
    boolean sound = l > 0 && l < Double.POSITIVE_INFINITY;
    return sound ? new double[] {nx / l, ny / l, nz / l} : new double[3];
  }
}
