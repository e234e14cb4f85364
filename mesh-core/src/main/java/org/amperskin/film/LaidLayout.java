package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.Sheets;
import org.amperskin.region.FilmForm;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.Lay;
import org.amperskin.region.MaskFilm;
import org.amperskin.region.Placement;
import org.amperskin.unroll.Unrolling;

/**
 * Lays a film out in the plane, whatever form it takes on the part.
 *
 * <p>Definition: film millimetres from the artwork's centre. A flat film is the box round the
 * artwork as laid and {@value #MARGIN_MM} mm more to hold it by; where the surround is opaque it
 * reaches over all of the part that faces the light, black there, for what a film leaves uncovered
 * is exposed. A bent film is the part of the unrolled cylinder or cone that lies over its patch,
 * with a glue flap where it closes. A draped film is the outline of the unrolled patch.
 *
 * <p>Guaranteed: the artwork's area times the square of the scale is the laid artwork's area.
 */
public final class LaidLayout {
  /** Rim beyond what must be covered (mm). */
  public static final double MARGIN_MM = 5;

  private final LaidFilm laid;
  private final MaskFilm film;
  private final Lay lay;
  private final Artwork tiled;
  private final Extent drawn;
  private final List<String> notes = new ArrayList<>();

  private LaidLayout(LaidFilm laid) {
    this.laid = laid;
    film = laid.film();
    Placement placement = film.placement();
    lay = Lay.of(placement);
    tiled = Sheets.repeated(film.artwork(), placement.columns(), placement.rows());
    drawn = around(lay, tiled.widthMm() / 2, tiled.heightMm() / 2);
    notes.addAll(film.artwork().notes());
  }

  /**
   * Lays a film out.
   *
   * @throws IllegalArgumentException if it covers nothing of the part
   */
  public static FilmLayout of(LaidFilm laid) {
    return new LaidLayout(laid).layout();
  }

  private FilmLayout layout() {
    List<double[]> pieces = pieces();
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException(
          "film " + film.name() + " lies before 0 faces of the part: turn the light");
    }
    FilmForm form = laid.form();
    if (form instanceof FilmForm.Bent bent) {
      BentOutline outline = BentOutline.of(laid, bent, pieces);
      return with(outline.outline(), outline.flaps());
    }
    if (form instanceof FilmForm.Cut cut) {
      return with(Outline.of(chained(cut.flat().outline())), List.of());
    }
    return with(Outline.box(flat(Extent.around(pieces))), List.of());
  }

  private Extent flat(Extent facing) {
    if (film.surroundClear()) {
      return drawn.grown(MARGIN_MM);
    }
    if (!drawn.holds(facing)) {
      notes.add(
          String.format(
              Locale.ROOT,
              "the drawing covers %.4g x %.4g mm, the part facing the light lies in %.4g x %.4g"
                  + " mm: the film is black beside the drawing",
              drawn.width(),
              drawn.height(),
              facing.width(),
              facing.height()));
    }
    return drawn.with(facing.grown(MARGIN_MM));
  }

  private FilmLayout with(Outline outline, List<Flap> flaps) {
    Extent e = outline.extent();
    double halfX = Math.max(Math.abs(e.minX()), Math.abs(e.maxX()));
    double halfY = Math.max(Math.abs(e.minY()), Math.abs(e.maxY()));
    double reach = 2.1 * Math.hypot(halfX, halfY) / film.placement().scale();
    Artwork whole = Sheets.surrounded(tiled, reach, reach, !film.surroundClear());
    return new FilmLayout(
        film.name(),
        onFilm(whole, 2 * halfX, 2 * halfY),
        outline,
        flaps,
        film.kind(),
        film.surroundClear(),
        notes);
  }

  /** Corners (film mm) of all pieces that the film covers, three a piece. */
  private List<double[]> pieces() {
    List<double[]> out = new ArrayList<>();
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (laid.faces(f)) {
        double[] ring = new double[6];
        for (int k = 0; k < 3; k++) {
          lay.toFilm(laid.x(f, k), laid.y(f, k), ring, 2 * k);
        }
        out.add(ring);
      }
    }
    return out;
  }

  /** Joins border lines to rings; the film lies on the left of each. */
  private List<double[]> chained(List<Unrolling.Edge> edges) {
    double seams = edges.stream().filter(Unrolling.Edge::seam).mapToDouble(this::length).sum() / 2;
    if (seams > 0) {
      notes.add(
          String.format(
              Locale.ROOT, "the film meets itself along %.4g mm of seams: butt them", seams));
    }
    return EdgeChain.rings(edges);
  }

  private double length(Unrolling.Edge e) {
    return Math.hypot(e.x1() - e.x0(), e.y1() - e.y0());
  }

  private static Extent around(Lay lay, double halfWidthMm, double halfHeightMm) {
    double scale = Math.abs(lay.scale());
    double x = scale * (Math.abs(lay.cos()) * halfWidthMm + Math.abs(lay.sin()) * halfHeightMm);
    double y = scale * (Math.abs(lay.sin()) * halfWidthMm + Math.abs(lay.cos()) * halfHeightMm);
    return new Extent(-x, -y, x, y);
  }

  private Artwork onFilm(Artwork artwork, double widthMm, double heightMm) {
    double[] from = artwork.xy();
    double[] to = new double[from.length];
    for (int i = 0; i < from.length; i += 2) {
      lay.toFilm(from[i], from[i + 1], to, i);
    }
    return Artwork.cleaned(
        widthMm,
        heightMm,
        to,
        artwork.ringStarts().clone(),
        artwork.flatteningMm() * Math.abs(lay.scale()),
        artwork.notes());
  }
}
