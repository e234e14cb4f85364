package org.amperskin.region;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.unroll.PlaneMap;

/**
 * A film on the whole skin, face by face: where its artwork lies, how far off it is, how it
 * stretches and how square the light falls.
 *
 * <p>Definition: a piece is a face of the skin, or a part of one where the film bends. Gap is the
 * distance between film and skin along the light (mm, mean of the piece). Dose is the light that
 * falls on the skin over what falls on the film, the cosine of the angle between them. Stretches
 * are film millimetres for one millimetre of skin in the two main directions, so what is 1 mm wide
 * on the film is 1 mm over the stretch on the skin.
 *
 * <p>Guaranteed: exact for flat faces and parallel light. Not guaranteed: that the light reaches a
 * piece; see the region's split mesh for shadows.
 */
public final class LaidFilm {
  private final MaskFilm film;
  private final FilmForm form;
  private final Laid laid;
  private final double[] dark;
  private final double contact;

  private LaidFilm(MaskFilm film, FilmForm form, Laid laid, double[] dark) {
    this.film = film;
    this.form = form;
    this.laid = laid;
    this.dark = dark;
    double nearest = 0;
    if (form instanceof FilmForm.Plane) {
      nearest = Double.POSITIVE_INFINITY;
      for (int f = 0; f < pieceCount(); f++) {
        if (faces(f)) {
          for (int k = 0; k < 3; k++) {
            nearest = Math.min(nearest, laid.frame().depth(mesh().corner(f, k)));
          }
        }
      }
    }
    contact = nearest;
  }

  /**
   * Keeps a film as it lies.
   *
   * @param dark {@code dark[parent]}, share of a face that its light does not reach, 0 to 1
   */
  static LaidFilm of(MaskFilm film, FilmForm form, Laid laid, double[] dark) {
    return new LaidFilm(film, form, laid, dark);
  }

  /** The film. */
  public MaskFilm film() {
    return film;
  }

  /** The form it takes. */
  public FilmForm form() {
    return form;
  }

  /** The pieces in space. */
  public SurfaceMesh mesh() {
    return laid.pieces().mesh();
  }

  /** Number of pieces. */
  public int pieceCount() {
    return mesh().faceCount();
  }

  /** Face of the skin that a piece is of. */
  public int parent(int piece) {
    return laid.pieces().parent(piece);
  }

  /** True if the film covers the piece and the piece is turned to it. */
  public boolean faces(int piece) {
    return laid.covers(parent(piece)) && laid.frame().doubledArea(mesh(), piece) > 0;
  }

  /** Where corner k of a piece lies, across from the artwork's centre (artwork mm). */
  public double x(int piece, int k) {
    return laid.frame().x(mesh().corner(piece, k));
  }

  /** Where corner k of a piece lies, upward from the artwork's centre (artwork mm). */
  public double y(int piece, int k) {
    return laid.frame().y(mesh().corner(piece, k));
  }

  /** Distance between film and skin (mm). */
  public double gapMm(int piece) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += laid.frame().depth(mesh().corner(piece, k));
    }
    return Math.max(0, sum / 3 - contact);
  }

  /** Distance between film and skin at corner k of a piece (mm). */
  public double gapMm(int piece, int k) {
    return Math.max(0, laid.frame().depth(mesh().corner(piece, k)) - contact);
  }

  /** Share of a face of the skin that this film's light does not reach, 0 to 1. */
  public double unreachedShare(int parent) {
    return dark[parent];
  }

  /** Light on the skin over light on the film, 0 to 1. */
  public double dose(int piece) {
    if (form instanceof FilmForm.Cut) {
      return 1;
    }
    double[] s = new double[2];
    stretch(piece, s);
    if (form instanceof FilmForm.Plane) {
      return Math.min(1, s[1]);
    }
    return Math.min(1, s[1] / s[0]);
  }

  /**
   * The two stretches of a piece, film mm for 1 mm of skin.
   *
   * @param out {@code out[0]} the larger, {@code out[1]} the smaller
   */
  public void stretch(int piece, double[] out) {
    map(piece).stretches(out);
    out[1] = Math.abs(out[1]);
  }

  /**
   * Width on the skin of what is a unit wide on the film, measured square to a line on the film.
   *
   * @param piece where
   * @param nx the line's normal in artwork coordinates, a unit vector
   * @param ny its upward part
   */
  public double widthOnSkin(int piece, double nx, double ny) {
    // Distance in the skin between the lines n.x = 0 and n.x = 1: one over the length of n M.
    PlaneMap m = map(piece);
    double a = nx * m.m0() + ny * m.m2();
    double b = nx * m.m1() + ny * m.m3();
    return 1 / Math.hypot(a, b);
  }

  /** Matrix from the piece's own plane (mm) to the film (mm), along artwork axes. */
  private PlaneMap map(int piece) {
    SurfaceMesh mesh = mesh();
    double scale = film.placement().scale();
    int i = mesh.corner(piece, 0);
    int j = mesh.corner(piece, 1);
    int k = mesh.corner(piece, 2);
    FilmFrame frame = laid.frame();
    return PlaneMap.of(
        PlaneMap.Flat.of(point(piece, 0), point(piece, 1), point(piece, 2)),
        scale * (frame.x(j) - frame.x(i)),
        scale * (frame.y(j) - frame.y(i)),
        scale * (frame.x(k) - frame.x(i)),
        scale * (frame.y(k) - frame.y(i)));
  }

  private Vec3 point(int piece, int k) {
    int v = mesh().corner(piece, k);
    return mesh().point(v);
  }
}
