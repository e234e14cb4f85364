package org.amperskin.pattern;

/**
 * Tells whether a point of the sheet is opaque, by counting the edges to its right.
 *
 * <p>Cost: the edges are sorted into rows, so a question looks at the edges of one row only.
 */
final class RowIndex {
  private final double[] edges;
  private final int[] rowStart;
  private final int[] inRow;
  private final double bottom;
  private final double rowHeight;

  RowIndex(Artwork artwork) {
    int count = artwork.edgeCount();
    edges = new double[4 * count];
    int to = 0;
    double[] xy = artwork.xy();
    int[] starts = artwork.ringStarts();
    for (int r = 0; r + 1 < starts.length; r++) {
      int last = starts[r + 1] - 1;
      for (int i = starts[r]; i <= last; i++) {
        int j = i == last ? starts[r] : i + 1;
        edges[to++] = xy[2 * i];
        edges[to++] = xy[2 * i + 1];
        edges[to++] = xy[2 * j];
        edges[to++] = xy[2 * j + 1];
      }
    }
    int rows = Math.max(1, count / 4);
    bottom = -artwork.heightMm() / 2;
    rowHeight = artwork.heightMm() / rows;
    rowStart = new int[rows + 1];
    for (int e = 0; e < count; e++) {
      for (int r = row(low(e)); r <= row(high(e)); r++) {
        rowStart[r + 1]++;
      }
    }
    for (int r = 0; r < rows; r++) {
      rowStart[r + 1] += rowStart[r];
    }
    int[] next = rowStart.clone();
    inRow = new int[rowStart[rows]];
    for (int e = 0; e < count; e++) {
      for (int r = row(low(e)); r <= row(high(e)); r++) {
        inRow[next[r]++] = e;
      }
    }
  }

  private double low(int e) {
    return Math.min(edges[4 * e + 1], edges[4 * e + 3]);
  }

  private double high(int e) {
    return Math.max(edges[4 * e + 1], edges[4 * e + 3]);
  }

  private int row(double y) {
    return Math.max(0, Math.min(rowStart.length - 2, (int) Math.floor((y - bottom) / rowHeight)));
  }

  boolean opaque(double x, double y) {
    int r = row(y);
    boolean odd = false;
    for (int i = rowStart[r]; i < rowStart[r + 1]; i++) {
      int e = 4 * inRow[i];
      double y0 = edges[e + 1];
      double y1 = edges[e + 3];
      if (y0 > y != y1 > y) {
        double at = edges[e] + (y - y0) / (y1 - y0) * (edges[e + 2] - edges[e]);
        odd ^= at > x;
      }
    }
    return odd;
  }
}
