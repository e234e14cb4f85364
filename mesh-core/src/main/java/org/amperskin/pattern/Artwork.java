package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * An opaque figure on a rectangular sheet: what a film, a tape or a stencil covers.
 *
 * <p>The figure is a set of rings in millimetres. Origin at the sheet's centre, x to the right, y
 * up.
 *
 * <p>Guaranteed: every ring is simple; rings neither cross nor overlap (they may touch in points);
 * opaque lies always on the left of the walking direction, so outlines run counter-clockwise and
 * holes clockwise; all points lie on the sheet. {@link #of} checks this by area and refuses what is
 * not so (rings that share a whole edge pass; they do no harm to areas). Equal input gives equal
 * arrays.
 *
 * <p>Not guaranteed: that rings are as few as could be, or that curves are curves; {@link
 * #flatteningMm} tells how far the polygon may stray from the drawn curve.
 *
 * <p>Method: area by the shoelace sum (Green's theorem), in ring order.
 *
 * <p>Cost: linear in points; {@code of} checks in O(n log n).
 */
public final class Artwork {
  private final double widthMm;
  private final double heightMm;
  private final double[] xy;
  private final int[] ringStarts;
  private final double flatteningMm;
  private final List<String> notes;
  private final List<DrawnElement> drawn;

  private Artwork(
      double widthMm,
      double heightMm,
      double[] xy,
      int[] ringStarts,
      double flatteningMm,
      List<String> notes,
      List<DrawnElement> drawn) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
    this.xy = xy;
    this.ringStarts = ringStarts;
    this.flatteningMm = flatteningMm;
    this.notes = List.copyOf(notes);
    this.drawn = List.copyOf(drawn);
  }

  /**
   * Artwork from clean rings.
   *
   * @param widthMm sheet width (mm)
   * @param heightMm sheet height (mm)
   * @param xy {@code xy[2*p]}, {@code xy[2*p+1]} (mm), rings one after another; copied
   * @param ringStarts first point of each ring, then the number of points; length rings + 1; copied
   * @param flatteningMm largest distance between a true curve and the polygon (mm)
   * @param notes what was skipped or assumed
   * @throws IllegalArgumentException if a size is not positive, a point lies off the sheet, or the
   *     rings cross, overlap or run the wrong way round
   */
  public static Artwork of(
      double widthMm,
      double heightMm,
      double[] xy,
      int[] ringStarts,
      double flatteningMm,
      List<String> notes) {
    Artwork artwork =
        new Artwork(
            widthMm, heightMm, xy.clone(), ringStarts.clone(), flatteningMm, notes, List.of());
    artwork.checkShape();
    artwork.checkClean();
    return artwork;
  }

  /** For readers whose rings are clean by construction. Takes the arrays as they are. */
  static Artwork trusted(
      double widthMm, double heightMm, RingSet rings, double flatteningMm, List<String> notes) {
    Artwork artwork =
        new Artwork(widthMm, heightMm, rings.xy(), rings.starts(), flatteningMm, notes, List.of());
    artwork.checkShape();
    return artwork;
  }

  /**
   * Artwork from rings that may cross, overlap and run either way: inside is where the winding
   * number is not zero. What reaches beyond the sheet is cut off.
   *
   * @param widthMm sheet width (mm)
   * @param heightMm sheet height (mm)
   * @param xy points (mm), as in {@link #of}
   * @param ringStarts as in {@link #of}
   * @param flatteningMm largest distance between a true curve and the polygon (mm)
   * @param notes what was skipped or assumed
   * @return the same figure with clean rings
   */
  public static Artwork cleaned(
      double widthMm,
      double heightMm,
      double[] xy,
      int[] ringStarts,
      double flatteningMm,
      List<String> notes) {
    Artwork raw = new Artwork(widthMm, heightMm, xy, ringStarts, flatteningMm, notes, List.of());
    raw.checkArrays();
    return trusted(widthMm, heightMm, raw.folded(), flatteningMm, notes);
  }

  /** The same figure with the names of what was drawn. */
  Artwork with(List<DrawnElement> elements) {
    return new Artwork(widthMm, heightMm, xy, ringStarts, flatteningMm, notes, elements);
  }

  /**
   * Name of the drawing's element at a place: of those whose box holds it the smallest, of equal
   * ones the last.
   *
   * @param x across (mm from the sheet's middle)
   * @param y upward
   */
  public Optional<String> drawnAt(double x, double y) {
    DrawnElement found = null;
    for (DrawnElement e : drawn) {
      if (e.holds(x, y) && (found == null || e.areaMm2() <= found.areaMm2())) {
        found = e;
      }
    }
    return Optional.ofNullable(found).map(DrawnElement::name);
  }

  /** Width of the sheet (mm). */
  public double widthMm() {
    return widthMm;
  }

  /** Height of the sheet (mm). */
  public double heightMm() {
    return heightMm;
  }

  /** Points {@code xy[2*p]}, {@code xy[2*p+1]} in mm, rings one after another. Read only. */
  public double[] xy() {
    return xy;
  }

  /**
   * First point of each ring, then the number of points: ring r is {@code ringStarts[r] ..
   * ringStarts[r+1]-1}, closed implicitly. Read only.
   */
  public int[] ringStarts() {
    return ringStarts;
  }

  /** How many rings, outlines and holes together. */
  public int ringCount() {
    return ringStarts.length - 1;
  }

  /** How many edges; the same as the number of points. */
  public int edgeCount() {
    return xy.length / 2;
  }

  /** Area of the opaque figure (mm2). */
  public double opaqueAreaMm2() {
    double sum = 0;
    for (int r = 0; r < ringCount(); r++) {
      sum += ringAreaMm2(r);
    }
    return sum;
  }

  /** Opaque part of the sheet's area, 0 to 1. */
  public double opaqueFraction() {
    return opaqueAreaMm2() / (widthMm * heightMm);
  }

  /** Length of all edges between opaque and clear, the sheet's own border included (mm). */
  public double edgeLengthMm() {
    double sum = 0;
    for (int r = 0; r < ringCount(); r++) {
      int last = ringStarts[r + 1] - 1;
      for (int p = ringStarts[r], q = last; p <= last; q = p++) {
        sum += Math.hypot(xy[2 * p] - xy[2 * q], xy[2 * p + 1] - xy[2 * q + 1]);
      }
    }
    return sum;
  }

  /** Largest distance between a true curve and the polygon (mm); 0 for straight-edged artwork. */
  public double flatteningMm() {
    return flatteningMm;
  }

  /** Everything skipped or assumed while reading, named. */
  public List<String> notes() {
    return notes;
  }

  /** Signed area of one ring (mm2), positive for an outline, negative for a hole. */
  double ringAreaMm2(int ring) {
    int first = ringStarts[ring];
    int last = ringStarts[ring + 1] - 1;
    double x0 = xy[2 * first];
    double y0 = xy[2 * first + 1];
    double twice = 0;
    for (int p = first + 1; p < last; p++) {
      twice +=
          (xy[2 * p] - x0) * (xy[2 * p + 3] - y0) - (xy[2 * p + 2] - x0) * (xy[2 * p + 1] - y0);
    }
    return twice / 2;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Artwork that
        && widthMm == that.widthMm
        && heightMm == that.heightMm
        && flatteningMm == that.flatteningMm
        && Arrays.equals(xy, that.xy)
        && Arrays.equals(ringStarts, that.ringStarts)
        && notes.equals(that.notes);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * Arrays.hashCode(xy) + Arrays.hashCode(ringStarts)) + notes.hashCode();
  }

  @Override
  public String toString() {
    return "Artwork %s x %s mm, %d rings, %d edges, opaque %s mm2"
        .formatted(widthMm, heightMm, ringCount(), edgeCount(), opaqueAreaMm2());
  }

  private void checkArrays() {
    require(widthMm > 0 && widthMm < Double.POSITIVE_INFINITY, "width (mm)", widthMm);
    require(heightMm > 0 && heightMm < Double.POSITIVE_INFINITY, "height (mm)", heightMm);
    require(flatteningMm >= 0 && flatteningMm < 1e9, "flattening (mm)", flatteningMm);
    require(ringStarts.length >= 1 && ringStarts[0] == 0, "first ring start", ringStarts.length);
    require(
        2 * ringStarts[ringStarts.length - 1] == xy.length,
        "last ring start for " + xy.length / 2.0 + " points",
        ringStarts[ringStarts.length - 1]);
    for (int r = 0; r + 1 < ringStarts.length; r++) {
      int points = ringStarts[r + 1] - ringStarts[r];
      require(points >= 3, "points of ring " + r, points);
    }
    for (double value : xy) {
      require(Math.abs(value) < Double.POSITIVE_INFINITY, "coordinate (mm)", value);
    }
  }

  private void checkShape() {
    checkArrays();
    double slackMm = 2 * PaintStack.GRID_MM;
    for (int p = 0; p < xy.length / 2; p++) {
      require(
          Math.abs(xy[2 * p]) <= widthMm / 2 + slackMm
              && Math.abs(xy[2 * p + 1]) <= heightMm / 2 + slackMm,
          "point " + p + " at x=" + xy[2 * p] + " on the sheet, but y (mm)",
          xy[2 * p + 1]);
    }
  }

  /** Rings that cross, overlap or run the wrong way change their area when folded by winding. */
  private void checkClean() {
    double byRingsMm2 = opaqueAreaMm2();
    RingSet folded = folded();
    Artwork again =
        new Artwork(widthMm, heightMm, folded.xy(), folded.starts(), 0, List.of(), List.of());
    double foldedMm2 = again.opaqueAreaMm2();
    double lengthMm = edgeLengthMm();
    double slackMm = 4 * PaintStack.GRID_MM;
    if (Math.abs(byRingsMm2 - foldedMm2) > slackMm * (1 + lengthMm)) {
      throw new IllegalArgumentException(
          "rings cross, overlap or run the wrong way: area by rings "
              + byRingsMm2
              + " mm2, by winding number "
              + foldedMm2
              + " mm2");
    }
  }

  private RingSet folded() {
    List<double[]> rings = new ArrayList<>();
    for (int r = 0; r < ringCount(); r++) {
      rings.add(Arrays.copyOfRange(xy, 2 * ringStarts[r], 2 * ringStarts[r + 1]));
    }
    PaintStack stack = new PaintStack(widthMm, heightMm, 0.5);
    stack.paint(stack.figure(rings, false), 0, 1, PaintStack.NO_CLIP, PaintStack.NO_GROUP);
    return stack.fold();
  }

  private static void require(boolean holds, String what, double found) {
    if (!holds) {
      throw new IllegalArgumentException(what + " cannot be " + found);
    }
  }
}
