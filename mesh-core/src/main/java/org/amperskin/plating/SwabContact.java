package org.amperskin.plating;

import java.util.OptionalDouble;
import org.amperskin.units.Quantity;

/**
 * Where a swab touches the work, by its shape and the work's local curvature.
 *
 * <p>Definition: a soft wrap pressed in by c touches where the gap is less than c. Of two round
 * bodies of relative curvature 1/R = 1/R_swab +- 1/R_part (plus on a hump, minus in a hollow) the
 * gap x from the middle is x^2/(2R), so the band is a chord of 2 sqrt(2 R c). Flat and round swabs
 * have 1/R_swab = 0 and touch with all of their face at most. Guaranteed: exact for parabolas; for
 * circles c/(4R) of the chord too wide. Not guaranteed: doubly curved places; measure a wet print
 * there. Source: geometry.
 *
 * @param areaMm2 area that touches (mm2)
 * @param widthMm width across the movement (mm)
 * @param basis how it comes about
 */
public record SwabContact(double areaMm2, OptionalDouble widthMm, String basis) {
  public SwabContact {
    Faraday.positive("contact area of the swab", areaMm2, "mm2");
  }

  /**
   * The work under the swab.
   *
   * @param radiusMm radius of its curve (mm), positive on a hump, negative in a hollow; empty if
   *     flat
   * @param pressedMm how deep the wrap is pressed in (mm)
   */
  public record Work(OptionalDouble radiusMm, double pressedMm) {
    public Work {
      Faraday.positive("depth to which the wrap is pressed", pressedMm, "mm");
      if (radiusMm.isPresent() && !(Math.abs(radiusMm.getAsDouble()) > 0)) {
        throw new IllegalArgumentException("radius of the work is 0 mm");
      }
    }

    double curvature() {
      return radiusMm.isPresent() ? 1 / radiusMm.getAsDouble() : 0;
    }

    String show() {
      if (radiusMm.isEmpty()) {
        return "flat work";
      }
      double r = radiusMm.getAsDouble();
      return (r > 0 ? "a hump" : "a hollow")
          + " of radius "
          + Quantity.plain(Math.abs(r), 3)
          + " mm, wrap pressed in by "
          + Quantity.plain(pressedMm, 2)
          + " mm";
    }
  }

  /** From a wet print on paper, measured. */
  public static SwabContact print(double areaMm2) {
    return new SwabContact(areaMm2, OptionalDouble.empty(), "wet print on paper, as measured");
  }

  /**
   * A flat swab moved along its length.
   *
   * @param widthMm across the movement, and round the work's curve (mm)
   * @param lengthMm along it (mm)
   */
  public static SwabContact flat(double widthMm, double lengthMm, Work work) {
    Faraday.positive("width of the swab", widthMm, "mm");
    Faraday.positive("length of the swab", lengthMm, "mm");
    double touching = touching(widthMm, work);
    return new SwabContact(
        touching * lengthMm,
        OptionalDouble.of(touching),
        "flat "
            + Quantity.plain(widthMm, 3)
            + " x "
            + Quantity.plain(lengthMm, 3)
            + " mm on "
            + work.show()
            + share(touching, widthMm));
  }

  /** A round flat swab. */
  public static SwabContact round(double diameterMm, Work work) {
    Faraday.positive("diameter of the swab", diameterMm, "mm");
    double touching = touching(diameterMm, work);
    double r = diameterMm / 2;
    double h = touching / 2;
    // a band of half-width h across a disk; in a hollow the two caps beside it
    boolean hollow = work.curvature() < 0;
    double x = hollow ? r - h : h;
    double band = 2 * (x * Math.sqrt(Math.max(0, r * r - x * x)) + r * r * Math.asin(x / r));
    double area = hollow ? Math.PI * r * r - band : band;
    return new SwabContact(
        area,
        OptionalDouble.of(hollow ? diameterMm : touching),
        "round "
            + Quantity.plain(diameterMm, 3)
            + " mm on "
            + work.show()
            + share(touching, diameterMm));
  }

  /**
   * A roll lying across the movement.
   *
   * @param diameterMm over the wrap (mm)
   * @param lengthMm along its axis (mm)
   * @throws IllegalArgumentException if it is wider than the hollow it lies in
   */
  public static SwabContact roll(double diameterMm, double lengthMm, Work work) {
    Faraday.positive("diameter of the swab", diameterMm, "mm");
    Faraday.positive("length of the swab", lengthMm, "mm");
    double relative = 2 / diameterMm + work.curvature();
    if (!(relative > 0)) {
      throw new IllegalArgumentException(
          "a roll of "
              + Quantity.plain(diameterMm, 3)
              + " mm does not go into a hollow of radius "
              + Quantity.plain(-work.radiusMm().getAsDouble(), 3)
              + " mm: take one below "
              + Quantity.plain(-2 * work.radiusMm().getAsDouble(), 3)
              + " mm");
    }
    // never wider than the roll itself
    double chord = Math.min(diameterMm, chordMm(1 / relative, work.pressedMm()));
    return new SwabContact(
        chord * lengthMm,
        OptionalDouble.of(lengthMm),
        "roll "
            + Quantity.plain(diameterMm, 3)
            + " x "
            + Quantity.plain(lengthMm, 3)
            + " mm on "
            + work.show()
            + (work.radiusMm().isEmpty()
                ? ", wrap pressed in by " + Quantity.plain(work.pressedMm(), 2) + " mm"
                : "")
            + ": a band "
            + Quantity.plain(chord, 3)
            + " mm wide");
  }

  /** Chord of contact 2 sqrt(2 R c) (mm). */
  static double chordMm(double radiusMm, double pressedMm) {
    return 2 * Math.sqrt(2 * radiusMm * pressedMm);
  }

  /** How much of a flat face of this width touches (mm), in a hollow at its two edges. */
  private static double touching(double widthMm, Work work) {
    double k = work.curvature();
    if (k == 0) {
      return widthMm;
    }
    double chord = chordMm(1 / Math.abs(k), work.pressedMm());
    if (k > 0 || chord >= widthMm) {
      return Math.min(widthMm, chord);
    }
    return widthMm - Math.sqrt(widthMm * widthMm - chord * chord);
  }

  private static String share(double touching, double widthMm) {
    return touching < widthMm * (1 - 1e-9)
        ? ": " + Quantity.plain(touching, 3) + " mm of its width touch"
        : ": all of it touches";
  }
}
