package org.amperskin.skin;

/**
 * A crossed face, cut into cells, and what is known of each.
 *
 * <p>Arrays have one entry a cell. Plane coordinates are the two axes after {@link #axis}.
 */
final class FaceCut {
  /** Nothing is wrong with the cell. */
  static final byte CLEAR = 0;

  /** Another face is counted in its stead. */
  static final byte DOUBLED = 1;

  /** Too near to another face to tell. */
  static final byte UNSURE = 2;

  final int face;
  final int axis;
  final double[][] outline;
  final double[][] weights;
  final double[] share;
  final byte[] kind;

  /** The face counted in the cell's stead, for doubled cells. */
  final int[] stead;

  /** Faces lying on the cell, itself apart. */
  final int[][] lying;

  /** A point of the cell, {@code point[c]} = x, y, z. */
  final double[][] point;

  /** Body around the front and the back, -1 if none: {@code [2*c]}, {@code [2*c+1]}. */
  final int[] around;

  /** Number of the first cell's front in the search for reach. */
  int firstNode;

  FaceCut(int face, int axis, int cells) {
    this.face = face;
    this.axis = axis;
    this.outline = new double[cells][];
    this.weights = new double[cells][];
    this.share = new double[cells];
    this.kind = new byte[cells];
    this.stead = new int[cells];
    this.lying = new int[cells][];
    this.point = new double[cells][];
    this.around = new int[2 * cells];
  }

  int cells() {
    return outline.length;
  }

  /** The cell that holds a point of the face, the nearest one where rounding leaves a gap. */
  int cellAt(double x, double y, double z) {
    double[] p = {x, y, z};
    double px = p[(axis + 1) % 3];
    double py = p[(axis + 2) % 3];
    int best = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < outline.length; c++) {
      double depth = depth(outline[c], px, py);
      if (depth > most) {
        most = depth;
        best = c;
      }
    }
    return best;
  }

  /** Distance of a point from a polygon's border, positive inside. */
  private static double depth(double[] q, double x, double y) {
    int n = q.length / 2;
    double sense = Math.signum(org.amperskin.geom.ConvexCut.doubledArea(q, n));
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < n; k++) {
      int m = (k + 1) % n;
      double ex = q[2 * m] - q[2 * k];
      double ey = q[2 * m + 1] - q[2 * k + 1];
      double l = Math.sqrt(ex * ex + ey * ey);
      if (l > 0) {
        double d = sense * (ex * (y - q[2 * k + 1]) - ey * (x - q[2 * k])) / l;
        least = Math.min(least, d);
      }
    }
    return least;
  }
}
