package org.amperskin.linear;

/**
 * A multigrid V-cycle by aggregation: unknowns are joined with their strongest neighbours, twice in
 * pairs from level to level.
 *
 * <p>Method: plain pairwise aggregation after Y. Notay, An aggregation-based algebraic multigrid
 * method, ETNA 37 (2010) 123 (from memory), one symmetric Gauss-Seidel sweep before and after, the
 * coarse correction taken {@value #OVER} times. It is symmetric and positive, so conjugate
 * gradients may use it.
 */
final class Aggregation {
  private static final double OVER = 1.5;
  private static final int SMALL = 40;
  private static final int COARSE_SWEEPS = 30;

  private final SparseSystem fine;
  private final int[] group;
  private final Aggregation coarse;

  private Aggregation(SparseSystem fine, int[] group, Aggregation coarse) {
    this.fine = fine;
    this.group = group;
    this.coarse = coarse;
  }

  static Aggregation of(SparseSystem fine) {
    if (fine.size() <= SMALL) {
      return new Aggregation(fine, new int[0], null);
    }
    int[] first = pairs(fine);
    SparseSystem middle = joined(fine, first);
    int[] second = pairs(middle);
    int[] group = new int[fine.size()];
    for (int i = 0; i < group.length; i++) {
      group[i] = second[first[i]];
    }
    SparseSystem small = joined(middle, second);
    if (small.size() > 0.9 * fine.size()) {
      return new Aggregation(fine, new int[0], null);
    }
    return new Aggregation(fine, group, of(small));
  }

  /** Joins each unknown with its most strongly coupled free neighbour. */
  private static int[] pairs(SparseSystem a) {
    int n = a.size();
    int[] group = new int[n];
    java.util.Arrays.fill(group, -1);
    int groups = 0;
    for (int i = 0; i < n; i++) {
      if (group[i] >= 0) {
        continue;
      }
      int best = -1;
      double strongest = 0;
      for (int e = a.begin(i); e < a.end(i); e++) {
        int j = a.column(e);
        if (j != i && group[j] < 0 && -a.value(e) > strongest) {
          strongest = -a.value(e);
          best = j;
        }
      }
      group[i] = groups;
      if (best >= 0) {
        group[best] = groups;
      }
      groups++;
    }
    return group;
  }

  private static SparseSystem joined(SparseSystem a, int[] group) {
    int entries = a.end(a.size() - 1);
    int[] rows = new int[entries];
    int[] columns = new int[entries];
    double[] values = new double[entries];
    int groups = 0;
    for (int i = 0; i < a.size(); i++) {
      groups = Math.max(groups, group[i] + 1);
      for (int e = a.begin(i); e < a.end(i); e++) {
        rows[e] = group[i];
        columns[e] = group[a.column(e)];
        values[e] = a.value(e);
      }
    }
    return SparseSystem.of(groups, rows, columns, values);
  }

  /** One cycle from zero. */
  double[] cycle(double[] b) {
    double[] x = new double[b.length];
    if (coarse == null) {
      for (int i = 0; i < COARSE_SWEEPS; i++) {
        forward(b, x);
        backward(b, x);
      }
      return x;
    }
    forward(b, x);
    double[] r = fine.times(x);
    double[] small = new double[coarse.fine.size()];
    for (int i = 0; i < r.length; i++) {
      small[group[i]] += b[i] - r[i];
    }
    double[] correction = coarse.cycle(small);
    for (int i = 0; i < x.length; i++) {
      x[i] += OVER * correction[group[i]];
    }
    backward(b, x);
    return x;
  }

  private void forward(double[] b, double[] x) {
    for (int i = 0; i < x.length; i++) {
      relax(b, x, i);
    }
  }

  private void backward(double[] b, double[] x) {
    for (int i = x.length - 1; i >= 0; i--) {
      relax(b, x, i);
    }
  }

  private void relax(double[] b, double[] x, int i) {
    double sum = b[i];
    double diagonal = 0;
    for (int e = fine.begin(i); e < fine.end(i); e++) {
      int j = fine.column(e);
      if (j == i) {
        diagonal = fine.value(e);
      } else {
        sum -= fine.value(e) * x[j];
      }
    }
    if (diagonal > 0) {
      x[i] = sum / diagonal;
    }
  }
}
