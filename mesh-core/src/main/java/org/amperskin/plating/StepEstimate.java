package org.amperskin.plating;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one step comes to: settings, results with their bands, warnings, cautions, assumptions.
 *
 * <p>An absent value does not apply to this kind of step, or cannot be stood behind; it is never 0
 * or NaN. Bands run from the tenth to the ninetieth percentile and hold the central value, those of
 * a dark film at least half as far again to either side. A current is a setting: it has no band but
 * that of the area. The density window is what the recipe allows, not an uncertainty. A time band
 * says how long the target thickness may take at the current set; mass and thickness bands say what
 * the stated charge may leave.
 *
 * @param name name of the step
 * @param recipe id of the recipe, if one is used
 * @param metal symbol of the metal, if one is deposited
 * @param how tank, brush, etch or prepare
 * @param region the region worked on, or "" for all
 * @param openAreaMm2 bare area (mm2)
 * @param areaErrorMm2 bound of its numerical error (mm2)
 * @param openFraction open over traversed area (0..1)
 * @param densityADm2 current density on the metal (A/dm2)
 * @param densityWindowADm2 what the recipe allows (A/dm2)
 * @param currentA current to set (A)
 * @param currentBandA current if the area is off by its error (A)
 * @param voltageV voltage to expect, an estimate (V)
 * @param voltageWindowV voltages usual for the solution (V)
 * @param timeS time until the target, slow start included (s)
 * @param timeBandS time the target may take (s)
 * @param rampExtraS part of the time owed to the slow start (s)
 * @param chargeAh charge to pass (A.h)
 * @param massG metal on the part (g)
 * @param massBandG metal the charge may leave on the part (g)
 * @param thicknessUm mean thickness (um)
 * @param thicknessBandUm mean thickness the charge may leave (um)
 * @param rateUmPerH growth at the working current; for a swab, over all it crosses in turn (um/h)
 * @param anodeAreaMm2 anode area facing the part (mm2)
 * @param contactAreaMm2 swab area that touches (mm2)
 * @param dwellS time each spot lies under the swab, all passes together (s)
 * @param passes times the swab crosses each spot
 * @param speedMPerMin swab speed (m/min)
 * @param solutionL brush solution used up (L)
 * @param bathL bath volume, given or advised (L)
 * @param tankLoadDm2PerL area per volume of bath (dm2/L)
 * @param tankCurrentAPerL current per volume of bath (A/L)
 * @param hydrogenL hydrogen set free at 25 C, at most (L)
 * @param handsS time hands are busy (s), where it is known apart from the waits
 * @param waitS time that passes by itself (s)
 * @param figures what only this kind of step has
 * @param uncertain results as functions of what is not known
 * @param ramp currents of the slow start, the last one stays; empty when set at once
 * @param refusal why there is no figure, if there is none
 * @param warnings what is wrong or risky, with numbers and a remedy
 * @param cautions how the step can hurt, never empty
 * @param notes how it is done
 * @param assumptions every default used
 */
public record StepEstimate(
    String name,
    Optional<String> recipe,
    Optional<String> metal,
    How how,
    String region,
    double openAreaMm2,
    double areaErrorMm2,
    double openFraction,
    OptionalDouble densityADm2,
    Optional<Window> densityWindowADm2,
    OptionalDouble currentA,
    Optional<Window> currentBandA,
    OptionalDouble voltageV,
    Optional<Window> voltageWindowV,
    OptionalDouble timeS,
    Optional<Band> timeBandS,
    OptionalDouble rampExtraS,
    OptionalDouble chargeAh,
    OptionalDouble massG,
    Optional<Band> massBandG,
    OptionalDouble thicknessUm,
    Optional<Band> thicknessBandUm,
    OptionalDouble rateUmPerH,
    OptionalDouble anodeAreaMm2,
    OptionalDouble contactAreaMm2,
    OptionalDouble dwellS,
    OptionalDouble passes,
    OptionalDouble speedMPerMin,
    OptionalDouble solutionL,
    OptionalDouble bathL,
    OptionalDouble tankLoadDm2PerL,
    OptionalDouble tankCurrentAPerL,
    OptionalDouble hydrogenL,
    OptionalDouble handsS,
    OptionalDouble waitS,
    List<StepFigure> figures,
    List<Uncertain> uncertain,
    List<RampPoint> ramp,
    Optional<String> refusal,
    List<String> warnings,
    List<Caution> cautions,
    List<Note> notes,
    List<Assumption> assumptions) {

  public StepEstimate {
    figures = List.copyOf(figures);
    uncertain = List.copyOf(uncertain);
    ramp = List.copyOf(ramp);
    warnings = List.copyOf(warnings);
    cautions = List.copyOf(cautions);
    notes = List.copyOf(notes);
    assumptions = List.copyOf(assumptions);
    if (cautions.isEmpty()) {
      throw new IllegalArgumentException("step " + name + " has no cautions");
    }
    if (refusal.isPresent() && (massG.isPresent() || thicknessUm.isPresent())) {
      throw new IllegalArgumentException("step " + name + " is refused and yet has figures");
    }
  }

  /** Whether no figure is given. */
  public boolean refused() {
    return refusal.isPresent();
  }

  /** Whether the part hangs in a bath. */
  boolean bathed() {
    return how == How.TANK || how == How.ETCH && recipe.isPresent() && contactAreaMm2.isEmpty();
  }

  /** How far each unknown moves each result that has a band. */
  public List<Swing> swings() {
    return uncertain.stream().filter(Uncertain::told).flatMap(u -> u.swings().stream()).toList();
  }

  /** A result as a function of what is not known, if it is told as one. */
  Optional<Uncertain> uncertain(String result) {
    return uncertain.stream().filter(u -> u.result().equals(result)).findFirst();
  }

  /** One of its {@link #figures()}, by its key. */
  public Optional<StepFigure> figure(String key) {
    return figures.stream().filter(f -> f.key().equals(key)).findFirst();
  }
}
