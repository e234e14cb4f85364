package org.amperskin.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.junit.jupiter.api.Test;

/** Solutions against a dense Cholesky decomposition (Commons Math) and a closed form. */
class SparseSystemTest {
  /** Five-point Laplacian on n x n squares, zero all round. */
  private static SparseSystem square(int n) {
    int[] rows = new int[5 * n * n];
    int[] columns = new int[5 * n * n];
    double[] values = new double[5 * n * n];
    int e = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        int at = i * n + j;
        int[][] beside = {{i - 1, j}, {i + 1, j}, {i, j - 1}, {i, j + 1}};
        rows[e] = at;
        columns[e] = at;
        values[e++] = 4;
        for (int[] b : beside) {
          if (b[0] >= 0 && b[0] < n && b[1] >= 0 && b[1] < n) {
            rows[e] = at;
            columns[e] = b[0] * n + b[1];
            values[e++] = -1;
          }
        }
      }
    }
    return SparseSystem.of(
        n * n,
        java.util.Arrays.copyOf(rows, e),
        java.util.Arrays.copyOf(columns, e),
        java.util.Arrays.copyOf(values, e));
  }

  @Test
  void agreesWithDenseCholesky() {
    SparseSystem sparse = square(14);
    int n = sparse.size();
    double[][] dense = new double[n][n];
    for (int i = 0; i < n; i++) {
      double[] unit = new double[n];
      unit[i] = 1;
      dense[i] = sparse.times(unit);
    }
    Random random = new Random(5);
    double[] b = random.doubles(n).toArray();
    double[] x = sparse.solve(b, new double[n], 1e-12);
    double[] y =
        new CholeskyDecomposition(new Array2DRowRealMatrix(dense))
            .getSolver()
            .solve(new ArrayRealVector(b))
            .toArray();
    assertThat(x).containsExactly(y, within(1e-9));
  }

  @Test
  void eigenvectorIsSolvedInClosedForm() {
    // sin(pi i/(n+1)) sin(pi j/(n+1)) has the eigenvalue 8 sin^2(pi/(2(n+1))): any textbook on
    // finite differences.
    int n = 200;
    SparseSystem sparse = square(n);
    double[] v = new double[n * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        v[i * n + j] =
            Math.sin(Math.PI * (i + 1) / (n + 1)) * Math.sin(Math.PI * (j + 1) / (n + 1));
      }
    }
    double s = Math.sin(Math.PI / (2 * (n + 1)));
    double[] x = sparse.solve(v, new double[n * n], 1e-10);
    for (int i = 0; i < x.length; i += 97) {
      assertThat(x[i] * 8 * s * s).isEqualTo(v[i], within(1e-7));
    }
  }

  @Test
  void singularSystemIsNotAnswered() {
    SparseSystem ring =
        SparseSystem.of(
            2, new int[] {0, 0, 1, 1}, new int[] {0, 1, 0, 1}, new double[] {1, -1, -1, 1});
    assertThatIllegalStateException()
        .isThrownBy(() -> ring.solve(new double[] {1, 1}, new double[2], 1e-8))
        .withMessageContaining("residual");
  }
}
