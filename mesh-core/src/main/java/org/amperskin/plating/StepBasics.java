package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Dimension;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/**
 * What tank and brush steps share: name, region, recipe, surface, target and the two overrides.
 *
 * @param density current density asked for (A/m2), if not the recipe's
 * @param metalDensity density of the deposit (kg/m3), if not the recipe's
 */
record StepBasics(
    String name,
    String region,
    Recipe recipe,
    PlatedSurface surface,
    Target target,
    OptionalDouble density,
    OptionalDouble metalDensity) {
  /** Key of the thickness or depth that was there before (um). */
  static final String ALREADY = "alreadyUm";

  static final Unit A_PER_DM2 = Unit.of("A/dm2");

  StepBasics {
    if (name.isBlank()) {
      throw new IllegalArgumentException("step with recipe " + recipe.id() + " has no name");
    }
    density.ifPresent(d -> Faraday.positive("current density", d, "A/m2"));
    metalDensity.ifPresent(d -> Faraday.positive("density of the deposit", d, "kg/m3"));
  }

  /** The density to work at, told as an assumption when it is the recipe's own. */
  CurrentDensity workingDensity(EstimateBuilder out) {
    Figure figure = recipe.needed(FigureKey.DENSITY);
    if (density.isEmpty()) {
      out.assume(Assumption.of("current density", figure));
      return new CurrentDensity(figure.typicalSi());
    }
    return new CurrentDensity(density.getAsDouble());
  }

  /** Warns when the density leaves the window, naming the current at its nearer end. */
  void checkWindow(CurrentDensity working, Unit shown, double areaM2, EstimateBuilder out) {
    Window window = recipe.needed(FigureKey.DENSITY).window(shown);
    double value = shown.fromSi(working.amperesPerSquareMetre());
    if (window.contains(value)) {
      return;
    }
    boolean high = value > window.high();
    double end = high ? window.high() : window.low();
    out.warn(
        "current density "
            + Quantity.plain(value, 3)
            + " "
            + shown
            + " lies "
            + (high ? "above" : "below")
            + " the window of "
            + recipe.name()
            + ", "
            + Quantity.plain(window.low(), 3)
            + " to "
            + Quantity.plain(window.high(), 3)
            + " "
            + shown
            + ": "
            + outside(high)
            + "; set "
            + Quantity.show(shown.toSi(end) * areaM2, Dimension.CURRENT)
            + " for "
            + Quantity.plain(end, 3)
            + " "
            + shown);
  }

  private String outside(boolean high) {
    if (recipe.how() == How.ETCH) {
      return high ? "the surface may passivate and go rough" : "it goes unevenly";
    }
    return high ? "the deposit may burn" : "it may not cover";
  }

  /** Density of the deposit with its spread; a given one is taken as it is. */
  Spread.Triangle depositDensity(EstimateBuilder out) {
    Figure figure = recipe.needed(FigureKey.METAL_DENSITY);
    Spread.Triangle density = out.ownOr("density of the deposit", metalDensity, figure);
    if (!new Window(figure.lowSi(), figure.highSi()).contains(density.typical())) {
      out.warn(
          "density of the deposit "
              + Quantity.show(density.typical(), Dimension.DENSITY)
              + " lies outside the usual "
              + figure.show());
    }
    return density;
  }

  MassDensity typicalDepositDensity() {
    return new MassDensity(metalDensity.orElse(recipe.needed(FigureKey.METAL_DENSITY).typicalSi()));
  }

  EstimateBuilder start() {
    return new EstimateBuilder(name, region, recipe.how(), surface, Optional.of(recipe));
  }

  /** The band of the current if the area is off by its error. */
  void currentBand(double currentA, EstimateBuilder out) {
    double share = surface.areaErrorMm2() / surface.openAreaMm2();
    if (share > 0) {
      out.currentBandA(new Window(currentA * Math.max(0, 1 - share), currentA * (1 + share)));
    }
  }

  void expect(How how) {
    if (recipe.how() != how) {
      throw new IllegalArgumentException(
          "recipe " + recipe.id() + " is for " + recipe.how().key() + ", not for " + how.key());
    }
  }

  /** Efficiency as charge and weighing of this part tell it, without spread. */
  Spread.Triangle weighed(String what, double share, EstimateBuilder out) {
    if (share > 1) {
      out.warn(
          "the weighing tells an efficiency of "
              + Quantity.plain(100 * share, 3)
              + " %, more than all of the charge: weigh again, dry and with the same wire; 100 % was"
              + " taken");
    }
    double taken = Math.min(1, share);
    out.assume(
        new Assumption(
            what,
            Quantity.plain(100 * taken, 3) + " %, as weighed on this part",
            Mark.COMPUTED,
            (recipe.how() == How.ETCH ? "loss" : "gain") + " over Faraday's law"));
    return Spread.Triangle.known(taken);
  }

  /** Why nothing is left to do, or why what was done cannot be counted; empty if all is well. */
  Optional<String> nothingLeft(Already done, double doneC, double wantedC) {
    boolean off = recipe.how() == How.ETCH;
    if (target instanceof Target.Thickness || done.chargeAh().isPresent()) {
      double share = doneC / wantedC;
      return share < 1
          ? Optional.empty()
          : Optional.of(
              "what was done already, "
                  + done.basis()
                  + ", is "
                  + Quantity.plain(100 * share, 3)
                  + " % of what is wanted: nothing is left to "
                  + (off ? "take off" : "plate"));
    }
    return Optional.of(
        "what was done already is told "
            + done.basis()
            + ", but the step ends by charge: tell the charge that has passed");
  }

  /** Tells what is there and what is still to come. */
  void tellAlready(Already done, double doneC, double leftC, EstimateBuilder out) {
    tellAlready(done, doneC, leftC, doneC / (doneC + leftC), out);
  }

  /**
   * The same where thickness does not go by charge.
   *
   * @param share thickness or depth reached over that wanted
   */
  void tellAlready(Already done, double doneC, double leftC, double share, EstimateBuilder out) {
    if (target instanceof Target.Thickness t) {
      double um = t.thickness().inUm();
      out.figure(ALREADY, "already", um * share, "um", Mark.COMPUTED, done.basis());
      out.figure(
          "leftUm",
          "left",
          um * (1 - share),
          "um",
          Mark.COMPUTED,
          "time, charge and metal are those of what is left");
    } else {
      double charge = 100 * doneC / (doneC + leftC);
      out.figure("alreadyShare", "already", charge, "%", Mark.COMPUTED, done.basis());
    }
    if (recipe.how() == How.ETCH) {
      out.notes.add(
          new Note(
              "Before going on: rinse, wipe the smut off, look at an opening with a lens, and go in"
                  + " wet.",
              Mark.COMMON,
              Assumption.PRACTICE));
      return;
    }
    out.notes.add(
        new Note(
            "Before going on: rinse, activate "
                + (recipe.metal() == Metal.COPPER
                    ? "30 s in dilute sulfuric acid"
                    : "as before the step")
                + " and go in wet, current on; a layer that dried or passivated peels.",
            Mark.COMMON,
            Assumption.PRACTICE));
  }
}
