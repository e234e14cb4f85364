package org.amperskin.pattern;

/**
 * How wide the lines and spaces of artwork are, all along its edges.
 *
 * <p>Definition: samples stand evenly along every edge. From each a ray runs square to the edge
 * into the opaque side, to the next edge: the line's width there; and one into the clear side: the
 * space's. A ray counts if the edge it meets faces the one it left, within {@value #FACING_DEGREES}
 * deg, and if the way along the outline between the two is not short: {@value #SHORT_WAY} times the
 * width, or {@value #SHORT_TAPER} times where they are not within 14 deg of parallel (where they
 * taper); edges of two outlines must face within 28 deg. So corners and blunt tips do not count as
 * narrow; tips sharper than about 28 deg do, as tapers. A ring none of whose inner rays counts (a
 * triangle) takes 4 A / P, the diameter of its inscribed circle if it has one.
 *
 * <p>Guaranteed: exact for parallel edges; the same arrays for the same artwork. Not guaranteed:
 * that a constriction shorter than the spacing is met.
 *
 * <p>Cost: {@link EdgeGrid}, a few cells a sample.
 */
public final class LineWidths {
  private static final double FACING_DEGREES = 46;
  private static final double SHORT_WAY = 1.25;
  private static final double SHORT_TAPER = 4;
  private static final double PARALLEL = -0.97;
  private static final double FACING_APART = -Math.cos(Math.toRadians(28));
  private static final double FACING = -Math.cos(Math.toRadians(FACING_DEGREES));

  private final Artwork artwork;
  private final double spacingMm;
  private final double reachMm;
  private final EdgeGrid grid;
  private final double[] ends;
  private final double[] way;
  private final int[] ringOf;
  private final int count;

  /** {@code at[7*i..]}: x, y, normal to the clear side x, y, length stood for, line, space. */
  private final double[] at;

  /** {@code tapers[2*i]} of the line, {@code tapers[2*i+1]} of the space. */
  private final boolean[] tapers;

  private boolean tapering;

  private final int[] ring;

  private LineWidths(Artwork artwork, double spacingMm, double reachMm) {
    this.artwork = artwork;
    this.spacingMm = spacingMm;
    this.reachMm = reachMm;
    int edges = artwork.edgeCount();
    ends = new double[4 * edges];
    way = new double[edges + 1];
    ringOf = new int[edges];
    int[] starts = artwork.ringStarts();
    double[] xy = artwork.xy();
    int samples = 0;
    for (int r = 0; r + 1 < starts.length; r++) {
      for (int p = starts[r]; p < starts[r + 1]; p++) {
        int q = p + 1 == starts[r + 1] ? starts[r] : p + 1;
        ends[4 * p] = xy[2 * p];
        ends[4 * p + 1] = xy[2 * p + 1];
        ends[4 * p + 2] = xy[2 * q];
        ends[4 * p + 3] = xy[2 * q + 1];
        way[p + 1] = way[p] + length(p);
        ringOf[p] = r;
        samples = Math.addExact(samples, samplesOn(p));
      }
    }
    grid = new EdgeGrid(ends, artwork.widthMm(), artwork.heightMm());
    at = new double[Math.multiplyExact(7, samples)];
    ring = new int[samples];
    tapers = new boolean[Math.multiplyExact(2, samples)];
    count = samples;
    fill();
  }

  /**
   * Measures artwork at a spacing of a fifth of a millimetre, wider if that would be more than half
   * a million samples.
   *
   * @param artwork the sheet as it is used, tiles and surround included
   */
  public static LineWidths of(Artwork artwork) {
    return of(artwork, Math.max(0.2, artwork.edgeLengthMm() / 500_000), 25);
  }

  /**
   * Measures artwork.
   *
   * @param artwork the sheet as it is used, tiles and surround included; its own border counts as
   *     no edge
   * @param spacingMm largest distance between samples (mm); every edge has one at least
   * @param reachMm widths from here on are not looked for (mm)
   */
  public static LineWidths of(Artwork artwork, double spacingMm, double reachMm) {
    if (!(spacingMm > 0) || !(reachMm > 0)) {
      throw new IllegalArgumentException(
          "spacing " + spacingMm + " mm, reach " + reachMm + " mm: both must be above zero");
    }
    return new LineWidths(artwork, spacingMm, reachMm);
  }

  private double length(int e) {
    return Math.hypot(ends[4 * e + 2] - ends[4 * e], ends[4 * e + 3] - ends[4 * e + 1]);
  }

  private int samplesOn(int e) {
    double length = length(e);
    return length == 0 || onBorder(e) ? 0 : Math.max(1, (int) Math.ceil(length / spacingMm));
  }

  /** True if an edge lies on the sheet's own border. */
  private boolean onBorder(int e) {
    double slack = 1e-6 * (artwork.widthMm() + artwork.heightMm());
    for (int axis = 0; axis < 2; axis++) {
      double border = (axis == 0 ? artwork.widthMm() : artwork.heightMm()) / 2 - slack;
      double a = ends[4 * e + axis];
      double b = ends[4 * e + 2 + axis];
      if (Math.min(a, b) >= border || Math.max(a, b) <= -border) {
        return true;
      }
    }
    return false;
  }

  private void fill() {
    EdgeGrid.Hit hit = new EdgeGrid.Hit();
    int to = 0;
    int ringStart = 0;
    // true once a ring needs no inscribed circle: measured, or cut off at the sheet's border
    boolean counted = false;
    for (int e = 0; e < ringOf.length; e++) {
      int n = samplesOn(e);
      counted |= onBorder(e);
      double length = length(e);
      double nx = n == 0 ? 0 : (ends[4 * e + 3] - ends[4 * e + 1]) / length;
      double ny = n == 0 ? 0 : -(ends[4 * e + 2] - ends[4 * e]) / length;
      boolean hole = artwork.ringAreaMm2(ringOf[e]) < 0;
      for (int i = 0; i < n; i++, to++) {
        double s = (i + 0.5) / n;
        double x = ends[4 * e] + s * (ends[4 * e + 2] - ends[4 * e]);
        double y = ends[4 * e + 1] + s * (ends[4 * e + 3] - ends[4 * e + 1]);
        ring[to] = ringOf[e];
        at[7 * to] = x;
        at[7 * to + 1] = y;
        at[7 * to + 2] = nx;
        at[7 * to + 3] = ny;
        at[7 * to + 4] = length / n;
        at[7 * to + 5] = width(e, s, x, y, -nx, -ny, hit);
        tapers[2 * to] = tapering;
        at[7 * to + 6] = width(e, s, x, y, nx, ny, hit);
        tapers[2 * to + 1] = tapering;
        counted |= !Double.isNaN(at[7 * to + (hole ? 6 : 5)]);
      }
      if (e + 1 == ringOf.length || ringOf[e + 1] != ringOf[e]) {
        if (!counted) {
          inscribed(ringOf[e], hole, ringStart, to);
        }
        ringStart = to;
        counted = false;
      }
    }
  }

  /** Gives samples without a width that of a circle inscribed in their ring. */
  private void inscribed(int r, boolean hole, int from, int to) {
    int[] starts = artwork.ringStarts();
    double around = way[starts[r + 1]] - way[starts[r]];
    double width = 4 * Math.abs(artwork.ringAreaMm2(r)) / around;
    for (int i = from; i < to && width < reachMm; i++) {
      at[7 * i + (hole ? 6 : 5)] = width;
      tapers[2 * i + (hole ? 1 : 0)] = false;
    }
  }

  private double width(
      int e, double s, double x, double y, double dx, double dy, EdgeGrid.Hit hit) {
    if (!grid.first(x, y, dx, dy, e, reachMm, hit) || onBorder(hit.edge)) {
      return Double.NaN;
    }
    int h = hit.edge;
    double l = length(h);
    double mx = (ends[4 * h + 3] - ends[4 * h + 1]) / l;
    double my = -(ends[4 * h + 2] - ends[4 * h]) / l;
    // Both normals point to the clear side: facing edges have opposite ones.
    double nx = (ends[4 * e + 3] - ends[4 * e + 1]) / length(e);
    double ny = -(ends[4 * e + 2] - ends[4 * e]) / length(e);
    double facing = mx * nx + my * ny;
    tapering = facing > PARALLEL;
    if (facing > (ringOf[h] == ringOf[e] ? FACING : FACING_APART)) {
      return Double.NaN;
    }
    if (ringOf[h] == ringOf[e]) {
      int[] starts = artwork.ringStarts();
      double around = way[starts[ringOf[e] + 1]] - way[starts[ringOf[e]]];
      double there = Math.abs(way[h] + hit.along * l - way[e] - s * length(e));
      double ratio = Math.min(there, around - there) / hit.distance;
      if (ratio < (tapering ? SHORT_TAPER : SHORT_WAY)) {
        return Double.NaN;
      }
    }
    return hit.distance;
  }

  /** Number of samples. */
  public int count() {
    return count;
  }

  /** Largest distance between samples along an edge (mm). */
  public double spacingMm() {
    return spacingMm;
  }

  /** Where sample i lies, across (mm). */
  public double x(int i) {
    return at[7 * i];
  }

  /** Where sample i lies, upward (mm). */
  public double y(int i) {
    return at[7 * i + 1];
  }

  /** The edge's normal at sample i, to the clear side; its part across. */
  public double normalX(int i) {
    return at[7 * i + 2];
  }

  /** The normal's part upward. */
  public double normalY(int i) {
    return at[7 * i + 3];
  }

  /** Length of outline that sample i stands for (mm). */
  public double lengthMm(int i) {
    return at[7 * i + 4];
  }

  /** Width of the opaque line at sample i (mm), NaN if none was found. */
  public double lineMm(int i) {
    return at[7 * i + 5];
  }

  /** Width of the clear space at sample i (mm), NaN if none was found. */
  public double spaceMm(int i) {
    return at[7 * i + 6];
  }

  /** True if the line's sides at sample i are not within 14 deg of parallel, as at a sharp tip. */
  public boolean lineTapers(int i) {
    return tapers[2 * i];
  }

  /** True if the space's sides at sample i are not within 14 deg of parallel. */
  public boolean spaceTapers(int i) {
    return tapers[2 * i + 1];
  }

  /** The ring of the artwork that sample i lies on. */
  public int ring(int i) {
    return ring[i];
  }

  /** The smallest line (mm), tapering ones left out; NaN if there is none. */
  public double smallestLineMm() {
    return smallest(5);
  }

  /** The smallest space (mm), tapering ones left out; NaN if there is none. */
  public double smallestSpaceMm() {
    return smallest(6);
  }

  private double smallest(int which) {
    double least = Double.NaN;
    for (int i = 0; i < count; i++) {
      double w = at[7 * i + which];
      if (!tapers[2 * i + which - 5] && (w < least || Double.isNaN(least))) {
        least = w;
      }
    }
    return least;
  }
}
