package org.amperskin.picture;

import java.util.Arrays;
import java.util.Random;
import org.amperskin.mesh.SurfaceMesh;

/** Small meshes with known areas for tests that look at pictures. */
public final class SampleParts {
  private SampleParts() {}

  /** A closed box from the origin, 12 faces, outward sides out. */
  public static SurfaceMesh box(double sizeX, double sizeY, double sizeZ) {
    double[] p = new double[24];
    for (int v = 0; v < 8; v++) {
      p[3 * v] = (v & 1) * sizeX;
      p[3 * v + 1] = (v >> 1 & 1) * sizeY;
      p[3 * v + 2] = (v >> 2 & 1) * sizeZ;
    }
    int[] c = {
      0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1,
      3, 7, 1, 7, 5
    };
    return SurfaceMesh.of(p, c);
  }

  /** A flat plate in z = 0, x from 0 to {@code columns}, y from 0 to {@code rows}, 1 mm squares. */
  public static SurfaceMesh plate(int columns, int rows) {
    double[] p = new double[3 * (columns + 1) * (rows + 1)];
    for (int j = 0; j <= rows; j++) {
      for (int i = 0; i <= columns; i++) {
        int v = j * (columns + 1) + i;
        p[3 * v] = i;
        p[3 * v + 1] = j;
      }
    }
    int[] c = new int[6 * columns * rows];
    int n = 0;
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        int v = j * (columns + 1) + i;
        int above = v + columns + 1;
        for (int k : new int[] {v, v + 1, above + 1, v, above + 1, above}) {
          c[n++] = k;
        }
      }
    }
    return SurfaceMesh.of(p, c);
  }

  /**
   * Colours for {@link #plate}: upright stripes, the first {@code open} of every {@code period}
   * columns get index 0, the others index 1.
   */
  public static int[] stripes(int columns, int rows, int period, int open) {
    int[] colours = new int[2 * columns * rows];
    for (int f = 0; f < colours.length; f++) {
      colours[f] = f / 2 % columns % period < open ? 0 : 1;
    }
    return colours;
  }

  /** A sphere about the origin of {@code 2 * around * (bands - 1)} faces. */
  public static SurfaceMesh sphere(double radiusMm, int around, int bands) {
    double[] p = new double[3 * (around * (bands - 1) + 2)];
    for (int j = 1; j < bands; j++) {
      double polar = Math.PI * j / bands;
      for (int i = 0; i < around; i++) {
        double turn = 2 * Math.PI * i / around;
        int at = 3 * ((j - 1) * around + i);
        p[at] = radiusMm * Math.sin(polar) * Math.cos(turn);
        p[at + 1] = radiusMm * Math.sin(polar) * Math.sin(turn);
        p[at + 2] = radiusMm * Math.cos(polar);
      }
    }
    int north = around * (bands - 1);
    int south = north + 1;
    p[3 * north + 2] = radiusMm;
    p[3 * south + 2] = -radiusMm;
    int[] c = new int[6 * around * (bands - 1)];
    int n = 0;
    for (int i = 0; i < around; i++) {
      int next = (i + 1) % around;
      n = put(c, n, north, i, next);
      for (int j = 0; j < bands - 2; j++) {
        int row = j * around;
        int below = row + around;
        n = put(c, n, row + i, below + i, below + next);
        n = put(c, n, row + i, below + next, row + next);
      }
      int last = (bands - 2) * around;
      n = put(c, n, south, last + next, last + i);
    }
    return SurfaceMesh.of(p, Arrays.copyOf(c, n));
  }

  /** The same faces in another order, and the number each face had before. */
  public static SurfaceMesh shuffled(SurfaceMesh mesh, int[] formerFace, long seed) {
    Random random = new Random(seed);
    for (int f = 0; f < formerFace.length; f++) {
      formerFace[f] = f;
    }
    for (int f = formerFace.length - 1; f > 0; f--) {
      int g = random.nextInt(f + 1);
      int keep = formerFace[f];
      formerFace[f] = formerFace[g];
      formerFace[g] = keep;
    }
    int[] c = new int[mesh.corners().length];
    for (int f = 0; f < formerFace.length; f++) {
      System.arraycopy(mesh.corners(), 3 * formerFace[f], c, 3 * f, 3);
    }
    return SurfaceMesh.of(mesh.positions(), c);
  }

  private static int put(int[] c, int n, int i, int j, int k) {
    c[n] = i;
    c[n + 1] = j;
    c[n + 2] = k;
    return n + 3;
  }
}
