package org.amperskin.geom;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
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

  @Test
  void flatFacesOnAGridAndOffItAgreeWithExactArithmetic() {
    int zeros = 0;
    for (long seed = 0; seed < 4000; seed++) {
      Random r = new Random(seed);
      // Corners in single precision, as print files have them; every third case spans so many
      // binary places that no grid of 40 bits holds it.
      boolean wide = seed % 3 == 0;
      double[] p = new double[12];
      for (int i = 0; i < 9; i++) {
        p[i] = (float) (200 * r.nextDouble() - 100);
      }
      for (int k = 0; k < 3; k++) {
        p[9 + k] = p[k] + (p[3 + k] - p[k]) + (p[6 + k] - p[k]);
      }
      int shift = r.nextInt(3);
      if (shift > 0) {
        p[9 + r.nextInt(3)] += (shift == 1 ? 1 : -1) * (wide ? 0x1p-44 : 0x1p-30);
      }
      int expected = exact(p);
      zeros += expected == 0 ? 1 : 0;
      assertThat(Predicates.orient3d(p, 0, 1, 2, 3)).as("seed %d", seed).isEqualTo(expected);
      int turn = Predicates.orient2d(p[0], p[1], p[0] + 2 * p[3], p[1] + 2 * p[4], p[9], p[10]);
      BigDecimal left =
          big(p[0], p[9]).multiply(new BigDecimal(p[1] + 2 * p[4]).subtract(new BigDecimal(p[10])));
      BigDecimal right =
          big(p[1], p[10]).multiply(new BigDecimal(p[0] + 2 * p[3]).subtract(new BigDecimal(p[9])));
      assertThat(turn).as("seed %d", seed).isEqualTo(left.compareTo(right));
    }
    assertThat(zeros).isBetween(500, 3500);
  }

  private static BigDecimal big(double a, double b) {
    return new BigDecimal(a).subtract(new BigDecimal(b));
  }

  @Test
  void wholeNumbersOf128BitsAgreeWithBigOnes() {
    Random r = new Random(5);
    for (int i = 0; i < 10_000; i++) {
      long a = r.nextLong() >> 23;
      long b = r.nextLong() >> 23;
      long c = r.nextLong() >> 23;
      long d = r.nextLong() >> 23;
      long e = i % 2 == 0 ? r.nextLong() >> 24 : r.nextInt(3) - 1;
      Int128 minor = Int128.product(a, b).minus(Int128.product(c, d));
      BigInteger whole = value(a, b).subtract(value(c, d));
      assertThat(minor.signum()).isEqualTo(whole.signum());
      Int128 sum = minor.times(e).plus(Int128.product(a, d));
      BigInteger wanted = whole.multiply(BigInteger.valueOf(e)).add(value(a, d));
      assertThat(big(sum)).as("case %d", i).isEqualTo(wanted);
    }
  }

  private static BigInteger value(long a, long b) {
    return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
  }

  private static BigInteger big(Int128 v) {
    return BigInteger.valueOf(v.high())
        .shiftLeft(64)
        .add(new BigInteger(Long.toUnsignedString(v.low())));
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
