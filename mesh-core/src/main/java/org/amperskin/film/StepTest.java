package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.MaskKind;
import org.amperskin.units.Quantity;

/**
 * A sheet of strips to find the exposure by trial: each strip takes more light than the last and
 * carries the film's own finest lines and spaces.
 *
 * <p>Definition: strips side by side, {@value #STRIP_MM} mm wide as is common practice for tests;
 * strip k has k square dots at its top. Below them gratings of opaque bars and clear ones between
 * them, half, 0.7, 1, 1.4 and 2 times as wide as the film's finest line or space, then a clear
 * field and an opaque one. All strips are exposed together; each is covered when its time is over,
 * so that strip k has had time k in all.
 *
 * <p>Guaranteed: bars are printed as wide as told; opaque and clear alternate evenly. Not
 * guaranteed: bars finer than the printer's dots. Coarse lines are drawn no wider than {@value
 * #WIDEST_MM} mm: they decide nothing. Method: a stepped exposure test, as photographers make it;
 * the step of a square root of two is that of printers' 21-step wedges ({@link
 * ExposureWindow#STEP}).
 *
 * @param film name of the film it is for
 * @param timesS time of each strip (s), rising
 * @param finestMm width of the film's finest line or space (mm)
 * @param kind what the film covers
 */
public record StepTest(String film, List<Double> timesS, double finestMm, MaskKind kind) {
  /** Width of a strip (mm). */
  public static final double STRIP_MM = 15;

  private static final double HEIGHT_MM = 60;
  private static final double DOT_MM = 1;
  private static final double WIDEST_MM = 0.5;
  private static final double BAR_HEIGHT_MM = 5;
  private static final double FIELD_MM = 9;
  private static final double SIDE_MM = 1.5;
  private static final double[] FACTORS = {0.5, 0.7, 1, 1.4, 2};

  /** Copies the list and checks the order. */
  public StepTest {
    timesS = List.copyOf(timesS);
    for (int k = 0; k < timesS.size(); k++) {
      if (!(timesS.get(k) > (k == 0 ? 0 : timesS.get(k - 1)))) {
        throw new IllegalArgumentException("times of strips " + timesS + " s do not rise");
      }
    }
    if (timesS.isEmpty() || !(finestMm > 0)) {
      throw new IllegalArgumentException(
          timesS.size() + " strips for lines of " + finestMm + " mm; at least 1 above 0 mm fits");
    }
    if (kind == MaskKind.STOP_OFF) {
      throw new IllegalArgumentException(
          "film " + film + " is a stop-off, which no light passes: 0 strips to expose");
    }
  }

  /** The test of a film that was checked. */
  public static StepTest of(FilmCheck check) {
    double finest = WIDEST_MM;
    for (Fates fates : List.of(check.lines(), check.spaces())) {
      finest = Math.min(finest, fates.smallest().map(Feature::filmMm).orElse(WIDEST_MM));
    }
    return new StepTest(
        check.laid().film().name(), check.exposure().stripsS(), finest, check.laid().film().kind());
  }

  /** Widths of the bars (mm), finest first. */
  public List<Double> barsMm() {
    List<Double> widths = new ArrayList<>();
    for (double factor : FACTORS) {
      widths.add(factor * Math.min(finestMm, WIDEST_MM));
    }
    return List.copyOf(widths);
  }

  /** The strips as a film to print. */
  public FilmLayout layout() {
    double width = timesS.size() * STRIP_MM;
    List<double[]> boxes = new ArrayList<>();
    for (int k = 0; k < timesS.size(); k++) {
      strip(boxes, k + 1, -width / 2 + k * STRIP_MM);
    }
    double[] xy = new double[8 * boxes.size()];
    int[] starts = new int[boxes.size() + 1];
    for (int b = 0; b < boxes.size(); b++) {
      System.arraycopy(boxes.get(b), 0, xy, 8 * b, 8);
      starts[b + 1] = 4 * (b + 1);
    }
    Artwork artwork = Artwork.of(width, HEIGHT_MM, xy, starts, 0, List.of());
    Extent sheet = new Extent(-width / 2, -HEIGHT_MM / 2, width / 2, HEIGHT_MM / 2);
    return new FilmLayout(
        film + " test strips", artwork, Outline.box(sheet), List.of(), kind, true, List.of());
  }

  private void strip(List<double[]> boxes, int number, double left) {
    double top = HEIGHT_MM / 2 - SIDE_MM;
    for (int d = 0; d < number; d++) {
      double x = left + SIDE_MM + 1.6 * DOT_MM * d;
      boxes.add(box(x, top - DOT_MM, x + DOT_MM, top));
    }
    top -= DOT_MM + SIDE_MM;
    double inside = STRIP_MM - 2 * SIDE_MM;
    for (double w : barsMm()) {
      int bars = (int) ((inside / w + 1) / 2);
      for (int b = 0; b < bars; b++) {
        double x = left + SIDE_MM + 2 * b * w;
        boxes.add(box(x, top - BAR_HEIGHT_MM, x + w, top));
      }
      top -= BAR_HEIGHT_MM + SIDE_MM;
    }
    top -= FIELD_MM;
    boxes.add(box(left + SIDE_MM, top - FIELD_MM, left + STRIP_MM - SIDE_MM, top));
  }

  private static double[] box(double minX, double minY, double maxX, double maxY) {
    return new double[] {minX, minY, maxX, minY, maxX, maxY, minX, maxY};
  }

  /** What to do with it, in sentences. */
  public String method() {
    StringBuilder times = new StringBuilder();
    for (int k = 0; k < timesS.size(); k++) {
      times
          .append(k == 0 ? "" : ", ")
          .append(k + 1)
          .append(" at ")
          .append(seconds(timesS.get(k)))
          .append(" s");
    }
    String read =
        kind == MaskKind.NEGATIVE_RESIST
            ? "The first strip whose clear fields keep all their resist is enough, if the fields under"
                + " its black still wash away."
            : "The first strip whose clear fields are free of resist has had the dose that clears;"
                + " take half as long again, if black fields still hold there.";
    return "Lay it on a flat coupon with the part's resist, light all strips at once and cover strip "
        + times
        + " (a strip has as many dots as its number); develop. "
        + read;
  }

  private static String seconds(double s) {
    return Quantity.plain(s, s < 100 ? 2 : 3);
  }
}
