package org.amperskin.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Triangles of a polygon have its shoelace area: if they overlapped or stood out, the sum of their
 * areas would be larger.
 */
class PolygonsTest {
  private static final int SEEDS = 600;

  @Test
  void randomStarPolygonsInTiltedPlanesKeepTheirArea() {
    for (int seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      int n = 3 + random.nextInt(seed % 10 == 0 ? 400 : 30);
      double[] u = new double[n];
      double[] v = new double[n];
      for (int i = 0; i < n; i++) {
        double angle = 2 * Math.PI * (i + 0.9 * random.nextDouble()) / n;
        double r = 0.02 + random.nextDouble();
        u[i] = r * Math.cos(angle);
        v[i] = r * Math.sin(angle);
      }
      check("seed " + seed, tilted(u, v, random), Math.abs(shoelace(u, v)));
    }
  }

  @Test
  void randomCombsOnAGridKeepTheirArea() {
    // Axis-parallel teeth: many corners in line, at equal heights, or twice at one place.
    for (int seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      int teeth = 1 + random.nextInt(12);
      double[] u = new double[4 * teeth + 2];
      double[] v = new double[4 * teeth + 2];
      int to = 0;
      for (int t = 0; t < teeth; t++) {
        int low = 1 + random.nextInt(2);
        int high = low + random.nextInt(4);
        double[] us = {2 * t, 2 * t, 2 * t + 1, 2 * t + 1};
        double[] vs = {low, high, high, low};
        System.arraycopy(us, 0, u, to, 4);
        System.arraycopy(vs, 0, v, to, 4);
        to += 4;
      }
      u[to] = 2 * teeth - 1;
      v[to++] = 0;
      u[to] = 0;
      v[to] = 0;
      check("seed " + seed, flat(u, v), Math.abs(shoelace(u, v)));
      check("seed " + seed + " tilted", tilted(u, v, random), Math.abs(shoelace(u, v)));
    }
  }

  @Test
  void polygonsWithABridgeToAHoleKeepTheirArea() {
    for (int seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      int outer = 3 + random.nextInt(12);
      int hole = 3 + random.nextInt(12);
      double[] u = new double[outer + hole + 2];
      double[] v = new double[outer + hole + 2];
      double turn = random.nextDouble();
      for (int i = 0; i <= outer; i++) {
        double a = 2 * Math.PI * (i % outer + turn) / outer;
        double r = 3 + (i % outer % 2) * random.nextInt(2) * (i < outer ? 1.0 : 0);
        u[i] = (i == outer ? u[0] : r * Math.cos(a));
        v[i] = (i == outer ? v[0] : r * Math.sin(a));
      }
      for (int i = 0; i <= hole; i++) {
        double a = 2 * Math.PI * (turn / outer - (i % hole) / (double) hole);
        u[outer + 1 + i] = Math.cos(a);
        v[outer + 1 + i] = Math.sin(a);
      }
      u[outer + 1 + hole] = u[outer + 1];
      v[outer + 1 + hole] = v[outer + 1];
      if (outer > 3) { // with three corners the sides of the outer ring cut the hole
        check("seed " + seed, flat(u, v), Math.abs(shoelace(u, v)));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 1000, 200_000})
  void convexPolygonsKeepTheirAreaQuickly(int n) {
    double[] u = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      u[i] = 50 * Math.cos(2 * Math.PI * i / n);
      v[i] = 50 * Math.sin(2 * Math.PI * i / n);
    }
    check("n " + n, tilted(u, v, new Random(n)), 1250 * n * Math.sin(2 * Math.PI / n));
  }

  @Test
  void everyStartAndBothSensesGiveTheSameArea() {
    double[] u = {0, 4, 4, 3, 3, 1, 1, 0};
    double[] v = {0, 0, 3, 3, 1, 1, 3, 3};
    for (int start = 0; start < 8; start++) {
      double[] ru = new double[8];
      double[] rv = new double[8];
      for (int i = 0; i < 8; i++) {
        ru[i] = u[(start + i) % 8];
        rv[i] = v[(start + i) % 8];
      }
      check("start " + start, flat(ru, rv), 8);
      for (int i = 0; i < 4; i++) {
        double x = ru[i];
        ru[i] = ru[7 - i];
        ru[7 - i] = x;
        double y = rv[i];
        rv[i] = rv[7 - i];
        rv[7 - i] = y;
      }
      check("backward, start " + start, flat(ru, rv), 8);
    }
  }

  @Test
  void degeneratePolygonsEndWithoutArea() {
    check("a point", new double[15], 0);
    check("a line", new double[] {0, 0, 0, 1, 1, 1, 2, 2, 2, 5, 5, 5, 3, 3, 3}, 0);
  }

  @Test
  void polygonThatCrossesItselfStillGivesTriangles() {
    double[] bowTie = {0, 0, 0, 1, 1, 0, 1, 0, 0, 0, 1, 0};
    assertThat(Polygons.triangulate(bowTie, new int[] {0, 1, 2, 3}, 4)).hasSize(6);
  }

  private static void check(String what, double[] p, double expected) {
    int n = p.length / 3;
    int[] corner = new int[n];
    Arrays.setAll(corner, i -> i);
    int[] t = Polygons.triangulate(p, corner, n);
    assertThat(t).as(what).hasSize(3 * (n - 2));
    double sum = 0;
    Vec3 turned = new Vec3(0, 0, 0);
    for (int i = 0; i < t.length; i += 3) {
      Vec3 normal = at(p, t[i + 1]).minus(at(p, t[i])).cross(at(p, t[i + 2]).minus(at(p, t[i])));
      sum += normal.length() / 2;
      turned = turned.plus(normal.times(0.5));
    }
    assertThat(sum).as(what + ": area").isCloseTo(expected, within(1e-9 * expected + 1e-15));
    assertThat(turned.length())
        .as(what + ": sense")
        .isCloseTo(expected, within(1e-9 * expected + 1e-15));
  }

  private static Vec3 at(double[] p, int v) {
    return new Vec3(p[3 * v], p[3 * v + 1], p[3 * v + 2]);
  }

  private static double shoelace(double[] u, double[] v) {
    double sum = 0;
    for (int i = 0; i < u.length; i++) {
      int j = (i + 1) % u.length;
      sum += u[i] * v[j] - u[j] * v[i];
    }
    return sum / 2;
  }

  private static double[] flat(double[] u, double[] v) {
    return lay(u, v, new Vec3(1, 0, 0), new Vec3(0, 1, 0), new Vec3(0, 0, 7));
  }

  private static double[] tilted(double[] u, double[] v, Random random) {
    Vec3 normal =
        new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    Vec3 a =
        normal.cross(Math.abs(normal.x()) < 0.5 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).unit();
    Vec3 far = new Vec3(100 * random.nextGaussian(), 100 * random.nextGaussian(), 0);
    return lay(u, v, a, normal.cross(a), far);
  }

  private static double[] lay(double[] u, double[] v, Vec3 a, Vec3 b, Vec3 origin) {
    double[] p = new double[3 * u.length];
    for (int i = 0; i < u.length; i++) {
      Vec3 q = origin.plus(a.times(u[i])).plus(b.times(v[i]));
      p[3 * i] = q.x();
      p[3 * i + 1] = q.y();
      p[3 * i + 2] = q.z();
    }
    return p;
  }
}
