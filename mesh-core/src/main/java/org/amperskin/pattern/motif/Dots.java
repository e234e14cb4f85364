package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Round dots scattered evenly but without order: blue noise.
 *
 * <p>Definition: dots of one size whose middles are nowhere closer than the pitch; the field
 * repeats without a seam after every {@code tileMm}. The same seed gives the same dots.
 *
 * <p>Coverage: number of dots in a tile times pi/4 line^2 over the tile's area; dots never touch.
 *
 * <p>Method: {@link ScatteredPoints}.
 *
 * @param pitchMm least distance of two dots, middle to middle (mm)
 * @param lineMm diameter of the dots (mm)
 * @param tileMm side of the square that repeats (mm)
 * @param seed chooses one of many such fields
 */
public record Dots(double pitchMm, double lineMm, double tileMm, long seed) implements LinedMotif {
  /** Checks the values. */
  public Dots {
    MotifParameter.PITCH.check(pitchMm);
    MotifFault.within(MotifParameter.TILE, tileMm, 3 * pitchMm, 200 * pitchMm);
    MotifFault.line(lineMm, pitchMm, "the pitch");
  }

  @Override
  public MotifKind kind() {
    return MotifKind.DOTS;
  }

  @Override
  public double widestLineMm() {
    return pitchMm;
  }

  @Override
  public Dots withLine(double newLineMm) {
    return new Dots(pitchMm, newLineMm, tileMm, seed);
  }

  @Override
  public OptionalDouble coverage() {
    int dots = ScatteredPoints.of(tileMm, pitchMm, seed).length / 2;
    return OptionalDouble.of(dots * Math.PI / 4 * lineMm * lineMm / (tileMm * tileMm));
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(tileMm, tileMm));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 24 * 0.7 * areaMm2 / (pitchMm * pitchMm);
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    double[] points = ScatteredPoints.of(tileMm, pitchMm, seed);
    Window near = w.grown(lineMm);
    for (int j = Cells.first(w.bottom(), tileMm); j <= Cells.last(w.top(), tileMm); j++) {
      for (int i = Cells.first(w.left(), tileMm); i <= Cells.last(w.right(), tileMm); i++) {
        for (int p = 0; p < points.length; p += 2) {
          double x = i * tileMm + points[p];
          double y = j * tileMm + points[p + 1];
          if (x > near.left() && x < near.right() && y > near.bottom() && y < near.top()) {
            pencil.disc(x, y, lineMm / 2);
          }
        }
      }
    }
  }

  @Override
  public String told() {
    return "pitch %s mm, line %s mm, tile %s mm, seed %d"
        .formatted(Pencil.number(pitchMm), Pencil.number(lineMm), Pencil.number(tileMm), seed);
  }
}
