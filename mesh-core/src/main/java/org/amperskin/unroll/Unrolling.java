package org.amperskin.unroll;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.geom.Vec3;

/**
 * A patch of skin laid out in the plane with the least stretch that was found.
 *
 * <p>Definition: each face has a place in the plane; its two stretches are the singular values of
 * the map from the face to the plane, so 1.02 means that the film is 2 % longer there than the
 * skin. {@code ratio} is the largest over the smallest stretch of all faces, directions alike.
 *
 * <p>Guaranteed: no face is turned over and the outline does not cross itself, or the patch is
 * refused; developable patches (cylinders, cones, folded sheets) keep lengths to rounding. Not
 * guaranteed: the best possible ratio; a spherical cap of angular radius a comes within 2 % of the
 * best, a/sin a (J. Milnor, A problem in cartography, Amer. Math. Monthly 76 (1969) 1101, from
 * memory).
 *
 * <p>Method: faces are unfolded outward from the centre, averaging where they disagree; then
 * as-rigid-as-possible rounds (L. Liu et al., A local/global approach to mesh parameterization,
 * 2008, from memory) whose weights are raised where the stretch is worst, as C. L. Lawson did for
 * best approximation (1961, from memory). A patch with holes or round a body is laid out whole if
 * it can be, else opened along seams. Cost: some 60 sparse systems.
 */
public final class Unrolling {
  /** Largest ratio of stretches for which a film is offered. */
  public static final double MOST_RATIO = 2;

  private static final double SEAMLESS_RATIO = 1.25;

  private final CutPatch cut;
  private final double[] xy;
  private final double least;
  private final double most;
  private final List<Edge> outline;

  /**
   * A stretch of the layout's border.
   *
   * @param x0 start (mm)
   * @param y0 start (mm)
   * @param x1 end (mm)
   * @param y1 end (mm)
   * @param seam true if the film meets itself here
   */
  public record Edge(double x0, double y0, double x1, double y1, boolean seam) {}

  private Unrolling(CutPatch cut, double[] xy, List<Edge> outline) {
    this.cut = cut;
    this.xy = xy;
    this.outline = outline;
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    double[] s = new double[2];
    for (int i = 0; i < cut.patch().size(); i++) {
      stretch(i, s);
      low = Math.min(low, s[1]);
      high = Math.max(high, s[0]);
    }
    least = low;
    most = high;
  }

  /**
   * Unrolls a patch.
   *
   * @param centre where the plane's origin lies: the face nearest to this point (mm)
   * @param up direction that points up in the plane there
   * @throws IllegalArgumentException if it cannot be laid out without folds or large stretch
   */
  public static Unrolling of(Patch patch, Vec3 centre, Vec3 up) {
    int root = patch.nearest(centre);
    CutPatch used = CutPatch.whole(patch);
    Layout best = Layout.unfolded(used, root);
    if (!best.exact()) {
      CutPatch opened = CutPatch.disk(patch, root);
      Layout second = opened.hasSeams() ? Layout.unfolded(opened, root) : best;
      if (second.exact() || !better(best.relaxed(), second)) {
        best = second.relaxed();
        used = opened;
      }
    }
    if (!best.sound() || best.ratio() > MOST_RATIO) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a patch of %d faces, %.4g mm2 cannot be unrolled: %s; choose a smaller or flatter"
                  + " patch",
              patch.size(),
              patch.areaMm2(),
              best.folds() > 0
                  ? best.folds() + " faces would fold over"
                  : String.format(Locale.ROOT, "it would stretch by a factor %.3g", best.ratio())));
    }
    double[] xy = best.upright(root, centre, up);
    List<Edge> outline = border(used, xy);
    Overlap.refuse(used, xy);
    return new Unrolling(used, xy, outline);
  }

  /** True if the patch laid out whole is good enough to do without seams. */
  private static boolean better(Layout whole, Layout opened) {
    return whole == opened
        || whole.sound() && (whole.ratio() < SEAMLESS_RATIO || !opened.relaxed().sound());
  }

  private static List<Edge> border(CutPatch cut, double[] xy) {
    List<Edge> edges = new ArrayList<>();
    for (int i = 0; i < cut.patch().size(); i++) {
      for (int k = 0; k < 3; k++) {
        if (cut.beside(i, k) < 0) {
          int a = cut.corner(i, k);
          int b = cut.corner(i, (k + 1) % 3);
          edges.add(new Edge(xy[2 * a], xy[2 * a + 1], xy[2 * b], xy[2 * b + 1], cut.isSeam(i, k)));
        }
      }
    }
    return edges;
  }

  /** The patch. */
  public Patch patch() {
    return cut.patch();
  }

  /** Place of corner k of face i of the patch, across (mm). */
  public double x(int i, int k) {
    return xy[2 * cut.corner(i, k)];
  }

  /** Place of corner k of face i of the patch, upward (mm). */
  public double y(int i, int k) {
    return xy[2 * cut.corner(i, k) + 1];
  }

  /** The stretches of face i: {@code out[0]} the larger, {@code out[1]} the smaller. */
  public void stretch(int i, double[] out) {
    cut.map(i, cut.patch().flat(i), xy).stretches(out);
  }

  /** The smallest stretch of any face. */
  public double least() {
    return least;
  }

  /** The largest stretch of any face. */
  public double most() {
    return most;
  }

  /** The largest stretch over the smallest. */
  public double ratio() {
    return most / least;
  }

  /** The border of the layout, seams on both sides. */
  public List<Edge> outline() {
    return outline;
  }

  /** True if the film meets itself along seams. */
  public boolean hasSeams() {
    return cut.hasSeams();
  }
}
