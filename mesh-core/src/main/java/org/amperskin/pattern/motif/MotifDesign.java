package org.amperskin.pattern.motif;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.SeparateRings;

/**
 * A motif as it is to lie on a sheet: turned by an angle, its lines opaque or clear.
 *
 * <p>Guaranteed: the sheet is cut out of a pattern without end, so a sheet of whole tiles joins to
 * its neighbours without a seam, and any sheet equals itself shifted by a tile; the same values
 * give the same bytes. Straight motifs are exact; curves are within {@value #FLATTENING_MM} mm and
 * keep their area.
 *
 * <p>Cost: well under a second for 100,000 edges; sheets of more than {@value #MOST_EDGES} edges
 * are refused.
 *
 * @param motif the pattern
 * @param angleDegrees turn of the pattern on the sheet, counter-clockwise (deg)
 * @param clearLines true if the lines are clear on an opaque sheet
 */
public record MotifDesign(Motif motif, double angleDegrees, boolean clearLines) {
  /** Largest distance between a curve and its polygon (mm). */
  public static final double FLATTENING_MM = 0.005;

  /** Most edges of a sheet. */
  public static final int MOST_EDGES = 1_000_000;

  /** Smallest and largest side of a sheet (mm). */
  public static final double LEAST_SIDE_MM = 0.1;

  /** Largest side of a sheet (mm). */
  public static final double MOST_SIDE_MM = 2000;

  /** Checks the angle. */
  public MotifDesign {
    if (!(Math.abs(angleDegrees) <= 360)) {
      throw new IllegalArgumentException(
          "angle " + angleDegrees + " deg does not fit: -360 to 360 deg do");
    }
  }

  /**
   * The same with another line.
   *
   * @throws IllegalArgumentException if the motif has no lines of one width
   */
  public MotifDesign withLine(double lineMm) {
    return new MotifDesign(lined().withLine(lineMm), angleDegrees, clearLines);
  }

  /**
   * The motif, if its line can be solved for.
   *
   * @throws IllegalArgumentException if it has no lines of one width
   */
  public LinedMotif lined() {
    if (motif instanceof LinedMotif lined) {
      return lined;
    }
    throw new IllegalArgumentException(
        motif.kind().word() + " has no line whose width could be solved for an open share");
  }

  /**
   * The pattern on a sheet.
   *
   * @param widthMm width of the sheet (mm)
   * @param heightMm height of the sheet (mm)
   * @throws IllegalArgumentException if the sheet is too small, too large or has too many edges
   */
  public Artwork sheet(double widthMm, double heightMm) {
    checkSize(widthMm, heightMm);
    double turn = Math.toRadians(angleDegrees);
    boolean quarter = angleDegrees % 90 == 0;
    double cos = quarter ? Math.rint(Math.cos(turn)) : Math.cos(turn);
    double sin = quarter ? Math.rint(Math.sin(turn)) : Math.sin(turn);
    double x = (Math.abs(cos) * widthMm + Math.abs(sin) * heightMm) / 2;
    double y = (Math.abs(sin) * widthMm + Math.abs(cos) * heightMm) / 2;
    Pencil pencil = new Pencil(FLATTENING_MM);
    motif.draw(new Motif.Window(-x, -y, x, y), pencil);
    List<double[]> rings = new ArrayList<>();
    for (double[] ring : pencil.rings()) {
      double[] turned = new double[ring.length];
      for (int i = 0; i < ring.length; i += 2) {
        turned[i] = cos * ring[i] - sin * ring[i + 1];
        turned[i + 1] = sin * ring[i] + cos * ring[i + 1];
      }
      rings.add(turned);
    }
    boolean inverted = clearLines != pencil.drewGaps();
    List<String> notes = pencil.notes(x, y);
    return pencil.lettered()
        ? SeparateRings.untangled(widthMm, heightMm, rings, inverted, pencil.worstMm(), notes)
        : SeparateRings.on(widthMm, heightMm, rings, inverted, pencil.worstMm(), notes);
  }

  /**
   * Refuses a sheet that is too small, too large or would have too many edges.
   *
   * @param widthMm width of the sheet (mm)
   * @param heightMm height of the sheet (mm)
   */
  public void checkSize(double widthMm, double heightMm) {
    for (double side : new double[] {widthMm, heightMm}) {
      if (!(side >= LEAST_SIDE_MM && side <= MOST_SIDE_MM)) {
        throw new IllegalArgumentException(
            "size %s x %s mm does not fit: %s to %s mm a side do"
                .formatted(
                    Pencil.number(widthMm),
                    Pencil.number(heightMm),
                    Pencil.number(LEAST_SIDE_MM),
                    Pencil.number(MOST_SIDE_MM)));
      }
    }
    double edges = motif.edgesOn(widthMm * heightMm);
    if (edges > MOST_EDGES) {
      throw new MotifFault(
          MotifParameter.PITCH,
          String.format(
              Locale.ROOT,
              "%s with %s on %s x %s mm make about %.0f edges; %d fit",
              motif.kind().word(),
              motif.told(),
              Pencil.number(widthMm),
              Pencil.number(heightMm),
              edges,
              MOST_EDGES));
    }
  }

  /** The rectangle that repeats on the sheet; empty at angles that are not quarter turns. */
  public Optional<Motif.Tile> tile() {
    if (angleDegrees % 180 == 0) {
      return motif.tile();
    }
    return angleDegrees % 90 == 0
        ? motif.tile().map(t -> new Motif.Tile(t.heightMm(), t.widthMm()))
        : Optional.empty();
  }

  /** Whether sheets of this size join side by side without a seam. */
  public boolean seamless(double widthMm, double heightMm) {
    return tile()
        .map(t -> whole(widthMm / t.widthMm()) && whole(heightMm / t.heightMm()))
        .orElse(false);
  }

  private static boolean whole(double tiles) {
    return Math.rint(tiles) >= 1 && Math.abs(tiles - Math.rint(tiles)) < 1e-6;
  }

  /** A number with up to six digits, without an exponent or idle zeros, as {@link #told} has it. */
  public static String number(double value) {
    return Pencil.number(value);
  }

  /** The motif and its values in words. */
  public String told() {
    return "%s, %s, angle %s deg, lines %s"
        .formatted(
            motif.kind().word(),
            motif.told(),
            Pencil.number(angleDegrees),
            clearLines ? "clear" : "opaque");
  }
}
