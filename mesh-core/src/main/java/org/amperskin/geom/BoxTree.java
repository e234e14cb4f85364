package org.amperskin.geom;

import java.util.stream.IntStream;

/**
 * A bounding-volume tree over triangles.
 *
 * <p>Definition: the triangles are sorted along a Morton curve through their box centres, cut into
 * leaves of {@value #LEAF} and bounded bottom-up; node {@code i} has children {@code 2i} and {@code
 * 2i+1}, the root is 1.
 *
 * <p>Guaranteed: node boxes enclose their triangles (rounded outward to floats); the same input
 * gives the same tree. Not guaranteed: tight boxes for triangles of very different size.
 *
 * <p>Method and source: G. M. Morton, 1966; C. Lauterbach et al., Fast BVH Construction on GPUs,
 * Computer Graphics Forum 28 (2009), from memory.
 *
 * <p>Cost: linear in the number of triangles; about 50 bytes a triangle while building, 42 kept.
 */
public final class BoxTree {
  /** Triangles in a leaf. */
  static final int LEAF = 4;

  private static final int RADIX_BITS = 10;

  private static final int BLOCK = 4096;

  private final int[] order;
  private final int leaves;
  private final float[] boxes;
  private final float[] faceBoxes;

  /** Receives pairs of triangles whose boxes meet. */
  public interface PairVisitor {
    /** Called once for each pair, smaller index first. */
    void pair(int faceA, int faceB);
  }

  /** Receives triangles whose box meets a line or holds a point. */
  public interface FaceVisitor {
    /** Called once for each triangle. */
    void face(int face);
  }

  private BoxTree(int[] order, int leaves, float[] boxes, float[] faceBoxes) {
    this.order = order;
    this.leaves = leaves;
    this.boxes = boxes;
    this.faceBoxes = faceBoxes;
  }

  /**
   * Builds the tree.
   *
   * @param positions {@code positions[3*v+k]}, mm
   * @param corners {@code corners[3*f+k]}, vertex indices
   */
  public static BoxTree of(double[] positions, int[] corners) {
    int faces = corners.length / 3;
    int[] order = mortonOrder(positions, corners);
    int needed = Math.max(1, (faces + LEAF - 1) / LEAF);
    int below = Integer.highestOneBit(needed);
    int leaves = below < needed ? below << 1 : below;
    float[] faceBoxes = new float[6 * faces];
    float[] boxes = new float[12 * leaves];
    BoxTree tree = new BoxTree(order, leaves, boxes, faceBoxes);
    int blocks = (leaves + BLOCK - 1) / BLOCK;
    IntStream.range(0, blocks)
        .parallel()
        .forEach(
            b -> {
              for (int l = b * BLOCK; l < Math.min(leaves, (b + 1) * BLOCK); l++) {
                tree.boundLeaf(positions, corners, l);
              }
            });
    for (int n = leaves - 1; n >= 1; n--) {
      for (int k = 0; k < 3; k++) {
        boxes[6 * n + k] = Math.min(boxes[12 * n + k], boxes[12 * n + 6 + k]);
        boxes[6 * n + 3 + k] = Math.max(boxes[12 * n + 3 + k], boxes[12 * n + 9 + k]);
      }
    }
    return tree;
  }

  private void boundLeaf(double[] positions, int[] corners, int leaf) {
    int node = 6 * (leaves + leaf);
    int end = Math.min(order.length, (leaf + 1) * LEAF);
    for (int k = 0; k < 3; k++) {
      float low = Float.POSITIVE_INFINITY;
      float high = Float.NEGATIVE_INFINITY;
      for (int i = leaf * LEAF; i < end; i++) {
        int c = 3 * order[i];
        double u = positions[3 * corners[c] + k];
        double v = positions[3 * corners[c + 1] + k];
        double w = positions[3 * corners[c + 2] + k];
        float min = down(Math.min(u, Math.min(v, w)));
        float max = up(Math.max(u, Math.max(v, w)));
        faceBoxes[6 * i + k] = min;
        faceBoxes[6 * i + 3 + k] = max;
        low = Math.min(low, min);
        high = Math.max(high, max);
      }
      boxes[node + k] = low;
      boxes[node + 3 + k] = high;
    }
  }

  private static float down(double v) {
    float f = (float) v;
    return f > v ? Math.nextDown(f) : f;
  }

  private static float up(double v) {
    float f = (float) v;
    return f < v ? Math.nextUp(f) : f;
  }

  private static int[] mortonOrder(double[] positions, int[] corners) {
    int faces = corners.length / 3;
    Box box = Box.around(positions);
    double side = box.longestSide();
    double scale = side > 0 ? 1023.999 / side : 0;
    int[] keys = new int[faces];
    int[] order = new int[faces];
    for (int f = 0; f < faces; f++) {
      int a = 3 * corners[3 * f];
      int b = 3 * corners[3 * f + 1];
      int c = 3 * corners[3 * f + 2];
      int x = cell((positions[a] + positions[b] + positions[c]) / 3 - box.minX(), scale);
      int y =
          cell((positions[a + 1] + positions[b + 1] + positions[c + 1]) / 3 - box.minY(), scale);
      int z =
          cell((positions[a + 2] + positions[b + 2] + positions[c + 2]) / 3 - box.minZ(), scale);
      keys[f] = spread(x) | spread(y) << 1 | spread(z) << 2;
      order[f] = f;
    }
    return radixSort(keys, order);
  }

  private static int cell(double offset, double scale) {
    return Math.max(0, Math.min(1023, (int) (offset * scale)));
  }

  private static int spread(int v) {
    int r = v & 0x3ff;
    r = (r | r << 16) & 0x030000ff;
    r = (r | r << 8) & 0x0300f00f;
    r = (r | r << 4) & 0x030c30c3;
    return (r | r << 2) & 0x09249249;
  }

  private static int[] radixSort(int[] keys, int[] order) {
    int n = keys.length;
    int[] keysIn = keys;
    int[] orderIn = order;
    int[] keysOut = new int[n];
    int[] orderOut = new int[n];
    int buckets = 1 << RADIX_BITS;
    for (int pass = 0; pass < 3; pass++) {
      int shift = pass * RADIX_BITS;
      int[] start = new int[buckets + 1];
      for (int i = 0; i < n; i++) {
        start[(keysIn[i] >>> shift & buckets - 1) + 1]++;
      }
      for (int b = 0; b < buckets; b++) {
        start[b + 1] += start[b];
      }
      for (int i = 0; i < n; i++) {
        int to = start[keysIn[i] >>> shift & buckets - 1]++;
        keysOut[to] = keysIn[i];
        orderOut[to] = orderIn[i];
      }
      int[] k = keysIn;
      keysIn = keysOut;
      keysOut = k;
      int[] o = orderIn;
      orderIn = orderOut;
      orderOut = o;
    }
    return orderIn;
  }

  /**
   * Visits every pair of triangles whose boxes meet, one part of the work after another.
   *
   * @param part which part, 0 to {@link #pairParts()} - 1; parts may run on different threads
   */
  public void pairs(int part, PairVisitor visitor) {
    int top = topNodes();
    int a = part / top;
    int b = part % top;
    if (a <= b) {
      descend(top + a, top + b, visitor);
    }
  }

  /** Number of independent parts of the pair search. */
  public int pairParts() {
    return topNodes() * topNodes();
  }

  private int topNodes() {
    return Math.min(leaves, 32);
  }

  private void descend(int a, int b, PairVisitor visitor) {
    if (!meet(a, b)) {
      return;
    }
    if (a >= leaves) {
      leafPairs(a - leaves, b - leaves, visitor);
    } else if (a == b) {
      descend(2 * a, 2 * a, visitor);
      descend(2 * a, 2 * a + 1, visitor);
      descend(2 * a + 1, 2 * a + 1, visitor);
    } else {
      descend(2 * a, 2 * b, visitor);
      descend(2 * a, 2 * b + 1, visitor);
      descend(2 * a + 1, 2 * b, visitor);
      descend(2 * a + 1, 2 * b + 1, visitor);
    }
  }

  private boolean meet(int a, int b) {
    int i = 6 * a;
    int j = 6 * b;
    return boxes[i] <= boxes[j + 3]
        && boxes[j] <= boxes[i + 3]
        && boxes[i + 1] <= boxes[j + 4]
        && boxes[j + 1] <= boxes[i + 4]
        && boxes[i + 2] <= boxes[j + 5]
        && boxes[j + 2] <= boxes[i + 5];
  }

  private void leafPairs(int la, int lb, PairVisitor visitor) {
    float[] s = faceBoxes;
    int endA = Math.min(order.length, (la + 1) * LEAF);
    int endB = Math.min(order.length, (lb + 1) * LEAF);
    for (int i = la * LEAF; i < endA; i++) {
      int p = 6 * i;
      for (int j = la == lb ? i + 1 : lb * LEAF; j < endB; j++) {
        int q = 6 * j;
        if (s[p] <= s[q + 3]
            && s[q] <= s[p + 3]
            && s[p + 1] <= s[q + 4]
            && s[q + 1] <= s[p + 4]
            && s[p + 2] <= s[q + 5]
            && s[q + 2] <= s[p + 5]) {
          visitor.pair(Math.min(order[i], order[j]), Math.max(order[i], order[j]));
        }
      }
    }
  }

  /**
   * Visits the triangles whose boxes the half-line from a point along an axis, upward, may meet.
   *
   * @param axis 0, 1 or 2
   */
  public void alongAxis(int axis, double x, double y, double z, FaceVisitor visitor) {
    double[] from = {x, y, z};
    alongAxis(
        1, axis, from[axis], (axis + 1) % 3, from[(axis + 1) % 3], from[(axis + 2) % 3], visitor);
  }

  private void alongAxis(
      int node, int axis, double from, int second, double u, double v, FaceVisitor visitor) {
    int third = 3 - axis - second;
    int i = 6 * node;
    if (boxes[i + 3 + axis] < from
        || boxes[i + second] > u
        || boxes[i + 3 + second] < u
        || boxes[i + third] > v
        || boxes[i + 3 + third] < v) {
      return;
    }
    if (node < leaves) {
      alongAxis(2 * node, axis, from, second, u, v, visitor);
      alongAxis(2 * node + 1, axis, from, second, u, v, visitor);
      return;
    }
    int first = (node - leaves) * LEAF;
    for (int k = first; k < Math.min(order.length, first + LEAF); k++) {
      visitor.face(order[k]);
    }
  }

  /**
   * Visits the triangles whose boxes hold a point.
   *
   * @return how many nodes were looked at
   */
  public int around(double x, double y, double z, FaceVisitor visitor) {
    return around(1, x, y, z, visitor);
  }

  private int around(int node, double x, double y, double z, FaceVisitor visitor) {
    if (!holds(boxes, 6 * node, x, y, z)) {
      return 1;
    }
    if (node < leaves) {
      return 1 + around(2 * node, x, y, z, visitor) + around(2 * node + 1, x, y, z, visitor);
    }
    int first = (node - leaves) * LEAF;
    for (int k = first; k < Math.min(order.length, first + LEAF); k++) {
      if (holds(faceBoxes, 6 * k, x, y, z)) {
        visitor.face(order[k]);
      }
    }
    return 1 + LEAF;
  }

  private static boolean holds(float[] box, int i, double x, double y, double z) {
    return x >= box[i]
        && x <= box[i + 3]
        && y >= box[i + 1]
        && y <= box[i + 4]
        && z >= box[i + 2]
        && z <= box[i + 5];
  }

  /** Receives triangles near a ray, roughly from near to far. */
  public interface RayVisitor {
    /**
     * Called for each triangle whose box the ray may meet.
     *
     * @return the distance beyond which nothing is of interest any more, in lengths of the
     *     direction
     */
    double face(int face, double farthest);
  }

  /** Visits the triangles that a ray may meet. */
  public void alongRay(
      double ox, double oy, double oz, double dx, double dy, double dz, RayVisitor visitor) {
    double[] ray = {ox, oy, oz, 1 / dx, 1 / dy, 1 / dz};
    if (enter(1, ray, Double.POSITIVE_INFINITY) < Double.POSITIVE_INFINITY) {
      alongRay(1, ray, Double.POSITIVE_INFINITY, visitor);
    }
  }

  private double alongRay(int node, double[] ray, double farthest, RayVisitor visitor) {
    double limit = farthest;
    if (node >= leaves) {
      int first = (node - leaves) * LEAF;
      for (int k = first; k < Math.min(order.length, first + LEAF); k++) {
        limit = visitor.face(order[k], limit);
      }
      return limit;
    }
    double left = enter(2 * node, ray, limit);
    double right = enter(2 * node + 1, ray, limit);
    int near = left <= right ? 2 * node : 2 * node + 1;
    double nearAt = Math.min(left, right);
    double farAt = Math.max(left, right);
    if (nearAt <= limit && nearAt < Double.POSITIVE_INFINITY) {
      limit = alongRay(near, ray, limit, visitor);
      if (farAt <= limit && farAt < Double.POSITIVE_INFINITY) {
        limit = alongRay(near ^ 1, ray, limit, visitor);
      }
    }
    return limit;
  }

  /** Where the ray enters a node's box, infinity if it does not. */
  private double enter(int node, double[] ray, double farthest) {
    double from = 0;
    double to = farthest;
    int i = 6 * node;
    if (boxes[i] > boxes[i + 3]) {
      return Double.POSITIVE_INFINITY; // a leaf without faces, there to fill up the tree
    }
    for (int k = 0; k < 3; k++) {
      double inverse = ray[3 + k];
      double low = boxes[i + k] - ray[k];
      double high = boxes[i + 3 + k] - ray[k];
      if (Double.isInfinite(inverse)) {
        if (low > 0 || high < 0) {
          return Double.POSITIVE_INFINITY;
        }
        continue;
      }
      double a = low * inverse;
      double b = high * inverse;
      // Widened by more than the rounding of the lines above, so that no box is missed.
      from = Math.max(from, Math.min(a, b) - 1e-15 * Math.abs(Math.min(a, b)));
      to = Math.min(to, Math.max(a, b) + 1e-15 * Math.abs(Math.max(a, b)));
    }
    return from <= to ? from : Double.POSITIVE_INFINITY;
  }
}
