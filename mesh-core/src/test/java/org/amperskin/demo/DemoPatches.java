package org.amperskin.demo;

/**
 * The nets of the two demo parts, at any fineness.
 *
 * <p>Definition: fineness 1 is the net of the stored files; fineness n has n times the cells in
 * each direction on the same surface, for convergence checks.
 */
final class DemoPatches {
  private static final int ROUND = 320;
  private static final int RINGS = 20;
  private static final int GRID = 64;
  private static final int ROLL = 11;

  private DemoPatches() {}

  /** The visor's net: rings from the eye slit to the outline, with a strap hole at each temple. */
  static Patch visor(int fineness) {
    int round = ROUND * fineness;
    int rings = RINGS * fineness;
    MidSurface surface = new VisorSurface();
    double[][] slit = superellipse(0.60, 0.135, 3.2, 135, 46, round);
    double[][] outline = superellipse(1, 1, 6, 135, 38, round);
    Patch patch = new Patch();
    int[][] net = new int[rings + 1][round];
    for (int j = 0; j <= rings; j++) {
      double t = (double) j / rings;
      for (int i = 0; i < round; i++) {
        double su = slit[i][0];
        // Eyes wider toward the temples, and the slit follows its bent middle line.
        double sv = VisorSurface.slitMiddle(su) + slit[i][1] * (0.80 + 0.75 * su * su);
        net[j][i] = patch.point(su + t * (outline[i][0] - su), sv + t * (outline[i][1] - sv));
      }
    }
    int half = 3 * fineness;
    int ring = 11 * fineness;
    for (int j = 0; j < rings; j++) {
      for (int i = 0; i < round; i++) {
        int fromTemple = StrictMath.floorMod(i + half, round / 2);
        if (fromTemple < 2 * half && j >= ring - half && j < ring + half) {
          continue;
        }
        int k = (i + 1) % round;
        patch.cell("", net[j][i], net[j + 1][i], net[j + 1][k], net[j][k]);
      }
    }
    for (int temple = 0; temple < 2; temple++) {
      int middle = temple * round / 2;
      int[] window = new int[8 * half];
      int at = 0;
      for (int s = 0; s < 2 * half; s++) {
        window[at++] = net[ring - half + s][StrictMath.floorMod(middle - half, round)];
      }
      for (int s = 0; s < 2 * half; s++) {
        window[at++] = net[ring + half][StrictMath.floorMod(middle - half + s, round)];
      }
      for (int s = 0; s < 2 * half; s++) {
        window[at++] = net[ring + half - s][StrictMath.floorMod(middle + half, round)];
      }
      for (int s = 0; s < 2 * half; s++) {
        window[at++] = net[ring - half][StrictMath.floorMod(middle + half - s, round)];
      }
      hole(patch, surface, window, patch.pointAt(net[ring][middle]), 3.4, 3.4, 3 * fineness);
    }
    return patch;
  }

  /** The shoulder plate's net: a grid bent to a disk, rings round the roll, three strap slots. */
  static Patch shoulder(int fineness) {
    int n = GRID * fineness;
    MidSurface surface = new ShoulderSurface();
    int[][] slots = {{24, 40, 56, 62}, {56, 62, 20, 36}, {2, 8, 20, 36}};
    Patch patch = new Patch();
    int[][] net = new int[n + 1][n + 1];
    for (int j = 0; j <= n; j++) {
      for (int i = 0; i <= n; i++) {
        double[] uv = disk(2.0 * i / n - 1, 2.0 * j / n - 1);
        net[j][i] = patch.point(uv[0], uv[1]);
      }
    }
    for (int j = 0; j < n; j++) {
      for (int i = 0; i < n; i++) {
        boolean cut = false;
        for (int[] s : slots) {
          cut |=
              i >= s[0] * fineness
                  && i < s[1] * fineness
                  && j >= s[2] * fineness
                  && j < s[3] * fineness;
        }
        if (!cut) {
          patch.cell("", net[j][i], net[j][i + 1], net[j + 1][i + 1], net[j + 1][i]);
        }
      }
    }
    for (int[] s : slots) {
      int[] window = frame(net, s[0] * fineness, s[1] * fineness, s[2] * fineness, s[3] * fineness);
      double[] middle = disk((double) (s[0] + s[1]) / GRID - 1, (double) (s[2] + s[3]) / GRID - 1);
      boolean flat = s[1] - s[0] > s[3] - s[2];
      hole(patch, surface, window, middle, flat ? 11 : 3.6, flat ? 3.6 : 11, 3 * fineness);
    }
    int[] before = frame(net, 0, n, 0, n);
    int round = before.length;
    int rolls = ROLL * fineness;
    int[] rim = before;
    for (int r = 1; r <= rolls; r++) {
      double radius = 1 + (ShoulderSurface.RADIUS - 1) * r / rolls;
      int[] next = new int[round];
      for (int i = 0; i < round; i++) {
        double[] uv = patch.pointAt(rim[i]);
        double length = StrictMath.sqrt(uv[0] * uv[0] + uv[1] * uv[1]);
        next[i] = patch.point(uv[0] / length * radius, uv[1] / length * radius);
      }
      for (int i = 0; i < round; i++) {
        int k = (i + 1) % round;
        patch.cell("rim", before[i], next[i], next[k], before[k]);
      }
      before = next;
    }
    return patch;
  }

  private static void hole(
      Patch patch,
      MidSurface surface,
      int[] window,
      double[] middle,
      double halfWidthMm,
      double halfHeightMm,
      int rings) {
    double perU = MidSurface.length(surface.alongU(middle[0], middle[1]));
    double perV = MidSurface.length(surface.alongV(middle[0], middle[1]));
    double[] halfMm = {halfWidthMm, halfHeightMm};
    patch.ringsToHole(window, middle, halfMm, new double[] {perU, perV}, rings, "");
  }

  private static int[] frame(int[][] net, int i0, int i1, int j0, int j1) {
    int[] frame = new int[2 * (i1 - i0 + j1 - j0)];
    int at = 0;
    for (int i = i0; i < i1; i++) {
      frame[at++] = net[j0][i];
    }
    for (int j = j0; j < j1; j++) {
      frame[at++] = net[j][i1];
    }
    for (int i = i1; i > i0; i--) {
      frame[at++] = net[j1][i];
    }
    for (int j = j1; j > j0; j--) {
      frame[at++] = net[j][i0];
    }
    return frame;
  }

  /** The square [-1, 1]^2 bent to the unit disk. */
  private static double[] disk(double s, double t) {
    return new double[] {s * StrictMath.sqrt(1 - t * t / 2), t * StrictMath.sqrt(1 - s * s / 2)};
  }

  /**
   * Points of a superellipse at equal distances along it, from its right end, counter-clockwise.
   */
  private static double[][] superellipse(
      double a, double b, double exponent, double mmPerU, double mmPerV, int count) {
    int quarter = count / 4;
    int samples = 20_000;
    double[][] fine = new double[samples + 1][];
    double[] along = new double[samples + 1];
    for (int s = 0; s <= samples; s++) {
      double turn = StrictMath.PI / 2 * s / samples;
      double c = s == samples ? 0 : StrictMath.cos(turn);
      double d = StrictMath.sin(turn);
      double r =
          StrictMath.pow(StrictMath.pow(c, exponent) + StrictMath.pow(d, exponent), -1 / exponent);
      fine[s] = new double[] {a * r * c, b * r * d};
      if (s > 0) {
        double du = (fine[s][0] - fine[s - 1][0]) * mmPerU;
        double dv = (fine[s][1] - fine[s - 1][1]) * mmPerV;
        along[s] = along[s - 1] + StrictMath.sqrt(du * du + dv * dv);
      }
    }
    double[][] points = new double[count][];
    int s = 0;
    for (int i = 0; i <= quarter; i++) {
      double want = along[samples] * i / quarter;
      while (s < samples && along[s] < want) {
        s++;
      }
      double u = fine[s][0];
      double v = fine[s][1];
      points[i] = new double[] {u, v};
      points[count / 2 - i] = new double[] {-u, v};
      points[count / 2 + i] = new double[] {-u, -v};
      points[(count - i) % count] = new double[] {u, -v};
    }
    return points;
  }
}
