package org.amperskin.plating;

import org.amperskin.units.Area;
import org.amperskin.units.Dimension;
import org.amperskin.units.Length;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/** What a moving swab touches and how it goes over the work, whichever way the current flows. */
final class SwabAtWork {
  private static final double USUAL_CONTACT_SHARE = 0.1;
  private static final double SMALLEST_CONTACT_MM2 = 100;
  private static final double LARGEST_CONTACT_MM2 = 4000;
  private static final Unit M_PER_MIN = Unit.of("m/min");

  private final Swab swab;
  private final PlatedSurface surface;
  private final EstimateBuilder out;

  SwabAtWork(Swab swab, PlatedSurface surface, EstimateBuilder out) {
    this.swab = swab;
    this.surface = surface;
    this.out = out;
  }

  /** Area that touches (m2), told or taken by rule. */
  double contactM2() {
    double traversed = surface.traversedAreaMm2();
    double contact;
    if (swab.contactAreaMm2().isPresent()) {
      contact = swab.contactAreaMm2().getAsDouble();
      String told = Quantity.show(Area.ofMm2(contact).squareMetres(), Dimension.AREA);
      swab.basis()
          .ifPresent(
              basis ->
                  out.assume(
                      new Assumption(
                          "contact area of the swab",
                          told + " by " + basis,
                          Mark.COMPUTED,
                          "shape and curvature, or as measured")));
    } else {
      contact =
          Math.min(
              traversed,
              Math.max(
                  SMALLEST_CONTACT_MM2,
                  Math.min(LARGEST_CONTACT_MM2, USUAL_CONTACT_SHARE * traversed)));
      out.assume(
          Assumption.practice(
              "contact area of the swab",
              Quantity.show(Area.ofMm2(contact).squareMetres(), Dimension.AREA)
                  + ", a tenth of the area crossed within 1 to 40 cm2"));
    }
    if (contact > traversed * (1 + 1e-9)) {
      out.warn(
          "the swab touches "
              + Quantity.show(Area.ofMm2(contact).squareMetres(), Dimension.AREA)
              + " but only "
              + Quantity.show(Area.ofMm2(traversed).squareMetres(), Dimension.AREA)
              + " is crossed: the figures take the smaller");
      contact = traversed;
    }
    return Area.ofMm2(contact).squareMetres();
  }

  /** How it moves for a time (s): speed, dwell and passes. */
  void move(Figure speed, double time, double contactM2) {
    out.dwellS(time * contactM2 / surface.traversedArea().squareMetres());
    if (swab.speedMPerMin().isEmpty()) {
      out.assume(Assumption.of("swab speed", speed));
    }
    double mPerMin = swab.speedMPerMin().orElse(M_PER_MIN.fromSi(speed.typicalSi()));
    if (!speed.window(M_PER_MIN).contains(mPerMin)) {
      out.warn(
          "swab speed "
              + Quantity.plain(mPerMin, 3)
              + " m/min lies outside "
              + speed.show()
              + ": too slow burns, too fast starves");
    }
    out.speedMPerMin(mPerMin);
    double width =
        swab.widthMm().isPresent()
            ? Length.ofMm(swab.widthMm().getAsDouble()).metres()
            : Math.sqrt(contactM2);
    if (swab.widthMm().isEmpty()) {
      out.assume(
          Assumption.practice(
              "width of the swab", Quantity.show(width, Dimension.LENGTH) + ", square contact"));
    }
    out.passes(time * M_PER_MIN.toSi(mPerMin) * width / surface.traversedArea().squareMetres());
  }
}
