package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Bands woven over and under by turns (plain weave); what passes under stops short by a gap.
 *
 * <p>Coverage: w (2p - w - 2g) / p^2 with pitch p, line w, gap g: each crossing has one band
 * running through and one that is missing over line and two gaps.
 *
 * @param pitchMm from the middle of a band to the next, both ways (mm)
 * @param lineMm width of a band (mm)
 * @param gapMm between a band and the one that passes under it (mm)
 */
public record Woven(double pitchMm, double lineMm, double gapMm) implements LinedMotif {
  /** Checks the values. */
  public Woven {
    MotifParameter.PITCH.check(pitchMm);
    MotifFault.within(MotifParameter.GAP, gapMm, pitchMm / 1000, 0.4 * pitchMm);
    MotifFault.line(lineMm, pitchMm - 2 * gapMm, "pitch less two gaps");
  }

  @Override
  public MotifKind kind() {
    return MotifKind.WOVEN;
  }

  @Override
  public double widestLineMm() {
    return pitchMm - 2 * gapMm;
  }

  @Override
  public Woven withLine(double newLineMm) {
    return new Woven(pitchMm, newLineMm, gapMm);
  }

  @Override
  public OptionalDouble coverage() {
    return OptionalDouble.of(lineMm * (2 * pitchMm - lineMm - 2 * gapMm) / (pitchMm * pitchMm));
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(2 * pitchMm, 2 * pitchMm));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 4 * areaMm2 / (pitchMm * pitchMm);
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    double clear = lineMm / 2 + gapMm;
    double half = lineMm / 2;
    for (int j = Cells.first(w.bottom(), pitchMm) - 1; j <= Cells.last(w.top(), pitchMm); j++) {
      int last = Cells.last(w.right(), pitchMm);
      for (int i = Cells.first(w.left(), pitchMm) - 1; i <= last; i++) {
        double x = i * pitchMm;
        double y = j * pitchMm;
        if ((i + j) % 2 == 0) {
          // at this crossing the upright band is under: it runs from here over the next
          pencil.rectangle(x - half, y + clear, x + half, y + 2 * pitchMm - clear);
        } else {
          pencil.rectangle(x + clear, y - half, x + 2 * pitchMm - clear, y + half);
        }
      }
    }
  }

  @Override
  public String told() {
    return "pitch %s mm, line %s mm, gap %s mm"
        .formatted(Pencil.number(pitchMm), Pencil.number(lineMm), Pencil.number(gapMm));
  }
}
