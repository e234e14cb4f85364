package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.pattern.motif.Lacing.Crossing;

/**
 * Rosettes of rings laced through each other, set as densely as round things lie (each row shifted
 * by half a pitch); one stands on the middle of the sheet.
 *
 * <p>Definition: the middles of the rings stand evenly on a circle; along each ring it passes over
 * and under the others by turns; what passes under stops short by a gap.
 *
 * <p>Guaranteed: gaps of neighbouring crossings do not run into each other. Not guaranteed: a
 * closed form of the area.
 *
 * @param pitchMm from the middle of a rosette to the next (mm)
 * @param lineMm width of a ring's line (mm)
 * @param rings how many rings a rosette has
 * @param diameterMm of the circle that the rings touch from inside, at the middle of their line
 *     (mm)
 * @param radiusMm of one ring, at the middle of its line (mm)
 * @param gapMm between a ring and the one that passes under it (mm)
 */
public record Rosettes(
    double pitchMm, double lineMm, int rings, double diameterMm, double radiusMm, double gapMm)
    implements LinedMotif {
  private static final double ROOT3 = Math.sqrt(3);
  static final int FEWEST = 3;
  static final int MOST = 12;
  static final int USUAL_RINGS = 8;

  /** Ring radius over the rosette's diameter that leaves the most room between crossings. */
  static double usualRadius(int rings) {
    double away = rings <= 4 ? 0.6 : Math.max(1.4, Math.min(2.2, 0.2 * rings));
    return 1 / (2 + 2 * away);
  }

  /** Checks the values. */
  public Rosettes {
    MotifParameter.PITCH.check(pitchMm);
    MotifFault.within(MotifParameter.RINGS, rings, FEWEST, MOST);
    MotifFault.within(MotifParameter.DIAMETER, diameterMm, 0.1 * pitchMm, 0.999 * pitchMm);
    double share = Math.sin(Math.PI / rings) / (1 + Math.sin(Math.PI / rings)) / 2;
    MotifFault.within(
        MotifParameter.RADIUS, radiusMm, 1.02 * share * diameterMm, 0.45 * diameterMm);
    MotifFault.within(MotifParameter.GAP, gapMm, pitchMm / 10_000, 0.1 * pitchMm);
    MotifFault.line(
        lineMm,
        Math.min(pitchMm - diameterMm, lacing(rings, diameterMm, radiusMm).widestLineMm(gapMm)),
        "what the crossings, the gap and the next rosette leave");
  }

  private static Lacing lacing(int rings, double diameterMm, double radiusMm) {
    return new Lacing(rings, diameterMm / 2 - radiusMm, radiusMm);
  }

  @Override
  public MotifKind kind() {
    return MotifKind.ROSETTES;
  }

  @Override
  public double widestLineMm() {
    return Math.min(pitchMm - diameterMm, lacing(rings, diameterMm, radiusMm).widestLineMm(gapMm));
  }

  @Override
  public Rosettes withLine(double newLineMm) {
    return new Rosettes(pitchMm, newLineMm, rings, diameterMm, radiusMm, gapMm);
  }

  @Override
  public OptionalDouble coverage() {
    return OptionalDouble.empty();
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(pitchMm, ROOT3 * pitchMm));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 120.0 * rings * areaMm2 / (pitchMm * pitchMm * ROOT3 / 2);
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    Pencil one = new Pencil(pencil.toleranceMm());
    lacing(rings, diameterMm, radiusMm).draw(lineMm, gapMm, one);
    pencil.strayed(one.worstMm());
    double row = pitchMm * ROOT3 / 2;
    for (int j = Cells.first(w.bottom(), row); j <= Cells.last(w.top(), row); j++) {
      double shift = j % 2 == 0 ? 0 : pitchMm / 2;
      int last = Cells.last(w.right(), pitchMm);
      for (int i = Cells.first(w.left(), pitchMm); i <= last; i++) {
        for (double[] ring : one.rings()) {
          double[] moved = ring.clone();
          for (int k = 0; k < moved.length; k += 2) {
            moved[k] += i * pitchMm + shift;
            moved[k + 1] += j * row;
          }
          pencil.ring(moved);
        }
      }
    }
  }

  /** Where the rings of the rosette on the origin cross, for tests. */
  java.util.List<Crossing> crossings() {
    return lacing(rings, diameterMm, radiusMm).crossings();
  }

  @Override
  public String told() {
    return "pitch %s mm, line %s mm, rings %d, diameter %s mm, radius %s mm, gap %s mm"
        .formatted(
            Pencil.number(pitchMm),
            Pencil.number(lineMm),
            rings,
            Pencil.number(diameterMm),
            Pencil.number(radiusMm),
            Pencil.number(gapMm));
  }
}
