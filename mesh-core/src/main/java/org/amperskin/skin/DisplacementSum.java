package org.amperskin.skin;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.amperskin.geom.Box;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Adds up the volume within a skin, piece by piece.
 *
 * <p>Definition: a piece of a plane face with unit normal n adds (p - o) . n times its area over 3,
 * with p any point of it and o the middle of the part's box.
 *
 * <p>Guaranteed: an undecided piece errs by no more than its own term, whichever of its sides is
 * wet. As a second witness the pieces' area vectors must add up to nothing, as they do on every
 * closed surface.
 */
final class DisplacementSum {
  /** Left over area vector over the whole area, above which the pieces do not close. */
  private static final double CLOSES = 1e-6;

  private final SurfaceMesh mesh;
  private final double[] o;
  private final double diagonalMm;
  private double volumeMm3;
  private double errorMm3;
  private double areaMm2;
  private double unsureMm2;
  private final double[] vector = new double[3];
  private final Map<Integer, Double> voids = new TreeMap<>();
  private final double[] n = new double[3];

  DisplacementSum(SurfaceMesh mesh, Box box) {
    this.mesh = mesh;
    o =
        new double[] {
          (box.minX() + box.maxX()) / 2,
          (box.minY() + box.maxY()) / 2,
          (box.minZ() + box.maxZ()) / 2
        };
    diagonalMm =
        Math.sqrt(
            Math.pow(box.maxX() - box.minX(), 2)
                + Math.pow(box.maxY() - box.minY(), 2)
                + Math.pow(box.maxZ() - box.minZ(), 2));
  }

  /** A piece with one wet side. */
  void skin(int f, double share, boolean turned) {
    double v = share * term(f);
    double sign = turned ? -1 : 1;
    volumeMm3 += sign * v;
    areaMm2 += share * mesh.faceAreaMm2(f);
    for (int k = 0; k < 3; k++) {
      vector[k] += sign * share * n[k];
    }
  }

  /** A piece of which it is not known which side is wet, or whether both are. */
  void unsure(int f, double share) {
    errorMm3 += Math.abs(share * term(f));
    unsureMm2 += share * mesh.faceAreaMm2(f);
  }

  /**
   * A side in a void to which no way was found, nor that there is none.
   *
   * @param room number of the void
   */
  void enclosed(int f, double share, boolean front, int room) {
    voids.merge(room, (front ? -share : share) * term(f), Double::sum);
  }

  Displacement sum() {
    double left = Math.sqrt(vector[0] * vector[0] + vector[1] * vector[1] + vector[2] * vector[2]);
    double gap = Math.max(0, left - unsureMm2);
    if (gap > CLOSES * areaMm2) {
      return Displacement.unknown(
          String.format(Locale.ROOT, "the wetted pieces leave %.3g mm2 open", gap));
    }
    double error = errorMm3 + (gap > 1e-11 * areaMm2 ? gap * diagonalMm : 0);
    for (double v : voids.values()) {
      error += Math.abs(v);
    }
    return Displacement.of(Math.max(0, volumeMm3), error);
  }

  /** The face's term; its area vector is left in {@code n}. */
  private double term(int f) {
    double[] p = mesh.positions();
    int a = 3 * mesh.corner(f, 0);
    int b = 3 * mesh.corner(f, 1);
    int c = 3 * mesh.corner(f, 2);
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      int s = (k + 1) % 3;
      int t = (k + 2) % 3;
      n[k] =
          ((p[b + s] - p[a + s]) * (p[c + t] - p[a + t])
                  - (p[b + t] - p[a + t]) * (p[c + s] - p[a + s]))
              / 2;
      sum += (p[a + k] - o[k]) * n[k];
    }
    return sum / 3;
  }
}
