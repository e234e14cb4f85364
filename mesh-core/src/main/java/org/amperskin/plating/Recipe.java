package org.amperskin.plating;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A plating solution: what it deposits, how it is used, and every number with mark and source.
 *
 * <p>Guaranteed: the numbers its kind of step needs are there; a solution of chromium, nickel or
 * palladium always carries the hazard that goes with it; no cyanide. Not guaranteed: that the
 * bottle at hand is this solution; its maker's data sheet goes before the recipe.
 *
 * @param id kebab-case name
 * @param name name for people
 * @param how tank, brush, or etch, which takes the metal off
 * @param ion the metal and the electrons an atom takes or gives
 * @param alkaline whether it attacks a positive resist
 * @param claim what may be promised about thickness
 * @param figures its numbers
 * @param efficiencyByDensity how its efficiency changes with density, where that is known; the
 *     figure 'efficiency' then gives the spread about it
 * @param anode its anode, for a tank
 * @param hazards its hazards beyond those of every step
 * @param makeUp what is in it
 * @param cautions cautions of its own
 * @param notes what to know when working with it
 */
public record Recipe(
    String id,
    String name,
    How how,
    Ion ion,
    boolean alkaline,
    Claim claim,
    Map<FigureKey, Figure> figures,
    Optional<EfficiencyCurve> efficiencyByDensity,
    Optional<Anode> anode,
    Set<Hazard> hazards,
    List<Note> makeUp,
    List<Note> cautions,
    List<Note> notes) {

  public Recipe {
    figures = Collections.unmodifiableMap(new EnumMap<>(figures));
    EnumSet<Hazard> all = EnumSet.of(Hazard.WASTE, Hazard.ELECTRICITY);
    all.addAll(hazards);
    hazards = Collections.unmodifiableSet(all);
    makeUp = List.copyOf(makeUp);
    cautions = List.copyOf(cautions);
    notes = List.copyOf(notes);
    RecipeRules.firstFault(id, how, ion, claim, figures, anode, hazards, makeUp)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException("recipe " + id + ": " + fault);
            });
    if (efficiencyByDensity.isPresent() && !figures.containsKey(FigureKey.EFFICIENCY)) {
      throw new IllegalArgumentException(
          "recipe " + id + ": efficiency-by-density stands without efficiency, its spread");
    }
  }

  /** The metal it deposits. */
  public Metal metal() {
    return ion.metal();
  }

  /** Whether it is worked with a swab rather than in a tank. */
  public boolean swabbed() {
    return how == How.BRUSH || how == How.ETCH && figures.containsKey(FigureKey.SPEED);
  }

  /** A number of the recipe, if it has it. */
  public Optional<Figure> figure(FigureKey key) {
    return Optional.ofNullable(figures.get(key));
  }

  /** A number that recipes of its kind always have. */
  Figure needed(FigureKey key) {
    return figure(key)
        .orElseThrow(() -> new IllegalArgumentException("recipe " + id + " has no " + key.key()));
  }

  /** The curve's efficiency at a density (A/m2), with the spread of the figure about it. */
  Spread.Triangle efficiencyAt(double densityAm2) {
    Spread.Triangle plain = needed(FigureKey.EFFICIENCY).triangleSi();
    double at = efficiencyByDensity.orElseThrow().at(densityAm2);
    return new Spread.Triangle(
        at * plain.low() / plain.typical(), at, Math.min(1, at * plain.high() / plain.typical()));
  }

  /** Its cautions in a fixed order: hazards, then its own, then the one about local rules. */
  public List<Caution> allCautions() {
    List<Caution> list = new ArrayList<>(Caution.of(hazards));
    Caution last = list.remove(list.size() - 1);
    cautions.forEach(
        note -> list.add(new Caution("this solution", note.text(), note.mark(), note.source())));
    list.add(last);
    return List.copyOf(list);
  }
}
