package org.amperskin.unroll;

import java.util.PriorityQueue;
import java.util.stream.IntStream;
import org.amperskin.geom.Vec3;
import org.amperskin.linear.SparseSystem;

/** Finds places in the plane for an opened patch. */
final class Layout {
  private static final int RIGID_ROUNDS = 12;
  private static final int EVEN_ROUNDS = 20;
  private static final double SOLVED = 1e-5;
  private static final double EXACT = 1e-7;

  /** Parts of the stretch that a round must take off to be worth another. */
  private static final double RIGID_STILL = 1e-3;

  private static final double EVEN_STILL = 3e-3;
  private static final double SMALLEST_WEIGHT = 1e-3;

  private final CutPatch cut;
  private final double[] flat;
  private double[] xy;
  private double ratio;
  private int folds;
  private double held;

  private Layout(CutPatch cut) {
    this.cut = cut;
    int n = cut.patch().size();
    flat = new double[3 * n];
    for (int i = 0; i < n; i++) {
      PlaneMap.Flat face = cut.patch().flat(i);
      flat[3 * i] = face.secondX();
      flat[3 * i + 1] = face.thirdX();
      flat[3 * i + 2] = face.thirdY();
    }
  }

  /** The first places, without any search for less stretch. */
  static Layout unfolded(CutPatch cut, int root) {
    Layout layout = new Layout(cut);
    layout.unfold(root);
    layout.judge();
    return layout;
  }

  /** The same with the least stretch that is found. */
  Layout relaxed() {
    if (!exact()) {
      relax();
    }
    return this;
  }

  /** True if lengths are kept to rounding. */
  boolean exact() {
    return folds == 0 && ratio - 1 < EXACT;
  }

  boolean sound() {
    return folds == 0;
  }

  int folds() {
    return folds;
  }

  double ratio() {
    return ratio;
  }

  /**
   * Unfolds face by face outward, nearest first. Each face's turn follows from its neighbours', so
   * that rounding adds up but does not multiply; where neighbours disagree their mean is taken.
   */
  private void unfold(int root) {
    int n = cut.patch().size();
    xy = new double[2 * cut.count()];
    boolean[] placed = new boolean[cut.count()];
    boolean[] done = new boolean[n];
    double[] turn = new double[2 * n];
    double[] far = new double[n];
    java.util.Arrays.fill(far, Double.POSITIVE_INFINITY);
    PriorityQueue<double[]> queue =
        new PriorityQueue<>(
            (p, q) -> p[0] != q[0] ? Double.compare(p[0], q[0]) : Double.compare(p[1], q[1]));
    far[root] = 0;
    queue.add(new double[] {0, root});
    while (!queue.isEmpty()) {
      int i = (int) queue.poll()[1];
      if (done[i]) {
        continue;
      }
      done[i] = true;
      turn(i, done, turn);
      place(i, placed, turn);
      for (int k = 0; k < 3; k++) {
        int j = cut.beside(i, k);
        if (j >= 0 && !done[j]) {
          double d = far[i] + cut.patch().middle(i).minus(cut.patch().middle(j)).length();
          if (d < far[j]) {
            far[j] = d;
            queue.add(new double[] {d, j});
          }
        }
      }
    }
  }

  /** Turn of face i as a unit complex number: the mean of what its done neighbours say. */
  private void turn(int i, boolean[] done, double[] turn) {
    double re = 0;
    double im = 0;
    for (int k = 0; k < 3; k++) {
      int j = cut.beside(i, k);
      if (j < 0 || !done[j]) {
        continue;
      }
      int m = 0;
      while (cut.beside(j, m) != i || cut.corner(j, (m + 1) % 3) != cut.corner(i, k)) {
        m++;
      }
      double hx = across(j, m) * across(i, k) + upward(j, m) * upward(i, k);
      double hy = upward(j, m) * across(i, k) - across(j, m) * upward(i, k);
      // The shared edge runs the other way in the neighbour; longer edges tell more.
      re -= turn[2 * j] * hx - turn[2 * j + 1] * hy;
      im -= turn[2 * j] * hy + turn[2 * j + 1] * hx;
    }
    double l = Math.hypot(re, im);
    turn[2 * i] = l > 0 ? re / l : 1;
    turn[2 * i + 1] = l > 0 ? im / l : 0;
  }

  private void place(int i, boolean[] placed, double[] turn) {
    boolean[] before = new boolean[3];
    for (int k = 0; k < 3; k++) {
      before[k] = placed[cut.corner(i, k)];
    }
    for (int k = 0; k < 3; k++) {
      if (before[k]) {
        continue;
      }
      double x = 0;
      double y = 0;
      int count = 0;
      for (int o = 0; o < 3; o++) {
        if (before[o]) {
          double dx = localX(i, k) - localX(i, o);
          double dy = localY(i, k) - localY(i, o);
          int v = cut.corner(i, o);
          x += xy[2 * v] + turn[2 * i] * dx - turn[2 * i + 1] * dy;
          y += xy[2 * v + 1] + turn[2 * i + 1] * dx + turn[2 * i] * dy;
          count++;
        }
      }
      if (count == 0) {
        x = localX(i, k);
        y = localY(i, k);
        count = 1;
      }
      set(cut.corner(i, k), x / count, y / count);
      placed[cut.corner(i, k)] = true;
    }
  }

  private PlaneMap.Flat flat(int i) {
    return new PlaneMap.Flat(flat[3 * i], flat[3 * i + 1], flat[3 * i + 2]);
  }

  private PlaneMap map(int i) {
    return cut.map(i, flat(i), xy);
  }

  private double localX(int i, int k) {
    return k == 0 ? 0 : flat[3 * i + k - 1];
  }

  private double localY(int i, int k) {
    return k == 2 ? flat[3 * i + 2] : 0;
  }

  private double across(int i, int k) {
    return localX(i, (k + 1) % 3) - localX(i, k);
  }

  private double upward(int i, int k) {
    return localY(i, (k + 1) % 3) - localY(i, k);
  }

  private void set(int v, double x, double y) {
    xy[2 * v] = x;
    xy[2 * v + 1] = y;
  }

  private void relax() {
    int n = cut.patch().size();
    double[] weight = new double[n];
    java.util.Arrays.fill(weight, 1);
    SparseSystem rigid = system(weight);
    double before = Double.POSITIVE_INFINITY;
    for (int round = 0; round < RIGID_ROUNDS; round++) {
      round(weight, rigid);
      judge();
      if (folds == 0 && still(before, ratio, RIGID_STILL)) {
        break;
      }
      before = ratio;
    }
    double[] best = xy.clone();
    double bestRatio = folds == 0 ? ratio : Double.POSITIVE_INFINITY;
    double[] s = new double[2];
    double[] far = new double[n];
    int rounds = folds == 0 ? EVEN_ROUNDS : EVEN_ROUNDS / 4;
    for (int round = 0; round < rounds; round++) {
      double worst = 0;
      for (int i = 0; i < n; i++) {
        map(i).stretches(s);
        far[i] = s[1] > 0 ? Math.max(Math.abs(Math.log(s[0])), Math.abs(Math.log(s[1]))) : 2;
        worst = Math.max(worst, far[i]);
      }
      if (worst < EXACT) {
        break;
      }
      double sum = 0;
      for (int i = 0; i < n; i++) {
        weight[i] *= SMALLEST_WEIGHT + far[i] / worst;
        sum += weight[i];
      }
      for (int i = 0; i < n; i++) {
        weight[i] = Math.max(SMALLEST_WEIGHT, weight[i] * n / sum);
      }
      round(weight, system(weight));
      judge();
      boolean slow = still(bestRatio, ratio, EVEN_STILL);
      if (folds == 0 && ratio < bestRatio) {
        bestRatio = ratio;
        best = xy.clone();
        if (slow) {
          break;
        }
      }
    }
    xy = best;
    judge();
  }

  /** True if a round took next to nothing off the stretch. */
  private static boolean still(double before, double now, double share) {
    return before < Double.POSITIVE_INFINITY && before - now < share * (now - 1);
  }

  /** Weighted cotangent Laplacian, one corner held. */
  private SparseSystem system(double[] weight) {
    int n = cut.patch().size();
    int[] rows = new int[12 * n + 1];
    int[] columns = new int[12 * n + 1];
    double[] values = new double[12 * n + 1];
    int e = 0;
    held = 0;
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 3; k++) {
        double cot = weight[i] * cotangent(i, k);
        int a = cut.corner(i, k);
        int b = cut.corner(i, (k + 1) % 3);
        e = entry(rows, columns, values, e, a, a, cot);
        e = entry(rows, columns, values, e, b, b, cot);
        e = entry(rows, columns, values, e, a, b, -cot);
        e = entry(rows, columns, values, e, b, a, -cot);
        held = Math.max(held, Math.abs(cot));
      }
    }
    entry(rows, columns, values, e, 0, 0, held);
    return SparseSystem.of(cut.count(), rows, columns, values);
  }

  /** Half the cotangent of the angle across from edge k of face i. */
  private double cotangent(int i, int k) {
    int o = (k + 2) % 3;
    int p = (k + 1) % 3;
    double ax = localX(i, k) - localX(i, o);
    double ay = localY(i, k) - localY(i, o);
    double bx = localX(i, p) - localX(i, o);
    double by = localY(i, p) - localY(i, o);
    return (ax * bx + ay * by) / (2 * flat[3 * i] * flat[3 * i + 2]);
  }

  /** Turns each face rigidly to where it lies, then joins them by least squares. */
  private void round(double[] weight, SparseSystem system) {
    int n = cut.patch().size();
    int size = cut.count();
    double[][] sides = new double[2][size];
    for (int i = 0; i < n; i++) {
      PlaneMap m = map(i);
      double c = m.m0() + m.m3();
      double s = m.m2() - m.m1();
      double l = Math.hypot(c, s);
      c = l > 0 ? c / l : 1;
      s = l > 0 ? s / l : 0;
      for (int k = 0; k < 3; k++) {
        int p = (k + 1) % 3;
        double cot = weight[i] * cotangent(i, k);
        int a = cut.corner(i, k);
        int b = cut.corner(i, p);
        double dx = localX(i, k) - localX(i, p);
        double dy = localY(i, k) - localY(i, p);
        double tx = cot * (c * dx - s * dy);
        double ty = cot * (s * dx + c * dy);
        sides[0][a] += tx;
        sides[1][a] += ty;
        sides[0][b] -= tx;
        sides[1][b] -= ty;
      }
    }
    double[][] places = new double[2][size];
    for (int v = 0; v < size; v++) {
      places[0][v] = xy[2 * v];
      places[1][v] = xy[2 * v + 1];
    }
    // Across and upward do not know of each other: the same bytes in any order.
    IntStream.range(0, 2)
        .parallel()
        .forEach(
            k -> {
              sides[k][0] += held * xy[k];
              places[k] = system.solve(sides[k], places[k], SOLVED);
            });
    for (int v = 0; v < size; v++) {
      set(v, places[0][v], places[1][v]);
    }
  }

  private static int entry(
      int[] rows, int[] columns, double[] values, int at, int r, int c, double v) {
    rows[at] = r;
    columns[at] = c;
    values[at] = v;
    return at + 1;
  }

  /** Scales so that the largest and the smallest stretch are equally far from 1, and looks. */
  private void judge() {
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    folds = 0;
    double[] s = new double[2];
    for (int i = 0; i < cut.patch().size(); i++) {
      map(i).stretches(s);
      if (!(s[1] > 0)) {
        folds++;
      } else {
        low = Math.min(low, s[1]);
      }
      high = Math.max(high, s[0]);
    }
    if (folds > 0) {
      ratio = Double.POSITIVE_INFINITY;
      return;
    }
    ratio = high / low;
    double scale = ratio - 1 < EXACT ? 1 : 1 / Math.sqrt(high * low);
    for (int v = 0; v < xy.length; v++) {
      xy[v] *= scale;
    }
  }

  /** The places, moved and turned so that {@code centre} is the origin and {@code up} upright. */
  double[] upright(int root, Vec3 centre, Vec3 up) {
    Patch patch = cut.patch();
    PlaneMap m = map(root);
    PlaneMap.Flat face = flat(root);
    Vec3 a = patch.point(patch.corner(root, 0));
    Vec3 e = patch.point(patch.corner(root, 1)).minus(a).unit();
    double[] normal = patch.mesh().unitNormal(patch.face(root));
    Vec3 n = new Vec3(normal[0], normal[1], normal[2]);
    Vec3 g = n.cross(e);
    Vec3 middle = patch.middle(root);
    Vec3 to = centre.minus(a);
    // A centre beside the face would be extrapolated: its middle is taken instead.
    if (centre.minus(middle).length()
        > 2 * Math.max(face.secondX(), Math.hypot(face.thirdX(), face.thirdY()))) {
      to = middle.minus(a);
    }
    double lx = to.dot(e);
    double ly = to.dot(g);
    int first = cut.corner(root, 0);
    double ox = xy[2 * first] + m.m0() * lx + m.m1() * ly;
    double oy = xy[2 * first + 1] + m.m2() * lx + m.m3() * ly;
    double ux = m.m0() * up.dot(e) + m.m1() * up.dot(g);
    double uy = m.m2() * up.dot(e) + m.m3() * up.dot(g);
    double l = Math.hypot(ux, uy);
    if (l < 1e-6) {
      throw new IllegalArgumentException(
          "up points square out of the patch at its centre: name another 'up'");
    }
    double c = uy / l;
    double s = ux / l;
    double[] out = new double[xy.length];
    for (int v = 0; v < cut.count(); v++) {
      double x = xy[2 * v] - ox;
      double y = xy[2 * v + 1] - oy;
      out[2 * v] = c * x - s * y;
      out[2 * v + 1] = s * x + c * y;
    }
    return out;
  }
}
