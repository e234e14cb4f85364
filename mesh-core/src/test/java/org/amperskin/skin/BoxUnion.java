package org.amperskin.skin;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.stream.DoubleStream;

/** A slow second way: boxes cut into cells by all their planes, flooded from outside. */
final class BoxUnion {
  private BoxUnion() {}

  /** Area between filled cells and empty ones that are joined to the outside. */
  static double reachedArea(double[][] boxes) {
    return flood(boxes)[0];
  }

  /** Volume of all cells but the empty ones that are joined to the outside. */
  static double displacedVolume(double[][] boxes) {
    return flood(boxes)[1];
  }

  private static double[] flood(double[][] boxes) {
    double[][] at = new double[3][];
    for (int k = 0; k < 3; k++) {
      int axis = k;
      at[k] =
          Arrays.stream(boxes)
              .flatMapToDouble(b -> DoubleStream.of(b[axis], b[axis + 3]))
              .sorted()
              .distinct()
              .toArray();
    }
    int nx = at[0].length + 1;
    int ny = at[1].length + 1;
    int nz = at[2].length + 1;
    boolean[] full = new boolean[nx * ny * nz];
    for (int x = 1; x < nx - 1; x++) {
      for (int y = 1; y < ny - 1; y++) {
        for (int z = 1; z < nz - 1; z++) {
          double cx = (at[0][x - 1] + at[0][x]) / 2;
          double cy = (at[1][y - 1] + at[1][y]) / 2;
          double cz = (at[2][z - 1] + at[2][z]) / 2;
          for (double[] b : boxes) {
            full[(x * ny + y) * nz + z] |=
                b[0] < cx && cx < b[3] && b[1] < cy && cy < b[4] && b[2] < cz && cz < b[5];
          }
        }
      }
    }
    boolean[] reached = new boolean[full.length];
    ArrayDeque<int[]> todo = new ArrayDeque<>();
    todo.add(new int[] {0, 0, 0});
    reached[0] = true;
    int[][] steps = {{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}};
    double area = 0;
    while (!todo.isEmpty()) {
      int[] c = todo.remove();
      for (int[] s : steps) {
        int x = c[0] + s[0];
        int y = c[1] + s[1];
        int z = c[2] + s[2];
        if (x < 0 || y < 0 || z < 0 || x >= nx || y >= ny || z >= nz) {
          continue;
        }
        int i = (x * ny + y) * nz + z;
        if (full[i]) {
          int[] k = {x, y, z};
          double a = 1;
          for (int axis = 0; axis < 3; axis++) {
            a *= s[axis] != 0 ? 1 : at[axis][k[axis]] - at[axis][k[axis] - 1];
          }
          area += a;
        } else if (!reached[i]) {
          reached[i] = true;
          todo.add(new int[] {x, y, z});
        }
      }
    }
    double volume = 0;
    for (int x = 1; x < nx - 1; x++) {
      for (int y = 1; y < ny - 1; y++) {
        for (int z = 1; z < nz - 1; z++) {
          if (!reached[(x * ny + y) * nz + z]) {
            volume +=
                (at[0][x] - at[0][x - 1]) * (at[1][y] - at[1][y - 1]) * (at[2][z] - at[2][z - 1]);
          }
        }
      }
    }
    return new double[] {area, volume};
  }
}
