package org.amperskin.geom;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PredicatesTest {
  @Test
  void signsOfPlainCases() {
    double[] p = {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, -1, 5, 5, 0};
    assertThat(Predicates.orient3d(p, 0, 1, 2, 3)).isEqualTo(1);
    assertThat(Predicates.orient3d(p, 0, 1, 2, 4)).isEqualTo(-1);
    assertThat(Predicates.orient3d(p, 0, 1, 2, 5)).isZero();
    assertThat(Predicates.orient2d(0, 0, 1, 0, 0, 1)).isEqualTo(1);
    assertThat(Predicates.orient2d(0, 0, 1, 0, 2, 0)).isZero();
  }

  @Test
  void nearlyFlatCasesAgreeWithExactArithmetic() {
    int zeros = 0;
    for (long seed = 0; seed < 4000; seed++) {
      Random r = new Random(seed);
      double[] p = new double[12];
      for (int i = 0; i < 9; i++) {
        p[i] = (r.nextInt(64) - 32) / 8.0;
      }
      // A point of the plane, or one unit in the last place off it.
      double s = r.nextInt(5);
      double t = r.nextInt(5);
      for (int k = 0; k < 3; k++) {
        p[9 + k] = p[k] + s * (p[3 + k] - p[k]) + t * (p[6 + k] - p[k]);
      }
      if (r.nextBoolean()) {
        p[9 + r.nextInt(3)] += Math.ulp(4.0);
      }
      int expected = exact(p);
      zeros += expected == 0 ? 1 : 0;
      assertThat(Predicates.orient3d(p, 0, 1, 2, 3)).as("seed %d", seed).isEqualTo(expected);
    }
    assertThat(zeros).isBetween(500, 3500);
  }

  private static int exact(double[] p) {
    BigDecimal[][] m = new BigDecimal[3][3];
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < 3; k++) {
        m[i][k] = new BigDecimal(p[3 * i + k]).subtract(new BigDecimal(p[9 + k]));
      }
    }
    BigDecimal det = BigDecimal.ZERO;
    for (int i = 0; i < 3; i++) {
      int j = (i + 1) % 3;
      int k = (i + 2) % 3;
      det =
          det.add(m[0][i].multiply(m[1][j].multiply(m[2][k]).subtract(m[1][k].multiply(m[2][j]))));
    }
    return -det.signum();
  }
}
