package org.amperskin.plating;

import java.util.Optional;
import org.amperskin.units.Quantity;
import org.amperskin.units.Volume;

/**
 * The numbers of work between the plating steps: how much of what, how long hands are busy, how
 * long it waits.
 *
 * <p>Definition: volumes go by the area of the step's region, times what is lost beside it; times
 * of hands and waits are rules of thumb. Guaranteed: every figure carries mark and basis. Not
 * guaranteed: what a data sheet says otherwise; it goes before these. Sources: coverage of paint
 * and resist from makers' data sheets; overspray 1.5 to 3 times (common practice, no source);
 * drag-out after J. B. Kushner's tables (from memory); current for a wire by 700 circular mils an
 * ampere (Handbook of Electronic Tables and Formulas) and Preece's fusing current 80 d^1.5 (from
 * memory).
 */
final class WorkFigures {
  private static final String THUMB = Assumption.PRACTICE;
  private static final double MIN = 60;
  private static final double HOUR = 3600;
  private static final double PAINT_ML_PER_DM2 = 6.3;
  private static final double RESIST_ML_PER_DM2 = 2;
  private static final double RESIST_SHEET_UM = 8;
  private static final double[] OVERSPRAY = {1.5, 2, 3};
  private static final double RINSED_TO = 1e-3;
  private static final double BAKE_C = 70;
  private static final double MM_PER_MIL = 0.0254;
  private static final double MILS_PER_AMPERE = 700;
  private static final double PREECE = 80;

  private final EstimateBuilder out;
  private final WorkConditions known;
  private final double areaDm2;

  WorkFigures(EstimateBuilder out, PlatedSurface surface, WorkConditions known) {
    this.out = out;
    this.known = known;
    this.areaDm2 = surface.traversedAreaMm2() / 10_000;
  }

  void of(WorkKind kind) {
    switch (kind) {
      case FILL -> pace(5 + 4 * areaDm2, 2 * HOUR);
      case SAND -> sand();
      case SCOUR_OFF -> pace(5 + 8 * areaDm2, 0);
      case SEAL -> seal();
      case PAINT -> paint();
      case WIRE -> wire();
      case CLEAN, ELECTROCLEAN -> pace(3, 0);
      case ACTIVATE -> activate();
      case STOP_OFF -> pace(5 + 2 * areaDm2, 30 * MIN);
      case RESIST -> resist();
      case EXPOSE -> expose();
      case DEVELOP -> develop();
      case STRIP -> strip();
      case RINSE -> rinse();
      case DRY -> pace(1, 10 * MIN);
      case OIL -> oil();
      case CHROMIUM_OFF -> {
        range("dipMin", "dip", 1, 3, 10, "min", "look every minute; " + THUMB);
        double litres = coveringL();
        range("dipL", "dip bath", litres, litres, 2 * litres, "L", "covers the part; " + THUMB);
        pace(5, 0);
      }
      case ETCH -> {
        // what an etch takes depends on the etchant alone
      }
    }
  }

  private void pace(double handsMinutes, double waitS) {
    out.handsS(handsMinutes * MIN).waitS(waitS);
  }

  private void add(
      String key,
      String label,
      String unit,
      double perDm2,
      double[] spread,
      Mark mark,
      String how) {
    out.figure(key, label, unit, perDm2 * areaDm2, spread, mark, how);
  }

  private void range(
      String key, String label, double low, double value, double high, String unit, String how) {
    out.figure(key, label, unit, 1, new double[] {low, value, high}, Mark.COMMON, how);
  }

  private void sand() {
    out.figures.add(
        new StepFigure(
            "areaBeforeRatio",
            "as printed",
            Math.sqrt(2),
            "x",
            Optional.of(new Band(1, Math.PI / 2)),
            Mark.COMPUTED,
            "true over smooth area: 1.41 for stairs of 45 deg, 1.57 for half-round beads; plans"
                + " count the smooth area, so sand until layers cannot be felt"));
    pace(5 + 8 * areaDm2, 0);
  }

  private void seal() {
    add(
        "sealMl",
        "sealer",
        "mL",
        1,
        new double[] {1, 2, 3},
        Mark.COMMON,
        "two thin coats; " + THUMB);
    pace(5 + 2 * areaDm2, 12 * HOUR);
  }

  private void paint() {
    add(
        "paintMl",
        "paint",
        "mL",
        PAINT_ML_PER_DM2,
        OVERSPRAY,
        Mark.READ,
        "aerosol, 50 um dry: 6.3 mL/dm2 (maker's data sheet), overspray 1.5 to 3 times");
    out.figure("coats", "coats", 3, "", Mark.COMMON, "thin and crossed, 10 min between; " + THUMB);
    known
        .sheetResistanceOhm()
        .ifPresent(
            ohm ->
                out.figure(
                    "stripOhm",
                    "strip test",
                    5 * ohm,
                    "ohm",
                    Mark.COMPUTED,
                    "a strip 100 mm long and 20 mm wide, contacts across its ends: R = R_s L/W"));
    pace(10 + 4 * areaDm2, HOUR);
  }

  private void wire() {
    known
        .wire()
        .ifPresent(
            w -> {
              double d = w.diameter().inMm();
              out.figure(
                  "wireOhm",
                  "resistance",
                  w.resistanceOhm(),
                  "ohm",
                  Mark.COMPUTED,
                  "end to end, copper at 20 C");
              out.figure(
                  "wireAreaMm2",
                  "takes metal",
                  w.area().inMm2(),
                  "mm2",
                  Mark.COMPUTED,
                  "pi d L, counted in the tank's current");
              out.figure(
                  "wireCurrentA",
                  "lead carries",
                  (d / MM_PER_MIL) * (d / MM_PER_MIL) / MILS_PER_AMPERE,
                  "A",
                  Mark.READ,
                  "above the bath, 700 circular mils an ampere; several leads share");
              out.figure(
                  "wireFusesA",
                  "fuses at",
                  PREECE * Math.pow(d, 1.5),
                  "A",
                  Mark.MEMORY,
                  "in air, Preece 80 d^1.5: never near it");
            });
    pace(15, 0);
    out.notes.add(
        new Note(
            "Wires leave marks: after an hour of copper move them, else they are buried.",
            Mark.COMMON,
            THUMB));
  }

  private void activate() {
    range("activateS", "dip or swab", 15, 30, 60, "s", THUMB);
    pace(2, 0);
  }

  private void resist() {
    double um = known.resistUm().orElse(RESIST_SHEET_UM);
    add(
        "resistMl",
        "resist",
        "mL",
        RESIST_ML_PER_DM2 * um / RESIST_SHEET_UM,
        OVERSPRAY,
        Mark.READ,
        Quantity.plain(um, 2)
            + " um: 2 mL/dm2 at 8 um (maker's data sheet), overspray 1.5 to 3 times");
    boolean bake = known.print().map(p -> p.warmestBathC() >= BAKE_C).orElse(false);
    out.figure(
        "dryS",
        "drying",
        bake ? 15 * MIN : 24 * HOUR,
        "s",
        Mark.MEMORY,
        bake
            ? "at 70 C, which this print stands; or 24 h at room temperature"
            : "at room temperature: "
                + known
                    .print()
                    .map(p -> p.name() + " must stay below " + Quantity.plain(p.warmestBathC(), 2))
                    .orElse("most prints soften near 70")
                + " C, so no bake at 70 C");
    range(
        "edgeDoseRatio",
        "runs need",
        2,
        2.5,
        3,
        "x",
        "the dose, where resist stands thick in corners and runs; " + THUMB);
    pace(10 + 2 * areaDm2, bake ? 15 * MIN : 24 * HOUR);
  }

  private void expose() {
    known
        .exposureS()
        .ifPresent(
            s -> {
              Optional<Band> window =
                  known.exposureLatestS().isPresent() && known.exposureLatestS().getAsDouble() > s
                      ? Optional.of(new Band(s, known.exposureLatestS().getAsDouble()))
                      : Optional.empty();
              out.figures.add(
                  new StepFigure(
                      "exposureS",
                      "exposure",
                      s,
                      "s",
                      window,
                      Mark.COMPUTED,
                      "for the least lit place under the film; up to where covered resist"
                          + " suffers"));
            });
    pace(10 + known.exposureS().orElse(0) / MIN, 0);
  }

  /** What covers the part in a vessel that fits it. */
  private double coveringL() {
    return Math.max(0.5, 0.25 * areaDm2);
  }

  private void develop() {
    double litres = coveringL();
    range("developerL", "developer", litres, litres, 2 * litres, "L", "covers the part; " + THUMB);
    out.figure(
        "sodiumHydroxideG",
        "weigh in",
        DeveloperMix.of(new Volume(litres / 1000)).sodiumHydroxide().inGrams(),
        "g",
        Mark.COMPUTED,
        "sodium hydroxide, 7 g/L: amperskin mix developer");
    range("developS", "time", 30, 60, 120, "s", "fresh each day, 20-25 C; " + THUMB);
    known
        .print()
        .filter(PrintMaterial::polyester)
        .ifPresent(
            p ->
                out.notes.add(
                    new Note(
                        "Alkali eats "
                            + p.name()
                            + " and lifts acrylic paint where the copper has a pinhole: 2 min of 7 g/L do"
                            + " little, 10 min do; rinse at once.",
                        Mark.COMMON,
                        Assumption.PRACTICE)));
    pace(5, 0);
  }

  private void strip() {
    add(
        "solventMl",
        "solvent",
        "mL",
        20,
        new double[] {0.5, 1, 2},
        Mark.COMMON,
        "acetone or ester on a cloth; " + THUMB);
    pace(5 + 2 * areaDm2, 0);
  }

  private void rinse() {
    double dragMl = TankBalance.DRAG_OUT_ML_PER_DM2[1] * areaDm2;
    add(
        "dragOutMl",
        "carried over",
        "mL",
        1,
        TankBalance.DRAG_OUT_ML_PER_DM2,
        Mark.MEMORY,
        "solution on the part, well to very poorly drained (Kushner)");
    out.figure(
        "rinseL",
        "each rinse",
        dragMl / Math.sqrt(RINSED_TO) / 1000,
        "L",
        Mark.COMPUTED,
        "two still rinses bring what clings to 1/1000: (carried over / rinse)^2");
    pace(3, 0);
  }

  private void oil() {
    add(
        "oilMl",
        "oil",
        "mL",
        0.1,
        new double[] {0.5, 1, 2},
        Mark.COMMON,
        "thin film, wiped off; " + THUMB);
    pace(2 + areaDm2, 0);
  }
}
