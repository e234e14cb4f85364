package org.amperskin.demo;

/**
 * The two invented pattern layouts, for either part.
 *
 * <p>Chevrons: a black sheet with clear chevron bands that grow from edge to edge, and clear beads
 * in the black between. Lattice: a clear sheet with black woven bands, each passing over and under
 * by turns, and a rosette.
 */
final class DemoArtwork {
  private DemoArtwork() {}

  static FilmDrawing visorChevrons() {
    FilmDrawing film = new FilmDrawing("Visor, graded chevrons", 200, 105);
    chevrons(film, -0.42, 10.5, 1.6, 6.2);
    return film;
  }

  static FilmDrawing shoulderChevrons() {
    FilmDrawing film = new FilmDrawing("Shoulder plate, graded chevrons", 170, 150);
    chevrons(film, 0.55, 12, 1.8, 7.4);
    return film;
  }

  static FilmDrawing visorLattice() {
    FilmDrawing film = new FilmDrawing("Visor, woven lattice with rosettes", 200, 105);
    lattice(film, 14, 7.6, 0.9);
    rosette(film, -50, -19, 16);
    rosette(film, 50, -19, 16);
    return film;
  }

  static FilmDrawing shoulderLattice() {
    FilmDrawing film = new FilmDrawing("Shoulder plate, woven lattice with a rosette", 170, 150);
    lattice(film, 17, 9.4, 1.0);
    rosette(film, 0, 0, 34);
    return film;
  }

  /** Bands whose arms rise by {@code slope}, the clear width growing downward. */
  private static void chevrons(
      FilmDrawing film, double slope, double pitchMm, double thinMm, double thickMm) {
    film.sheet(FilmDrawing.WHITE);
    film.sheet(FilmDrawing.BLACK);
    double margin = 3;
    double w = film.widthMm() / 2;
    double half = film.heightMm() / 2;
    double reach = half + StrictMath.abs(slope) * w;
    int bands = (int) StrictMath.ceil(2 * reach / pitchMm);
    for (int i = 0; i <= bands; i++) {
      double top = reach - i * pitchMm;
      double t = StrictMath.max(0, StrictMath.min(1, (half - top) / (2 * half)));
      double clear = thinMm + t * (thickMm - thinMm);
      double low = top - clear;
      double rise = slope * w;
      boolean whole = StrictMath.abs(slope > 0 ? top : low) < half - margin;
      whole |= StrictMath.abs(slope > 0 ? low : top) < half - margin;
      if (whole) {
        film.polygon(
            FilmDrawing.WHITE,
            margin,
            -w,
            top - rise,
            -w,
            low - rise,
            0,
            low,
            w,
            low - rise,
            w,
            top - rise,
            0,
            top);
      } else {
        film.polygon(FilmDrawing.WHITE, margin, -w, top - rise, -w, low - rise, 0, low, 0, top);
        film.polygon(FilmDrawing.WHITE, margin, 0, top, 0, low, w, low - rise, w, top - rise);
      }
      double bead = 0.28 * (pitchMm - clear);
      double y = low - (pitchMm - clear) / 2;
      for (int side = -2; side <= 2; side++) {
        double x = side * 0.36 * w;
        double beadY = y - slope * StrictMath.abs(x);
        if (StrictMath.abs(beadY) + bead < half - margin - 1) {
          film.disk(FilmDrawing.WHITE, x, beadY, bead);
        }
      }
    }
  }

  /** Bands at 45 degrees, one way over the other by turns. */
  private static void lattice(FilmDrawing film, double pitchMm, double bandMm, double gapMm) {
    film.sheet(FilmDrawing.WHITE);
    double c = StrictMath.sqrt(0.5);
    int n = (int) StrictMath.ceil((film.widthMm() + film.heightMm()) / 2 / c / pitchMm / 2) + 2;
    double half = pitchMm - bandMm / 2 - gapMm;
    for (int i = -n; i <= n; i++) {
      for (int j = -n; j <= n; j++) {
        boolean first = StrictMath.floorMod(i + j, 2) == 0;
        double s = i * pitchMm;
        double t = j * pitchMm;
        double ds = first ? half : bandMm / 2;
        double dt = first ? bandMm / 2 : half;
        film.polygon(
            FilmDrawing.BLACK,
            0,
            c * (s - ds - t + dt),
            c * (s - ds + t - dt),
            c * (s + ds - t + dt),
            c * (s + ds + t - dt),
            c * (s + ds - t - dt),
            c * (s + ds + t + dt),
            c * (s - ds - t - dt),
            c * (s - ds + t + dt));
      }
    }
  }

  /** A ring round twelve petals and an eye, on a clear ground. */
  private static void rosette(FilmDrawing film, double x, double y, double radiusMm) {
    film.disk(FilmDrawing.WHITE, x, y, radiusMm);
    film.disk(FilmDrawing.BLACK, x, y, 0.94 * radiusMm);
    film.disk(FilmDrawing.WHITE, x, y, 0.82 * radiusMm);
    for (int k = 0; k < 12; k++) {
      double turn = StrictMath.PI * k / 6;
      double cos = StrictMath.cos(turn);
      double sin = StrictMath.sin(turn);
      double in = 0.22 * radiusMm;
      double out = (k % 2 == 0 ? 0.82 : 0.64) * radiusMm;
      film.leaf(
          FilmDrawing.BLACK,
          x + in * cos,
          y + in * sin,
          x + out * cos,
          y + out * sin,
          (k % 2 == 0 ? 0.17 : 0.12) * radiusMm);
    }
    film.disk(FilmDrawing.BLACK, x, y, 0.20 * radiusMm);
    film.disk(FilmDrawing.WHITE, x, y, 0.09 * radiusMm);
  }
}
