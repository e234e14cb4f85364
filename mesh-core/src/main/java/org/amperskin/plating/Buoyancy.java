package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Quantity;

/**
 * Whether a part floats, and what holds it down.
 *
 * <p>Definition (Archimedes): upthrust in grams = density of the bath x volume pushed aside. The
 * part's mass = plastic's density x (shell + infill x rest), shell = skin x wall, at most all of
 * it. Ballast inside pushes nothing more aside: it weighs what is lacking; hung below it needs 1/(1
 * - bath/ballast) as much. Guaranteed: a part that is solid and of the bath's density hovers. Not
 * guaranteed: shells thicker than half the part's thickness are counted twice over, up to solid.
 * Sources: densities of plastics from makers' data sheets and of baths 1.05 to 1.25 g/cm3, both
 * from memory.
 */
final class Buoyancy {
  private static final double BATH = 1.15;
  private static final double BATH_LOW = 1.05;
  private static final double BATH_HIGH = 1.25;
  private static final double STEEL = 7.9;
  private static final double USUAL_WALL_MM = 1.2;

  private final PartBody part;
  private final double bath;
  private final boolean told;

  Buoyancy(PartBody part, OptionalDouble bathDensity) {
    this.part = part;
    told = bathDensity.isPresent();
    bath = bathDensity.orElse(1000 * BATH) / 1000;
  }

  private double cm3() {
    return part.displacedMm3().orElse(0) / 1000;
  }

  /** Mass of liquid pushed aside (g). */
  double upthrustG() {
    return bath * cm3();
  }

  /** Plastic in the part (cm3), if its infill is told. */
  private OptionalDouble plasticCm3() {
    if (part.infill().isEmpty()) {
      return OptionalDouble.empty();
    }
    double shell = Math.min(cm3(), part.skinMm2() * part.wallMm().orElse(USUAL_WALL_MM) / 1000);
    return OptionalDouble.of(shell + part.infill().getAsDouble() * (cm3() - shell));
  }

  /** Mass of the print (g), if infill and material are told. */
  OptionalDouble printG() {
    OptionalDouble plastic = plasticCm3();
    return plastic.isPresent() && part.print().isPresent()
        ? OptionalDouble.of(plastic.getAsDouble() * part.print().get().densityGPerCm3())
        : OptionalDouble.empty();
  }

  List<StepFigure> figures(double depositG) {
    List<StepFigure> figures = new ArrayList<>();
    if (part.displacedMm3().isEmpty()) {
      return figures;
    }
    figures.add(
        new StepFigure(
            "upthrustG",
            "floats below",
            upthrustG(),
            "g",
            told ? Optional.empty() : Optional.of(new Band(BATH_LOW * cm3(), BATH_HIGH * cm3())),
            told ? Mark.COMPUTED : Mark.MEMORY,
            "weighed dry with its wire: it pushes aside "
                + Quantity.plain(cm3(), 4)
                + " cm3 of bath of "
                + Quantity.plain(bath, 3)
                + " g/cm3"
                + (told ? "" : ", usual are 1.05 to 1.25")));
    OptionalDouble print = printG();
    if (print.isEmpty()) {
      return figures;
    }
    figures.add(
        StepFigure.of(
            "printG",
            "print",
            print.getAsDouble(),
            "g",
            Mark.MEMORY,
            part.print().get().name()
                + " of "
                + Quantity.plain(part.print().get().densityGPerCm3(), 3)
                + " g/cm3 (maker's data sheet), walls "
                + Quantity.plain(part.wallMm().orElse(USUAL_WALL_MM), 2)
                + " mm"
                + (part.wallMm().isPresent() ? "" : " (rule of thumb)")
                + ", infill "
                + Quantity.plain(100 * part.infill().getAsDouble(), 3)
                + " %; weigh it to be sure"));
    double lift = upthrustG() - print.getAsDouble();
    if (lift > 0) {
      Optional<Band> band = band(print.getAsDouble());
      figures.add(
          new StepFigure(
              "ballastInsideG",
              "ballast in it",
              lift,
              "g",
              band,
              Mark.COMPUTED,
              "to hover: poured in and sealed before painting; take a quarter more to hang steady"
                  + " (rule of thumb)"));
      double below = 1 / (1 - bath / STEEL);
      figures.add(
          new StepFigure(
              "ballastBelowG",
              "or below it",
              lift * below,
              "g",
              band.map(b -> new Band(b.low() * below, b.high() * below)),
              Mark.COMPUTED,
              "of steel, 7.9 g/cm3, lacquered all over: bare it would dissolve or plate"));
    }
    if (depositG > 0) {
      figures.add(
          StepFigure.of(
              "depositG",
              "metal adds",
              depositG,
              "g",
              Mark.COMPUTED,
              lift <= 0
                  ? "by the end; it sinks from the start"
                  : depositG >= lift
                      ? "by the end: it floats at first and sinks later"
                      : "by the end: it still floats without ballast"));
    }
    return figures;
  }

  private Optional<Band> band(double printG) {
    return told
        ? Optional.empty()
        : Optional.of(
            new Band(
                Math.max(0, BATH_LOW * cm3() - printG), Math.max(0, BATH_HIGH * cm3() - printG)));
  }

  List<String> warnings() {
    if (part.displacedMm3().isEmpty() && part.infill().isPresent()) {
      return List.of(
          "float and ballast are not told: the skin encloses 0 cm3 as the file has open edges; repair"
              + " the print file, or weigh the part hanging in water");
    }
    OptionalDouble plastic = plasticCm3();
    double hollow = plastic.isPresent() ? cm3() - plastic.getAsDouble() : 0;
    if (!(hollow > 0.005 * cm3())) {
      return List.of();
    }
    return List.of(
        Quantity.plain(hollow, 3)
            + " cm3 of the print are air in its infill: through a pinhole they take up "
            + Quantity.plain(hollow * bath, 3)
            + " g of bath, the part sinks, and bath creeps out under the metal later; seal it and"
            + " hold it under water before painting");
  }
}
