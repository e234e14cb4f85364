package org.amperskin.mesh;

import java.util.Optional;
import org.amperskin.geom.Vec3;

/**
 * How a closed surface bends as a whole.
 *
 * <p>Definition: the integral of mean curvature of a polyhedron is half the sum over its edges of
 * length times the angle between the outward normals, positive on a ridge and negative in a hollow.
 * Guaranteed: exact for the polyhedron; below that of the smooth body it stands for by a share of
 * the order of its facets' angle squared. Cost: linear in the faces. Source: Santalo, Integral
 * Geometry and Geometric Probability (from memory).
 *
 * @param integralMm the integral (mm)
 * @param hollowMm the part of it that hollow edges take away, as a positive number (mm)
 */
public record MeanCurvature(double integralMm, double hollowMm) {
  /** Hollows below this share of the integral are rounding of the file, not a hollow. */
  private static final double ROUNDING = 1e-3;

  /** Of a single closed body; empty for any other. */
  public static Optional<MeanCurvature> of(MeshDiagnosis diagnosis) {
    double volume = diagnosis.volumeMm3().orElse(0);
    if (!diagnosis.closed() || diagnosis.bodies().size() != 1 || volume == 0) {
      return Optional.empty();
    }
    double outward = Math.signum(volume);
    SurfaceMesh mesh = diagnosis.mesh();
    double ridges = 0;
    double hollows = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (diagnosis.leftOut(f)) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        int half = 3 * f + k;
        int mate = diagnosis.mate(half);
        if (mate > half && !diagnosis.leftOut(mate / 3)) {
          double bend = outward * bend(mesh, f, k, mate / 3);
          ridges += Math.max(0, bend);
          hollows += Math.max(0, -bend);
        }
      }
    }
    return Optional.of(new MeanCurvature(ridges - hollows, hollows));
  }

  /** Half of length times signed angle of one edge (mm). */
  private static double bend(SurfaceMesh mesh, int f, int k, int g) {
    Vec3 edge = corner(mesh, f, (k + 1) % 3).minus(corner(mesh, f, k));
    Vec3 n = normal(mesh, f);
    Vec3 m = normal(mesh, g);
    double length = edge.length();
    if (length == 0) {
      return 0;
    }
    Vec3 turn = n.cross(m);
    double angle = Math.atan2(turn.length(), n.dot(m));
    return 0.5 * length * (turn.dot(edge) < 0 ? -angle : angle);
  }

  private static Vec3 corner(SurfaceMesh mesh, int f, int k) {
    int v = mesh.corner(f, k);
    return mesh.point(v);
  }

  private static Vec3 normal(SurfaceMesh mesh, int f) {
    double[] n = mesh.unitNormal(f);
    return new Vec3(n[0], n[1], n[2]);
  }

  /** Whether nothing of it is hollow, but for rounding. */
  public boolean convex() {
    return hollowMm <= ROUNDING * integralMm;
  }
}
