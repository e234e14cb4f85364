package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.Volume;

/** Gathers a {@link StepEstimate}; what is not set stays absent. */
final class EstimateBuilder {
  private static final double WORTH_TELLING_L = 0.05;
  private static final double BURNS_FROM = 0.04;
  private static final double LONGEST_S = 30 * 86_400.0;

  private final String name;
  private final String region;
  private final How how;
  private final PlatedSurface surface;
  private final Optional<Recipe> recipe;
  private final List<RampPoint> ramp = new ArrayList<>();
  private Optional<String> refusal = Optional.empty();
  final List<String> warnings = new ArrayList<>();
  final List<Caution> cautions = new ArrayList<>();
  final List<Note> notes = new ArrayList<>();
  final List<Assumption> assumptions = new ArrayList<>();
  private OptionalDouble densityADm2 = OptionalDouble.empty();
  private Optional<Window> densityWindowADm2 = Optional.empty();
  private OptionalDouble currentA = OptionalDouble.empty();
  private Optional<Window> currentBandA = Optional.empty();
  private OptionalDouble voltageV = OptionalDouble.empty();
  private Optional<Window> voltageWindowV = Optional.empty();
  private OptionalDouble timeS = OptionalDouble.empty();
  private Optional<Band> timeBandS = Optional.empty();
  private OptionalDouble rampExtraS = OptionalDouble.empty();
  private OptionalDouble chargeAh = OptionalDouble.empty();
  private OptionalDouble massG = OptionalDouble.empty();
  private Optional<Band> massBandG = Optional.empty();
  private OptionalDouble thicknessUm = OptionalDouble.empty();
  private Optional<Band> thicknessBandUm = Optional.empty();
  private OptionalDouble rateUmPerH = OptionalDouble.empty();
  private OptionalDouble anodeAreaMm2 = OptionalDouble.empty();
  private OptionalDouble contactAreaMm2 = OptionalDouble.empty();
  private OptionalDouble dwellS = OptionalDouble.empty();
  private OptionalDouble passes = OptionalDouble.empty();
  private OptionalDouble speedMPerMin = OptionalDouble.empty();
  private OptionalDouble solutionL = OptionalDouble.empty();
  private OptionalDouble bathL = OptionalDouble.empty();
  private OptionalDouble tankLoadDm2PerL = OptionalDouble.empty();
  private OptionalDouble tankCurrentAPerL = OptionalDouble.empty();
  private OptionalDouble hydrogenL = OptionalDouble.empty();
  private OptionalDouble handsS = OptionalDouble.empty();
  private OptionalDouble waitS = OptionalDouble.empty();
  final List<StepFigure> figures = new ArrayList<>();
  private final List<Uncertain> uncertain = new ArrayList<>();

  EstimateBuilder(
      String name, String region, How how, PlatedSurface surface, Optional<Recipe> recipe) {
    this.name = name;
    this.region = region;
    this.how = how;
    this.surface = surface;
    this.recipe = recipe;
    recipe.ifPresent(
        r -> {
          cautions.addAll(r.allCautions());
          notes.addAll(r.notes());
        });
  }

  EstimateBuilder refuse(String why) {
    refusal = Optional.of(why);
    return this;
  }

  EstimateBuilder ramp(List<RampPoint> points) {
    ramp.addAll(points);
    return this;
  }

  EstimateBuilder warn(String text) {
    warnings.add(text);
    return this;
  }

  EstimateBuilder assume(Assumption assumption) {
    assumptions.add(assumption);
    return this;
  }

  /** A value of the user's own without spread, or the recipe's with its spread; told either way. */
  Spread.Triangle ownOr(String what, OptionalDouble own, Figure figure) {
    assume(Assumption.ownOr(what, own, figure));
    return own.isPresent() ? Spread.Triangle.known(own.getAsDouble()) : figure.triangleSi();
  }

  EstimateBuilder densityADm2(double value) {
    densityADm2 = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder densityWindowADm2(Window value) {
    densityWindowADm2 = Optional.of(value);
    return this;
  }

  EstimateBuilder currentA(double value) {
    currentA = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder currentBandA(Window value) {
    currentBandA = Optional.of(value);
    return this;
  }

  EstimateBuilder voltageV(double value) {
    voltageV = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder voltageWindowV(Window value) {
    voltageWindowV = Optional.of(value);
    return this;
  }

  EstimateBuilder timeS(double value) {
    timeS = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder timeBandS(Band value) {
    timeBandS = Optional.of(value);
    return this;
  }

  EstimateBuilder rampExtraS(double value) {
    rampExtraS = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder chargeAh(double value) {
    chargeAh = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder massG(double value) {
    massG = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder massBandG(Band value) {
    massBandG = Optional.of(value);
    return this;
  }

  EstimateBuilder thicknessUm(double value) {
    thicknessUm = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder thicknessBandUm(Band value) {
    thicknessBandUm = Optional.of(value);
    return this;
  }

  EstimateBuilder rateUmPerH(double value) {
    rateUmPerH = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder anodeAreaMm2(double value) {
    anodeAreaMm2 = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder contactAreaMm2(double value) {
    contactAreaMm2 = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder dwellS(double value) {
    dwellS = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder passes(double value) {
    passes = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder speedMPerMin(double value) {
    speedMPerMin = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder solutionL(double value) {
    solutionL = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder bathL(double value) {
    bathL = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder tankLoadDm2PerL(double value) {
    tankLoadDm2PerL = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder tankCurrentAPerL(double value) {
    tankCurrentAPerL = OptionalDouble.of(value);
    return this;
  }

  /** A figure without a band. */
  EstimateBuilder figure(
      String key, String label, double value, String unit, Mark mark, String basis) {
    figures.add(StepFigure.of(key, label, value, unit, mark, basis));
    return this;
  }

  /** A figure that is so much each: low, typical and high. */
  EstimateBuilder figure(
      String key, String label, String unit, double by, double[] each, Mark mark, String basis) {
    Band band = new Band(each[0] * by, each[2] * by);
    figures.add(new StepFigure(key, label, each[1] * by, unit, Optional.of(band), mark, basis));
    return this;
  }

  /** Carries unknowns into a band of a result, and remembers how far each moves it. */
  Band band(String result, String unit, ToDoubleFunction<double[]> value, Unknown... unknowns) {
    List<Unknown> list = List.of(unknowns);
    uncertain.add(new Uncertain(name, result, unit, true, value, list));
    return Spread.of(value, Unknown.ranges(list)).with(value.applyAsDouble(Unknown.typicals(list)));
  }

  /** Remembers a result of which only sums over steps need a band. */
  void uncertain(
      String result, String unit, ToDoubleFunction<double[]> value, Unknown... unknowns) {
    uncertain.add(new Uncertain(name, result, unit, false, value, List.of(unknowns)));
  }

  /**
   * Tells the thinnest place, and what brings the wanted thickness to it too.
   *
   * @param doneAh charge that was passed before (A.h)
   */
  EstimateBuilder evenness(double doneAh) {
    if (surface.minToMean().isEmpty() || thicknessUm.isEmpty()) {
      return this;
    }
    double share = surface.minToMean().getAsDouble();
    String told = Quantity.plain(100 * share, 3) + " % of the mean, as told";
    figure("thinnestUm", "thinnest", thicknessUm.getAsDouble() * share, "um", Mark.COMPUTED, told);
    double once = rampExtraS.orElse(0);
    double now = chargeAh.orElse(0);
    double needed = (now + doneAh) / share - doneAh;
    figure(
        "timeForMinimumS",
        "for that much",
        once + (timeS.orElse(0) - once) * needed / now,
        "s",
        Mark.COMPUTED,
        "until the thinnest place has "
            + Quantity.plain(thicknessUm.getAsDouble(), 3)
            + " um, by "
            + Quantity.plain(needed, 4)
            + " A.h");
    return this;
  }

  EstimateBuilder handsS(double value) {
    handsS = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder waitS(double value) {
    waitS = OptionalDouble.of(value);
    return this;
  }

  EstimateBuilder hydrogenL(double value) {
    hydrogenL = OptionalDouble.of(value);
    return this;
  }

  /** Hydrogen at most set free, and how much air it would bring to its burning limit. */
  EstimateBuilder hydrogen(Volume gas) {
    double litres = gas.inLitres();
    if (litres >= WORTH_TELLING_L) {
      notes.add(
          new Note(
              "Up to "
                  + Quantity.show(gas.cubicMetres(), Dimension.VOLUME, 2)
                  + " of hydrogen: enough to make "
                  + Quantity.show(gas.cubicMetres() / BURNS_FROM, Dimension.VOLUME, 2)
                  + " of still air burn.",
              Mark.COMPUTED,
              "Faraday's law; lower limit of 4 % from safety data sheets"));
    }
    return hydrogenL(litres);
  }

  StepEstimate build() {
    if (refusal.isEmpty() && timeS.orElse(0) > LONGEST_S) {
      warn(
          "takes "
              + Quantity.plain(timeS.orElse(0) / 3600, 3)
              + " h, more than 30 days: is the unit of the part, the thickness, the depth or the"
              + " charge right?");
    }
    return new StepEstimate(
        name,
        recipe.map(Recipe::id),
        recipe.map(r -> r.metal().symbol()),
        how,
        region,
        surface.openAreaMm2(),
        surface.areaErrorMm2(),
        surface.openFraction(),
        densityADm2,
        densityWindowADm2,
        currentA,
        currentBandA,
        voltageV,
        voltageWindowV,
        timeS,
        timeBandS,
        rampExtraS,
        chargeAh,
        massG,
        massBandG,
        thicknessUm,
        thicknessBandUm,
        rateUmPerH,
        anodeAreaMm2,
        contactAreaMm2,
        dwellS,
        passes,
        speedMPerMin,
        solutionL,
        bathL,
        tankLoadDm2PerL,
        tankCurrentAPerL,
        hydrogenL,
        handsS,
        waitS,
        figures,
        uncertain,
        ramp,
        refusal,
        warnings,
        cautions,
        notes,
        assumptions);
  }
}
