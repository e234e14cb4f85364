package org.amperskin.linear;

import java.util.Arrays;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.ConjugateGradient;
import org.apache.commons.math3.linear.RealLinearOperator;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.IterationManager;

/**
 * A symmetric positive definite matrix with few entries a row, and the solution of its systems.
 *
 * <p>Guaranteed: {@link #solve} leaves a true residual, computed anew, below what was asked, or
 * throws. The same bytes on every run. Not guaranteed: anything for indefinite matrices.
 *
 * <p>Method: conjugate gradients (Commons Math) with one V-cycle of {@link Aggregation} as
 * preconditioner. Cost: some 30 products with the matrix, whatever its size.
 */
public final class SparseSystem {
  private static final int MOST_STEPS = 2000;

  private final int size;
  private final int[] rowStart;
  private final int[] column;
  private final double[] value;
  private Aggregation aggregation;

  private SparseSystem(int size, int[] rowStart, int[] column, double[] value) {
    this.size = size;
    this.rowStart = rowStart;
    this.column = column;
    this.value = value;
  }

  /**
   * Adds up entries; several for one place are summed in their order.
   *
   * @param size number of unknowns
   * @param rows {@code rows[i]}, row of entry i; both triangles of the matrix must be given
   * @param columns {@code columns[i]}, its column
   * @param values {@code values[i]}
   */
  public static SparseSystem of(int size, int[] rows, int[] columns, double[] values) {
    if (rows.length != columns.length || rows.length != values.length) {
      throw new IllegalArgumentException(
          rows.length + " rows, " + columns.length + " columns, " + values.length + " values");
    }
    int[] start = new int[size + 1];
    for (int r : rows) {
      start[r + 1]++;
    }
    for (int i = 0; i < size; i++) {
      start[i + 1] += start[i];
    }
    int[] next = start.clone();
    int[] byRow = new int[rows.length];
    for (int i = 0; i < rows.length; i++) {
      byRow[next[rows[i]]++] = i;
    }
    int[] at = new int[size];
    Arrays.fill(at, -1);
    int[] column = new int[rows.length];
    double[] value = new double[rows.length];
    int[] rowStart = new int[size + 1];
    int n = 0;
    for (int r = 0; r < size; r++) {
      int first = n;
      for (int j = start[r]; j < start[r + 1]; j++) {
        int i = byRow[j];
        int c = columns[i];
        if (at[c] < first) {
          at[c] = n;
          column[n] = c;
          value[n++] = values[i];
        } else {
          value[at[c]] += values[i];
        }
      }
      rowStart[r + 1] = n;
    }
    return new SparseSystem(size, rowStart, Arrays.copyOf(column, n), Arrays.copyOf(value, n));
  }

  /** Number of unknowns. */
  public int size() {
    return size;
  }

  int begin(int row) {
    return rowStart[row];
  }

  int end(int row) {
    return rowStart[row + 1];
  }

  int column(int entry) {
    return column[entry];
  }

  double value(int entry) {
    return value[entry];
  }

  /** The product with a vector. */
  public double[] times(double[] x) {
    double[] y = new double[size];
    for (int r = 0; r < size; r++) {
      double sum = 0;
      for (int i = rowStart[r]; i < rowStart[r + 1]; i++) {
        sum += value[i] * x[column[i]];
      }
      y[r] = sum;
    }
    return y;
  }

  /**
   * Solves for one right side.
   *
   * @param start first guess
   * @param tolerance largest residual as a fraction of the right side's length
   * @throws IllegalStateException if it does not come down to that
   */
  public double[] solve(double[] rightSide, double[] start, double tolerance) {
    Aggregation aggregation = aggregation();
    double length = length(rightSide);
    if (length == 0) {
      return new double[size];
    }
    double[] x = start.clone();
    for (int round = 0; round < 3; round++) {
      double left = residual(rightSide, x);
      if (left <= tolerance * length) {
        return x;
      }
      ConjugateGradient solver =
          new ConjugateGradient(new IterationManager(MOST_STEPS), tolerance / 2, false);
      try {
        x =
            solver
                .solve(
                    operator(this::times),
                    operator(aggregation::cycle),
                    new ArrayRealVector(rightSide, false),
                    new ArrayRealVector(x, false))
                .toArray();
      } catch (MathIllegalStateException | MathIllegalArgumentException unfit) {
        throw new IllegalStateException(
            size + " unknowns: residual " + left / length + ": " + unfit.getMessage(), unfit);
      }
    }
    double left = residual(rightSide, x);
    if (left <= tolerance * length) {
      return x;
    }
    throw new IllegalStateException(
        size + " unknowns: residual " + left / length + ", " + tolerance + " asked");
  }

  private synchronized Aggregation aggregation() {
    if (aggregation == null) {
      aggregation = Aggregation.of(this);
    }
    return aggregation;
  }

  private double residual(double[] b, double[] x) {
    double[] r = times(x);
    for (int i = 0; i < size; i++) {
      r[i] = b[i] - r[i];
    }
    return length(r);
  }

  private static double length(double[] v) {
    double sum = 0;
    for (double c : v) {
      sum += c * c;
    }
    return Math.sqrt(sum);
  }

  private RealLinearOperator operator(java.util.function.UnaryOperator<double[]> apply) {
    return new RealLinearOperator() {
      @Override
      public int getRowDimension() {
        return size;
      }

      @Override
      public int getColumnDimension() {
        return size;
      }

      @Override
      public RealVector operate(RealVector x) {
        double[] v = x instanceof ArrayRealVector a ? a.getDataRef() : x.toArray();
        return new ArrayRealVector(apply.apply(v), false);
      }
    };
  }
}
