package org.amperskin.plating;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.units.Quantity;

/**
 * How much room a part wants in a tank, and whether the user's tank has it.
 *
 * <p>Definition: anodes hang on two facing walls. Across: part, twice the clearance, twice 10 mm of
 * anode and bag. Along: part and 50 mm to either end wall. Down: 30 mm of bath above the part, 50
 * mm below it over the sludge. The clearance is the job's, else 100 mm or the part's longest side
 * if that is less. The part's broad faces look at the anodes: its thinnest side lies across, and of
 * the ways left the one with the least bath is taken. Fill volume = that box less what the part
 * pushes aside. Guaranteed: no box of a part that hangs upright in some way is missed. Not
 * guaranteed: parts that go in aslant. Source: 100 to 150 mm or the longest side from part to
 * anode, anodes on two sides (common practice, no source).
 */
final class TankRoom {
  private static final double USUAL_CLEARANCE_MM = 100;
  private static final double NEAREST_CLEARANCE_MM = 20;
  private static final double BETTER_CLEARANCE_MM = 150;
  private static final double ANODE_MM = 10;
  private static final double END_MM = 50;
  private static final double ABOVE_MM = 30;
  private static final double BELOW_MM = 50;
  private static final double MM3_PER_L = 1e6;

  private final PartBody part;
  private final TankShape tank;

  TankRoom(PartBody part, TankShape tank) {
    this.part = part;
    this.tank = tank;
  }

  double clearanceMm() {
    return tank.spacingMm().orElse(usualClearanceMm());
  }

  /** The longest side up to the usual, but no nearer than an anode can be hung. */
  private double usualClearanceMm() {
    return Math.max(NEAREST_CLEARANCE_MM, Math.min(USUAL_CLEARANCE_MM, part.longestMm()));
  }

  private TankShape.Inner around(double[] hung, double clearance) {
    return new TankShape.Inner(
        hung[1] + 2 * END_MM,
        hung[0] + 2 * clearance + 2 * ANODE_MM,
        hung[2] + ABOVE_MM + BELOW_MM);
  }

  private double[] hanging() {
    return part.hangings().stream()
        .filter(h -> h[0] == part.thinnestMm())
        .min(Comparator.comparingDouble(h -> around(h, clearanceMm()).brimL()))
        .orElseThrow();
  }

  /** The smallest inner size up to the surface of the bath. */
  TankShape.Inner smallest() {
    return around(hanging(), clearanceMm());
  }

  /** Solution that fills it round the part (L). */
  double fillL() {
    return smallest().brimL() - displacedL();
  }

  private double displacedL() {
    return part.displacedMm3().orElse(0) / MM3_PER_L;
  }

  List<StepFigure> figures() {
    List<StepFigure> figures = new ArrayList<>();
    figures.add(
        new StepFigure(
            "clearanceMm",
            "to the anodes",
            clearanceMm(),
            "mm",
            Optional.of(
                new Band(
                    Math.min(clearanceMm(), usualClearanceMm()),
                    Math.max(clearanceMm(), Math.max(BETTER_CLEARANCE_MM, part.longestMm())))),
            Mark.COMMON,
            (tank.spacingMm().isPresent() ? "as told; " : "")
                + "100 to 150 mm or the longest side; "
                + Assumption.PRACTICE));
    figures.add(
        StepFigure.of(
            "smallestTankL",
            "smallest tank",
            fillL(),
            "L",
            Mark.COMPUTED,
            "of solution in "
                + smallest().show()
                + ": anodes on two sides, 50 mm to the end walls, 30 mm above and 50 mm below the"
                + " part"));
    if (displacedL() > 0) {
      figures.add(
          StepFigure.of(
              "displacedL",
              "pushes aside",
              displacedL(),
              "L",
              Mark.COMPUTED,
              tank.inner()
                  .map(
                      in ->
                          "the bath rises by "
                              + Quantity.plain(
                                  displacedL() * MM3_PER_L / (in.lengthMm() * in.widthMm()), 2)
                              + " mm")
                  .orElse("leave that much room below the rim")));
    }
    return figures;
  }

  List<String> warnings() {
    List<String> warnings = new ArrayList<>();
    tank.inner().ifPresent(in -> warnings.addAll(inside(in)));
    if (tank.volumeL().isPresent() && tank.volumeL().getAsDouble() < fillL() * (1 - 1e-9)) {
      double has = tank.volumeL().getAsDouble();
      double[] hung = hanging();
      double area = smallest().lengthMm() * smallest().depthMm();
      double nearer =
          ((has + displacedL()) * MM3_PER_L / area - hung[0]) / 2 - ANODE_MM; // anodes moved in
      warnings.add(
          String.format(
              Locale.ROOT,
              "a bath of %s L is short of the %s L that this part wants with %.0f mm to the anodes:"
                  + " a larger tank, %s",
              Quantity.plain(has, 3),
              Quantity.plain(fillL(), 3),
              clearanceMm(),
              nearer > 0
                  ? String.format(
                      Locale.ROOT, "or anodes %.0f mm away, and edges come heavier", nearer)
                  : "as it does not go in with any"));
    }
    return warnings;
  }

  private List<String> inside(TankShape.Inner in) {
    List<String> warnings = new ArrayList<>();
    if (tank.volumeL().orElse(0) > in.brimL() * (1 + 1e-9)) {
      warnings.add(
          "a tank of "
              + in.show()
              + " holds "
              + Quantity.plain(in.brimL(), 3)
              + " L to the rim, not "
              + Quantity.plain(tank.volumeL().getAsDouble(), 3)
              + " L: correct 'size' or 'volume'");
    }
    double best = Double.NEGATIVE_INFINITY;
    for (double[] h : part.hangings()) {
      if (h[1] <= in.lengthMm() && h[2] + ABOVE_MM <= in.depthMm()) {
        best = Math.max(best, (in.widthMm() - h[0]) / 2 - ANODE_MM);
      }
    }
    String box =
        String.format(Locale.ROOT, "%.0f x %.0f x %.0f mm", part.xMm(), part.yMm(), part.zMm());
    if (best <= 0) {
      warnings.add(
          "the part, "
              + box
              + ", does not go into a tank of "
              + in.show()
              + " with anodes on its longer walls and 30 mm of bath above it: take at least "
              + smallest().show());
    } else if (best < clearanceMm() * (1 - 1e-9)) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "in a tank of %s the part has at most %.0f mm to the anodes, short of %.0f mm: edges"
                  + " come heavier; take at least %s, or lower the current density",
              in.show(),
              best,
              clearanceMm(),
              smallest().show()));
    }
    double full = tank.volumeL().orElse(0) + displacedL();
    if (tank.volumeL().isPresent()
        && tank.volumeL().getAsDouble() <= in.brimL()
        && full > in.brimL()) {
      warnings.add(
          "with the part in, "
              + Quantity.plain(full, 3)
              + " L stand in a tank of "
              + Quantity.plain(in.brimL(), 3)
              + " L: take out "
              + Quantity.plain(full - in.brimL(), 2)
              + " L first, or it runs over");
    }
    return warnings;
  }
}
