package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Parallel bands, one of them along the middle of the sheet.
 *
 * <p>Coverage: line over pitch.
 *
 * @param pitchMm from the middle of a band to the next (mm)
 * @param lineMm width of a band (mm)
 */
public record Bands(double pitchMm, double lineMm) implements LinedMotif {
  /** Checks the values. */
  public Bands {
    MotifParameter.PITCH.check(pitchMm);
    MotifFault.line(lineMm, pitchMm, "the pitch");
  }

  @Override
  public MotifKind kind() {
    return MotifKind.BANDS;
  }

  @Override
  public double widestLineMm() {
    return pitchMm;
  }

  @Override
  public Bands withLine(double newLineMm) {
    return new Bands(pitchMm, newLineMm);
  }

  @Override
  public OptionalDouble coverage() {
    return OptionalDouble.of(lineMm / pitchMm);
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(pitchMm, pitchMm));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 4 * (Math.sqrt(areaMm2) / pitchMm + 1);
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    for (int row = Cells.first(w.bottom(), pitchMm); row <= Cells.last(w.top(), pitchMm); row++) {
      double y = row * pitchMm;
      pencil.rectangle(w.left() - pitchMm, y - lineMm / 2, w.right() + pitchMm, y + lineMm / 2);
    }
  }

  @Override
  public String told() {
    return "pitch " + Pencil.number(pitchMm) + " mm, line " + Pencil.number(lineMm) + " mm";
  }
}
