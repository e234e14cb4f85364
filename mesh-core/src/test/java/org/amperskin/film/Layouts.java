package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.MaskKind;

/** Artwork and layouts made by hand for tests. */
public final class Layouts {
  private Layouts() {}

  /** Artwork of rectangles {@code x0, y0, x1, y1} from the centre, overlapping or not. */
  public static Artwork rectangles(double widthMm, double heightMm, double[]... boxes) {
    double[] xy = new double[8 * boxes.length];
    int[] starts = new int[boxes.length + 1];
    for (int b = 0; b < boxes.length; b++) {
      double[] r = Marks.bar(boxes[b][0], boxes[b][1], boxes[b][2], boxes[b][3]);
      System.arraycopy(r, 0, xy, 8 * b, 8);
      starts[b + 1] = 4 * (b + 1);
    }
    return Artwork.cleaned(widthMm, heightMm, xy, starts, 0, List.of());
  }

  /** A layout whose cut outline is the artwork's sheet. */
  public static FilmLayout sheet(Artwork artwork, MaskKind kind) {
    double x = artwork.widthMm() / 2;
    double y = artwork.heightMm() / 2;
    return new FilmLayout(
        "test", artwork, Outline.box(new Extent(-x, -y, x, y)), List.of(), kind, true, List.of());
  }

  /** Stripes across a sheet: {@code n} of them, half black. */
  public static Artwork stripes(double widthMm, double heightMm, int n) {
    List<double[]> boxes = new ArrayList<>();
    double pitch = heightMm / n;
    for (int i = 0; i < n; i++) {
      double y = -heightMm / 2 + i * pitch;
      boxes.add(new double[] {-widthMm / 2, y, widthMm / 2, y + pitch / 2});
    }
    return rectangles(widthMm, heightMm, boxes.toArray(new double[0][]));
  }

  /** Words of an invented job. */
  public static SheetWords words() {
    return new SheetWords(
        "job",
        "part.stl",
        "Positive resist: black stays bare palladium barrier, clear becomes dark chromium.",
        "Lies flat before the part.",
        List.of("ultraviolet light: shield eyes and skin.", "local rules: go before this."),
        Optional.empty());
  }
}
