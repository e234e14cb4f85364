package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Bands folded into zigzags, with mitred corners; a peak stands on the middle of the sheet.
 *
 * <p>Coverage: line over pitch, since both are taken square to the arms.
 *
 * @param pitchMm from the middle of a band to the next, square to the arms (mm)
 * @param lineMm width of a band, square to the arms (mm)
 * @param slopeDegrees rise of the arms (deg)
 * @param lengthMm from peak to peak (mm)
 */
public record Chevrons(double pitchMm, double lineMm, double slopeDegrees, double lengthMm)
    implements LinedMotif {
  /** Checks the values. */
  public Chevrons {
    MotifParameter.PITCH.check(pitchMm);
    MotifParameter.LENGTH.check(lengthMm);
    MotifFault.within(MotifParameter.SLOPE, slopeDegrees, 1, 80);
    MotifFault.line(lineMm, pitchMm, "the pitch");
  }

  @Override
  public MotifKind kind() {
    return MotifKind.CHEVRONS;
  }

  @Override
  public double widestLineMm() {
    return pitchMm;
  }

  @Override
  public Chevrons withLine(double newLineMm) {
    return new Chevrons(pitchMm, newLineMm, slopeDegrees, lengthMm);
  }

  @Override
  public OptionalDouble coverage() {
    return OptionalDouble.of(lineMm / pitchMm);
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(lengthMm, rowMm()));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 4 * areaMm2 / (lengthMm * rowMm());
  }

  private double rowMm() {
    return pitchMm / Math.cos(Math.toRadians(slopeDegrees));
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    double arm = lengthMm / 2;
    double rise = arm * Math.tan(Math.toRadians(slopeDegrees));
    double half = lineMm / 2 / Math.cos(Math.toRadians(slopeDegrees));
    int first = Cells.first(w.left(), arm);
    int last = Cells.last(w.right(), arm);
    int points = last - first + 1;
    int top = Cells.last(w.top() + rise / 2 + half, rowMm());
    for (int row = Cells.first(w.bottom() - rise / 2 - half, rowMm()); row <= top; row++) {
      double[] xy = new double[4 * points];
      for (int i = 0; i < points; i++) {
        double x = (first + i) * arm;
        double y = row * rowMm() + ((first + i) % 2 == 0 ? rise / 2 : -rise / 2);
        xy[2 * i] = x;
        xy[2 * i + 1] = y - half;
        xy[4 * points - 2 * i - 2] = x;
        xy[4 * points - 2 * i - 1] = y + half;
      }
      pencil.ring(xy);
    }
  }

  @Override
  public String told() {
    return "pitch %s mm, line %s mm, slope %s deg, length %s mm"
        .formatted(
            Pencil.number(pitchMm),
            Pencil.number(lineMm),
            Pencil.number(slopeDegrees),
            Pencil.number(lengthMm));
  }
}
