package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A honeycomb: regular hexagons with walls between them, a cell on the middle of the sheet.
 *
 * <p>Coverage: 1 - ((pitch - line) / pitch)^2.
 *
 * @param pitchMm from the middle of a cell to the next, that is flat to flat with the wall (mm)
 * @param lineMm width of the walls (mm)
 */
public record Hexagons(double pitchMm, double lineMm) implements LinedMotif {
  private static final double ROOT3 = Math.sqrt(3);

  /** Checks the values. */
  public Hexagons {
    MotifParameter.PITCH.check(pitchMm);
    MotifFault.line(lineMm, pitchMm, "the pitch");
  }

  @Override
  public MotifKind kind() {
    return MotifKind.HEXAGONS;
  }

  @Override
  public double widestLineMm() {
    return pitchMm;
  }

  @Override
  public Hexagons withLine(double newLineMm) {
    return new Hexagons(pitchMm, newLineMm);
  }

  @Override
  public OptionalDouble coverage() {
    double clear = (pitchMm - lineMm) / pitchMm;
    return OptionalDouble.of(1 - clear * clear);
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(pitchMm, ROOT3 * pitchMm));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 6 * areaMm2 / (pitchMm * pitchMm * ROOT3 / 2);
  }

  /** Draws the cells: walls that met edge on edge would leave cracks. */
  @Override
  public void draw(Window w, Pencil pencil) {
    pencil.drawsGaps();
    double row = pitchMm * ROOT3 / 2;
    double r = (pitchMm - lineMm) / ROOT3;
    for (int j = Cells.first(w.bottom(), row); j <= Cells.last(w.top(), row); j++) {
      double shift = j % 2 == 0 ? 0 : pitchMm / 2;
      int last = Cells.last(w.right(), pitchMm);
      for (int i = Cells.first(w.left(), pitchMm); i <= last; i++) {
        double x = i * pitchMm + shift;
        double y = j * row;
        double side = (pitchMm - lineMm) / 2;
        pencil.ring(
            x, y + r, x - side, y + r / 2, x - side, y - r / 2, x, y - r, x + side, y - r / 2,
            x + side, y + r / 2);
      }
    }
  }

  @Override
  public String told() {
    return "pitch " + Pencil.number(pitchMm) + " mm, line " + Pencil.number(lineMm) + " mm";
  }
}
