package org.amperskin.mesh;

import static org.amperskin.geom.Predicates.UNSURE;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.amperskin.geom.BoxTree;
import org.amperskin.geom.Predicates;

/**
 * Finds faces that pass through each other or lie on each other.
 *
 * <p>Definition: two faces cross if an edge of one passes through the other; they lie on each other
 * if they share a plane and an area in it. Neighbours count if they fold through each other.
 *
 * <p>They touch if they are neither and not neighbours, but share a stretch of an edge: surfaces
 * that pass through each other just there part the fluid.
 *
 * <p>Guaranteed: no false pair (exact predicates); the same pairs on any number of threads. Not
 * guaranteed: faces that share but a point are no pair; of nearly coplanar faces that touch some
 * may be missing.
 *
 * <p>Method: pairs of boxes that meet; quick signs first, then a line in the face's plane that
 * parts the two, and only then exact arithmetic, which planar parts would otherwise need
 * everywhere.
 *
 * <p>Cost: about 0.5 s a million clean faces on two threads.
 */
final class OverlapSearch {
  private static final int ON = 1;
  private static final int APART = 0;
  private static final int MOST_PAIRS = 1 << 26;

  private final SurfaceMesh mesh;
  private final double[] p;
  private final boolean[] skip;

  private OverlapSearch(SurfaceMesh mesh, boolean[] skip) {
    this.mesh = mesh;
    this.p = mesh.positions();
    this.skip = skip;
  }

  /**
   * Searches all faces but those in {@code skip}.
   *
   * @param skip {@code skip[f]}, faces to leave out (duplicates, degenerates)
   */
  static Pairs of(SurfaceMesh mesh, BoxTree tree, boolean[] skip) {
    OverlapSearch search = new OverlapSearch(mesh, skip);
    Found[] crossing = new Found[tree.pairParts()];
    Found[] touching = new Found[tree.pairParts()];
    IntStream.range(0, crossing.length)
        .parallel()
        .forEach(
            part -> {
              Found crosses = new Found();
              Found touches = new Found();
              tree.pairs(
                  part,
                  (f, g) -> {
                    if (skip[f] || skip[g]) {
                      return;
                    }
                    if (search.overlap(f, g)) {
                      crosses.add(f, g);
                    } else if (search.touch(f, g)) {
                      touches.add(f, g);
                    }
                  });
              crossing[part] = crosses;
              touching[part] = touches;
            });
    return new Pairs(joined(crossing), joined(touching));
  }

  /**
   * What was found.
   *
   * @param crossings faces that cross or lie on each other
   * @param touches faces that share a stretch of an edge
   */
  record Pairs(FacePairs crossings, FacePairs touches) {}

  private static FacePairs joined(Found[] found) {
    long total = 0;
    for (Found part : found) {
      total += part.count;
    }
    long[] pairs = new long[(int) Math.min(total, MOST_PAIRS)];
    int to = 0;
    for (Found part : found) {
      int n = Math.min(part.count, pairs.length - to);
      System.arraycopy(part.pairs, 0, pairs, to, n);
      to += n;
    }
    return FacePairs.of(pairs, total <= MOST_PAIRS);
  }

  /** Pairs found by one part of the search. */
  private static final class Found {
    private long[] pairs = new long[0];
    private int count;

    void add(int f, int g) {
      if (count == pairs.length) {
        pairs = Arrays.copyOf(pairs, Math.max(64, 2 * count));
      }
      pairs[count++] = FacePairs.pack(f, g);
    }
  }

  private boolean overlap(int f, int g) {
    int[] c = mesh.corners();
    int a0 = c[3 * f];
    int a1 = c[3 * f + 1];
    int a2 = c[3 * f + 2];
    int b0 = c[3 * g];
    int b1 = c[3 * g + 1];
    int b2 = c[3 * g + 2];
    boolean s0 = a0 == b0 || a0 == b1 || a0 == b2;
    boolean s1 = a1 == b0 || a1 == b1 || a1 == b2;
    boolean s2 = a2 == b0 || a2 == b1 || a2 == b2;
    int shared = (s0 ? 1 : 0) + (s1 ? 1 : 0) + (s2 ? 1 : 0);
    if (shared == 0) {
      return overlapApart(a0, a1, a2, b0, b1, b2);
    }
    if (shared == 3) {
      return false;
    }
    // Turn both so that the common corner, or the corner off the common edge, comes first.
    int turnA = shared == 1 ? (s0 ? 0 : s1 ? 1 : 2) : (!s0 ? 0 : !s1 ? 1 : 2);
    boolean t0 = b0 == a0 || b0 == a1 || b0 == a2;
    boolean t1 = b1 == a0 || b1 == a1 || b1 == a2;
    boolean t2 = b2 == a0 || b2 == a1 || b2 == a2;
    int turnB = shared == 1 ? (t0 ? 0 : t1 ? 1 : 2) : (!t0 ? 0 : !t1 ? 1 : 2);
    int u0 = c[3 * f + turnA];
    int u1 = c[3 * f + (turnA + 1) % 3];
    int u2 = c[3 * f + (turnA + 2) % 3];
    int v0 = c[3 * g + turnB];
    int v1 = c[3 * g + (turnB + 1) % 3];
    int v2 = c[3 * g + (turnB + 2) % 3];
    return shared == 1 ? foldAtCorner(u0, u1, u2, v0, v1, v2) : foldAtEdge(u0, u1, u2, v0);
  }

  /** Faces with a common edge u1, u2: they lie on each other if folded flat. */
  private boolean foldAtEdge(int u0, int u1, int u2, int v0) {
    int quick = Predicates.quickOrient3d(p, u0, u1, u2, v0);
    if (quick == 1 || quick == -1) {
      return false;
    }
    int drop = dominantAxis(u0, u1, u2);
    int own = quickTurn(drop, u1, u2, u0);
    int other = quickTurn(drop, u1, u2, v0);
    if (own != UNSURE && other != UNSURE && own != other) {
      return false;
    }
    return turn(drop, u1, u2, u0) == turn(drop, u1, u2, v0)
        && Predicates.orient3d(p, u0, u1, u2, v0) == 0;
  }

  /** Faces with the common corner u0 = v0. */
  private boolean foldAtCorner(int u0, int u1, int u2, int v0, int v1, int v2) {
    int qu1 = Predicates.quickOrient3d(p, v0, v1, v2, u1);
    int qu2 = Predicates.quickOrient3d(p, v0, v1, v2, u2);
    if (qu1 == qu2 && (qu1 == 1 || qu1 == -1)) {
      return false;
    }
    int qv1 = Predicates.quickOrient3d(p, u0, u1, u2, v1);
    int qv2 = Predicates.quickOrient3d(p, u0, u1, u2, v2);
    if (qv1 == qv2 && (qv1 == 1 || qv1 == -1)) {
      return false;
    }
    boolean unsure = qu1 == UNSURE || qu2 == UNSURE || qv1 == UNSURE || qv2 == UNSURE;
    boolean flat = qu1 == 0 && qu2 == 0;
    if ((unsure || flat) && parted(u0, u1, u2, v0, v1, v2)) {
      return false;
    }
    int su1 = Predicates.orient3d(p, v0, v1, v2, u1);
    int su2 = Predicates.orient3d(p, v0, v1, v2, u2);
    if (su1 == 0 && su2 == 0) {
      return overlapInPlane(u0, u1, u2, v0, v1, v2);
    }
    int sv1 = Predicates.orient3d(p, u0, u1, u2, v1);
    int sv2 = Predicates.orient3d(p, u0, u1, u2, v2);
    return passes(u1, u2, su1 * su2, v0, v1, v2) || passes(v1, v2, sv1 * sv2, u0, u1, u2);
  }

  private boolean overlapApart(int a0, int a1, int a2, int b0, int b1, int b2) {
    int qa0 = Predicates.quickOrient3d(p, b0, b1, b2, a0);
    int qa1 = Predicates.quickOrient3d(p, b0, b1, b2, a1);
    int qa2 = Predicates.quickOrient3d(p, b0, b1, b2, a2);
    if (sameSide(qa0, qa1, qa2)) {
      return false;
    }
    int qb0 = Predicates.quickOrient3d(p, a0, a1, a2, b0);
    int qb1 = Predicates.quickOrient3d(p, a0, a1, a2, b1);
    int qb2 = Predicates.quickOrient3d(p, a0, a1, a2, b2);
    if (sameSide(qb0, qb1, qb2)) {
      return false;
    }
    boolean unsure = qa0 == UNSURE || qa1 == UNSURE || qa2 == UNSURE || qb0 == UNSURE;
    unsure |= qb1 == UNSURE || qb2 == UNSURE;
    boolean flat = qa0 == 0 && qa1 == 0 && qa2 == 0;
    if ((unsure || flat) && parted(a0, a1, a2, b0, b1, b2)) {
      return false;
    }
    int sa0 = Predicates.orient3d(p, b0, b1, b2, a0);
    int sa1 = Predicates.orient3d(p, b0, b1, b2, a1);
    int sa2 = Predicates.orient3d(p, b0, b1, b2, a2);
    if (sa0 == 0 && sa1 == 0 && sa2 == 0) {
      return overlapInPlane(a0, a1, a2, b0, b1, b2);
    }
    int sb0 = Predicates.orient3d(p, a0, a1, a2, b0);
    int sb1 = Predicates.orient3d(p, a0, a1, a2, b1);
    int sb2 = Predicates.orient3d(p, a0, a1, a2, b2);
    return passes(a0, a1, sa0 * sa1, b0, b1, b2)
        || passes(a1, a2, sa1 * sa2, b0, b1, b2)
        || passes(a2, a0, sa2 * sa0, b0, b1, b2)
        || passes(b0, b1, sb0 * sb1, a0, a1, a2)
        || passes(b1, b2, sb1 * sb2, a0, a1, a2)
        || passes(b2, b0, sb2 * sb0, a0, a1, a2);
  }

  /** True if two faces that do not cross share a stretch of an edge and are not neighbours. */
  private boolean touch(int f, int g) {
    int[] c = mesh.corners();
    int shared = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        shared += c[3 * f + i] == c[3 * g + j] ? 1 : 0;
      }
    }
    if (shared >= 2) {
      return false;
    }
    int first = edgeOn(3 * f, 3 * g);
    return first == ON || first == UNSURE && edgeOn(3 * g, 3 * f) == ON;
  }

  /**
   * {@link #ON} if just one edge of the face at f lies in the plane of the face at g, and on it;
   * {@link #APART} if f lies beside that plane, save for one corner; else unsure.
   */
  private int edgeOn(int f, int g) {
    int[] c = mesh.corners();
    int a = c[g];
    int b = c[g + 1];
    int d = c[g + 2];
    int off = -1;
    int level = 0;
    int sides = 0;
    int[] quick = new int[3];
    for (int i = 0; i < 3; i++) {
      int v = c[f + i];
      quick[i] = v == a || v == b || v == d ? 0 : Predicates.quickOrient3d(p, a, b, d, v);
      if (quick[i] == 1 || quick[i] == -1) {
        off = i;
        sides += quick[i];
      } else {
        level++;
      }
    }
    if (level < 2 && Math.abs(sides) == 3 - level) {
      return APART;
    }
    if (level != 2) {
      return UNSURE;
    }
    int u = c[f + (off + 1) % 3];
    int v = c[f + (off + 2) % 3];
    int drop = dominantAxis(a, b, d);
    // in the plane's own view most stretches miss the face, which spares the exact question
    boolean on =
        runsOver(drop, u, v, turned(drop, a, b, d))
            && (quick[(off + 1) % 3] == 0 || Predicates.orient3d(p, a, b, d, u) == 0)
            && (quick[(off + 2) % 3] == 0 || Predicates.orient3d(p, a, b, d, v) == 0);
    return on ? ON : UNSURE;
  }

  /** True if the stretch from u to v shares more than a point with a triangle of its plane. */
  private boolean runsOver(int drop, int u, int v, int[] t) {
    for (int k = 0; k < 3; k++) {
      int tu = turn(drop, t[k], t[(k + 1) % 3], u);
      int tv = turn(drop, t[k], t[(k + 1) % 3], v);
      if (tu == 0 && tv == 0) {
        return overlapOnLine(drop, u, v, t[k], t[(k + 1) % 3]);
      }
      if (tu <= 0 && tv <= 0) {
        return false;
      }
    }
    int low = 0;
    int high = 0;
    for (int k = 0; k < 3; k++) {
      int side = turn(drop, u, v, t[k]);
      low += side < 0 ? 1 : 0;
      high += side > 0 ? 1 : 0;
    }
    return low > 0 && high > 0;
  }

  /** True if two stretches of one line share more than a point; exact, by one coordinate. */
  private boolean overlapOnLine(int drop, int a, int b, int c, int d) {
    int i = (drop + 1) % 3;
    int j = (drop + 2) % 3;
    int k = Math.abs(p[3 * d + i] - p[3 * c + i]) >= Math.abs(p[3 * d + j] - p[3 * c + j]) ? i : j;
    double low =
        Math.max(Math.min(p[3 * a + k], p[3 * b + k]), Math.min(p[3 * c + k], p[3 * d + k]));
    double high =
        Math.min(Math.max(p[3 * a + k], p[3 * b + k]), Math.max(p[3 * c + k], p[3 * d + k]));
    return high > low;
  }

  private static boolean sameSide(int s0, int s1, int s2) {
    return s0 == s1 && s1 == s2 && (s0 == 1 || s0 == -1);
  }

  private boolean passes(int u, int v, int sides, int a, int b, int c) {
    if (sides >= 0) {
      return false;
    }
    int s0 = Predicates.orient3d(p, u, v, a, b);
    int s1 = Predicates.orient3d(p, u, v, b, c);
    int s2 = Predicates.orient3d(p, u, v, c, a);
    // Through a corner does not count: bodies that touch along an edge meet so.
    int zeros = (s0 == 0 ? 1 : 0) + (s1 == 0 ? 1 : 0) + (s2 == 0 ? 1 : 0);
    boolean oneSense = s0 >= 0 && s1 >= 0 && s2 >= 0 || s0 <= 0 && s1 <= 0 && s2 <= 0;
    return oneSense && zeros < 2;
  }

  /** True if, seen along an axis, a line surely parts the two: no exact arithmetic. */
  private boolean parted(int a0, int a1, int a2, int b0, int b1, int b2) {
    int drop = dominantAxis(a0, a1, a2);
    int turnA = quickTurn(drop, a0, a1, a2);
    int turnB = quickTurn(drop, b0, b1, b2);
    return (turnA == 1 || turnA == -1)
        && (turnB == 1 || turnB == -1)
        && (partedBy(drop, turnA, a0, a1, a2, b0, b1, b2)
            || partedBy(drop, turnB, b0, b1, b2, a0, a1, a2));
  }

  private boolean partedBy(int drop, int sense, int a0, int a1, int a2, int b0, int b1, int b2) {
    return beyond(drop, sense, a0, a1, b0, b1, b2)
        || beyond(drop, sense, a1, a2, b0, b1, b2)
        || beyond(drop, sense, a2, a0, b0, b1, b2);
  }

  private boolean beyond(int drop, int sense, int u, int v, int b0, int b1, int b2) {
    return outer(quickTurn(drop, u, v, b0), sense)
        && outer(quickTurn(drop, u, v, b1), sense)
        && outer(quickTurn(drop, u, v, b2), sense);
  }

  private static boolean outer(int turn, int sense) {
    return turn != UNSURE && turn * sense <= 0;
  }

  private boolean overlapInPlane(int a0, int a1, int a2, int b0, int b1, int b2) {
    int drop = dominantAxis(a0, a1, a2);
    int[] a = turned(drop, a0, a1, a2);
    int[] b = turned(drop, b0, b1, b2);
    return !separates(drop, a, b) && !separates(drop, b, a);
  }

  private int[] turned(int drop, int u, int v, int w) {
    return turn(drop, u, v, w) >= 0 ? new int[] {u, v, w} : new int[] {u, w, v};
  }

  private boolean separates(int drop, int[] a, int[] b) {
    for (int i = 0; i < 3; i++) {
      int u = a[i];
      int v = a[(i + 1) % 3];
      if (turn(drop, u, v, b[0]) <= 0
          && turn(drop, u, v, b[1]) <= 0
          && turn(drop, u, v, b[2]) <= 0) {
        return true;
      }
    }
    return false;
  }

  private int turn(int drop, int u, int v, int w) {
    if (u == w || v == w || u == v) {
      return 0;
    }
    int i = (drop + 1) % 3;
    int j = (drop + 2) % 3;
    return Predicates.orient2d(
        p[3 * u + i], p[3 * u + j], p[3 * v + i], p[3 * v + j], p[3 * w + i], p[3 * w + j]);
  }

  private int quickTurn(int drop, int u, int v, int w) {
    if (u == w || v == w || u == v) {
      return 0;
    }
    int i = (drop + 1) % 3;
    int j = (drop + 2) % 3;
    return Predicates.quickOrient2d(
        p[3 * u + i], p[3 * u + j], p[3 * v + i], p[3 * v + j], p[3 * w + i], p[3 * w + j]);
  }

  private int dominantAxis(int a, int b, int c) {
    int best = 0;
    double most = -1;
    for (int k = 0; k < 3; k++) {
      int i = (k + 1) % 3;
      int j = (k + 2) % 3;
      double n =
          Math.abs(
              (p[3 * b + i] - p[3 * a + i]) * (p[3 * c + j] - p[3 * a + j])
                  - (p[3 * b + j] - p[3 * a + j]) * (p[3 * c + i] - p[3 * a + i]));
      if (n > most) {
        most = n;
        best = k;
      }
    }
    return best;
  }
}
