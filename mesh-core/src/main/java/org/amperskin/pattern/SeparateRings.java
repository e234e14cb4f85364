package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Artwork from outlines that are known to lie apart, without noding them all.
 *
 * <p>Definition: rings {@code x0, y0, x1, y1, ...} (mm), each simple, counter-clockwise and clear
 * of every other; the figure is what lies inside them, or, inverted, what lies outside.
 *
 * <p>Guaranteed: what reaches beyond the sheet is cut off; the same figure as {@link
 * Artwork#cleaned} would give. Not guaranteed: anything if rings cross or nest, which is not
 * checked.
 *
 * <p>Method: a ring that a side of the sheet cuts in one stretch stays simple under {@link
 * SheetCut}; only rings cut in several stretches, and on inverted sheets all that meet the border,
 * go through the arrangement. Cost: linear in points but for those.
 */
public final class SeparateRings {
  private static final double BORDER_MM = 1e-6;

  private SeparateRings() {}

  /**
   * Cuts rings to a sheet.
   *
   * @param widthMm sheet width (mm)
   * @param heightMm sheet height (mm)
   * @param rings rings that lie apart; not changed
   * @param inverted true if what lies outside the rings is opaque
   * @param flatteningMm largest distance between a true curve and the polygon (mm)
   * @param notes what was assumed
   */
  public static Artwork on(
      double widthMm,
      double heightMm,
      List<double[]> rings,
      boolean inverted,
      double flatteningMm,
      List<String> notes) {
    double x = widthMm / 2;
    double y = heightMm / 2;
    List<double[]> sound = new ArrayList<>();
    List<double[]> torn = new ArrayList<>();
    for (double[] ring : rings) {
      double[] upright = SheetCut.cut(ring, x, Double.POSITIVE_INFINITY);
      double[] cut = SheetCut.cut(upright, Double.POSITIVE_INFINITY, y);
      boolean whole = stretches(ring, 0, x) && stretches(upright, 1, y);
      if (cut.length < 6) {
        continue;
      }
      if (!whole) {
        torn.add(cut);
      } else if (inverted && onBorder(cut, x, y)) {
        torn.add(cut);
      } else {
        double[] snapped = snapped(cut);
        if (snapped.length >= 6 && area(snapped) > 0) {
          sound.add(snapped);
        }
      }
    }
    if (inverted) {
      sound.replaceAll(SeparateRings::backward);
      torn.replaceAll(SeparateRings::backward);
      torn.add(new double[] {-x, -y, x, -y, x, y, -x, y});
    }
    return join(widthMm, heightMm, sound, torn, flatteningMm, notes);
  }

  /**
   * The same for rings that may cross and nest: inside is where the winding number is not zero.
   *
   * @param widthMm sheet width (mm)
   * @param heightMm sheet height (mm)
   * @param rings any rings; not changed
   * @param inverted true if what lies outside is opaque
   * @param flatteningMm largest distance between a true curve and the polygon (mm)
   * @param notes what was assumed
   */
  public static Artwork untangled(
      double widthMm,
      double heightMm,
      List<double[]> rings,
      boolean inverted,
      double flatteningMm,
      List<String> notes) {
    Artwork clean = join(widthMm, heightMm, List.of(), rings, flatteningMm, notes);
    if (!inverted) {
      return clean;
    }
    List<double[]> around = new ArrayList<>();
    for (int r = 0; r < clean.ringCount(); r++) {
      around.add(backward(ring(clean, r)));
    }
    double x = widthMm / 2;
    double y = heightMm / 2;
    around.add(new double[] {-x, -y, x, -y, x, y, -x, y});
    return join(widthMm, heightMm, List.of(), around, flatteningMm, notes);
  }

  /** Rings that are clean already, and others that are to be cleaned, in one figure. */
  static Artwork join(
      double widthMm,
      double heightMm,
      List<double[]> sound,
      List<double[]> torn,
      double flatteningMm,
      List<String> notes) {
    int[] starts = new int[torn.size() + 1];
    for (int r = 0; r < torn.size(); r++) {
      starts[r + 1] = starts[r] + torn.get(r).length / 2;
    }
    double[] xy = new double[2 * starts[torn.size()]];
    for (int r = 0; r < torn.size(); r++) {
      System.arraycopy(torn.get(r), 0, xy, 2 * starts[r], torn.get(r).length);
    }
    Artwork mended = Artwork.cleaned(widthMm, heightMm, xy, starts, flatteningMm, notes);
    List<double[]> all = new ArrayList<>(sound);
    for (int r = 0; r < mended.ringCount(); r++) {
      all.add(ring(mended, r));
    }
    return Artwork.trusted(widthMm, heightMm, RingSet.of(all), flatteningMm, notes);
  }

  /** One ring of an artwork. */
  static double[] ring(Artwork artwork, int ring) {
    return Arrays.copyOfRange(
        artwork.xy(), 2 * artwork.ringStarts()[ring], 2 * artwork.ringStarts()[ring + 1]);
  }

  /** Whether a ring touches the border of a sheet of this half width and height (mm). */
  static boolean onBorder(double[] ring, double x, double y) {
    for (int i = 0; i < ring.length; i += 2) {
      if (Math.abs(ring[i]) > x - BORDER_MM || Math.abs(ring[i + 1]) > y - BORDER_MM) {
        return true;
      }
    }
    return false;
  }

  /** Whether each of two opposite sides cuts off one stretch of the ring at most. */
  private static boolean stretches(double[] ring, int axis, double limit) {
    for (int sign = -1; sign <= 1; sign += 2) {
      int changes = 0;
      for (int p = axis, q = ring.length - 2 + axis; p < ring.length; q = p, p += 2) {
        changes += (sign * ring[q] > limit) != (sign * ring[p] > limit) ? 1 : 0;
      }
      if (changes > 2) {
        return false;
      }
    }
    return true;
  }

  private static double[] snapped(double[] ring) {
    double[] out = new double[ring.length];
    int size = 0;
    for (int i = 0; i < ring.length; i += 2) {
      double px = Math.rint(ring[i] / PaintStack.GRID_MM) * PaintStack.GRID_MM;
      double py = Math.rint(ring[i + 1] / PaintStack.GRID_MM) * PaintStack.GRID_MM;
      if (size == 0 || px != out[size - 2] || py != out[size - 1]) {
        out[size++] = px;
        out[size++] = py;
      }
    }
    while (size > 2 && out[0] == out[size - 2] && out[1] == out[size - 1]) {
      size -= 2;
    }
    return RingSet.withoutCollinear(Arrays.copyOf(out, size));
  }

  private static double area(double[] ring) {
    double twice = 0;
    for (int p = 2; p + 3 < ring.length; p += 2) {
      twice +=
          (ring[p] - ring[0]) * (ring[p + 3] - ring[1])
              - (ring[p + 2] - ring[0]) * (ring[p + 1] - ring[1]);
    }
    return twice / 2;
  }

  private static double[] backward(double[] ring) {
    double[] out = new double[ring.length];
    for (int i = 0; i < ring.length; i += 2) {
      out[i] = ring[ring.length - 2 - i];
      out[i + 1] = ring[ring.length - 1 - i];
    }
    return out;
  }
}
