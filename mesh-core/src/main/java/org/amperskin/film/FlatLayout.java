package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.Sheets;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.MaskKind;

/**
 * Lays out a film that stays flat before the part.
 *
 * <p>Definition: the film is the box round the artwork as laid, and {@value #MARGIN_MM} mm more to
 * hold it by. Where the surround is opaque it reaches over all of the part that faces the light,
 * and is black there: what a film leaves uncovered is exposed.
 *
 * <p>Guaranteed: the artwork's area times the square of the scale is the laid artwork's area. Not
 * guaranteed: anything about blur; that grows with the gap between film and skin.
 */
public final class FlatLayout {
  /** Clear or black rim beyond what must be covered (mm). */
  public static final double MARGIN_MM = 5;

  private FlatLayout() {}

  /**
   * Lays a film out.
   *
   * @param name what the job calls it
   * @param artwork the drawing
   * @param placement how it lies
   * @param kind what covering means
   * @param surroundClear whether light passes beside the drawing
   * @param skin the part
   */
  public static FilmLayout of(
      String name,
      Artwork artwork,
      FlatPlacement placement,
      MaskKind kind,
      boolean surroundClear,
      SurfaceMesh skin) {
    Turn turn = Turn.of(placement);
    Artwork tiled = Sheets.repeated(artwork, placement.columns(), placement.rows());
    Extent drawn = turn.around(tiled.widthMm() / 2, tiled.heightMm() / 2);
    List<String> notes = new ArrayList<>(artwork.notes());
    Extent film = drawn.grown(MARGIN_MM);
    if (!surroundClear) {
      Extent facing = facing(skin, placement);
      film = facing == null ? drawn : drawn.with(facing.grown(MARGIN_MM));
      if (facing != null && !drawn.holds(facing)) {
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
    }
    double halfX = Math.max(Math.abs(film.minX()), Math.abs(film.maxX()));
    double halfY = Math.max(Math.abs(film.minY()), Math.abs(film.maxY()));
    double reach = 2.1 * Math.hypot(halfX, halfY) / placement.scale();
    Artwork laid =
        turn.laid(Sheets.surrounded(tiled, reach, reach, !surroundClear), 2 * halfX, 2 * halfY);
    return new FilmLayout(name, laid, Outline.box(film), List.of(), kind, surroundClear, notes);
  }

  /** Box, from the artwork's centre, round all faces turned to the light; null without any. */
  private static Extent facing(SurfaceMesh skin, FlatPlacement placement) {
    Vec3 ahead = placement.toward();
    Vec3 right = ahead.cross(placement.up()).unit();
    Vec3 up = right.cross(ahead).unit();
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    double[] x = new double[3];
    double[] y = new double[3];
    for (int f = 0; f < skin.faceCount(); f++) {
      for (int k = 0; k < 3; k++) {
        int v = skin.corner(f, k);
        Vec3 p = new Vec3(skin.x(v), skin.y(v), skin.z(v));
        x[k] = p.dot(right);
        y[k] = p.dot(up);
      }
      if ((x[1] - x[0]) * (y[2] - y[0]) - (y[1] - y[0]) * (x[2] - x[0]) > 0) {
        for (int k = 0; k < 3; k++) {
          x0 = Math.min(x0, x[k]);
          x1 = Math.max(x1, x[k]);
          y0 = Math.min(y0, y[k]);
          y1 = Math.max(y1, y[k]);
        }
      }
    }
    if (x0 > x1) {
      return null;
    }
    Vec3 centre = placement.centre();
    double cx = centre == null ? (x0 + x1) / 2 : centre.dot(right);
    double cy = centre == null ? (y0 + y1) / 2 : centre.dot(up);
    return new Extent(x0 - cx, y0 - cy, x1 - cx, y1 - cy);
  }

  /** Mirror, turn and scale of a placement, exact for quarter turns. */
  private record Turn(double cos, double sin, double flip, double scale) {
    static Turn of(FlatPlacement p) {
      double angle = Math.toRadians(p.turnDegrees());
      boolean quarter = p.turnDegrees() % 90 == 0;
      return new Turn(
          quarter ? Math.rint(Math.cos(angle)) : Math.cos(angle),
          quarter ? Math.rint(Math.sin(angle)) : Math.sin(angle),
          p.mirror() ? -1 : 1,
          p.scale());
    }

    Extent around(double halfWidthMm, double halfHeightMm) {
      double x = scale * (Math.abs(cos) * halfWidthMm + Math.abs(sin) * halfHeightMm);
      double y = scale * (Math.abs(sin) * halfWidthMm + Math.abs(cos) * halfHeightMm);
      return new Extent(-x, -y, x, y);
    }

    Artwork laid(Artwork artwork, double widthMm, double heightMm) {
      double[] from = artwork.xy();
      double[] to = new double[from.length];
      for (int i = 0; i < from.length; i += 2) {
        double x = flip * scale * from[i];
        double y = scale * from[i + 1];
        to[i] = cos * x - sin * y;
        to[i + 1] = sin * x + cos * y;
      }
      return Artwork.cleaned(
          widthMm,
          heightMm,
          to,
          artwork.ringStarts().clone(),
          artwork.flatteningMm() * scale,
          artwork.notes());
    }
  }
}
