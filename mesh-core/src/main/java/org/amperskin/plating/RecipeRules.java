package org.amperskin.plating;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.amperskin.units.Unit;

/** What every recipe must obey, whether read from a file or built by a program. */
final class RecipeRules {
  private static final Pattern ID = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");
  private static final Pattern CYANIDE =
      Pattern.compile("\\b(cyanide|cyano\\w*|[KN]a?CN)\\b", Pattern.CASE_INSENSITIVE);
  private static final double LEAST_DARK_BAND = 0.5;

  private RecipeRules() {}

  static Optional<String> firstFault(
      String id,
      How how,
      Ion ion,
      Claim claim,
      Map<FigureKey, Figure> figures,
      Optional<Anode> anode,
      Set<Hazard> hazards,
      List<Note> makeUp) {
    if (!ID.matcher(id).matches()) {
      return Optional.of("id '" + id + "' is not in kebab-case, such as nickel-watts");
    }
    if (how == How.PREPARE) {
      return Optional.of("how is prepare, but a recipe is for tank, brush or etch");
    }
    if (how == How.ETCH && claim != Claim.FARADAY) {
      return Optional.of("claim is " + claim.key() + ", but metal goes by charge: claim: faraday");
    }
    if (CYANIDE.matcher(id + " " + makeUp).find()) {
      return Optional.of("cyanide solutions are not offered: too dangerous outside licensed shops");
    }
    for (FigureKey key : FigureKey.values()) {
      if (key.neededFor(how) && !figures.containsKey(key)) {
        return Optional.of(key.key() + " is missing: a " + how.key() + " recipe needs it");
      }
    }
    if (how == How.TANK && anode.isEmpty()) {
      return Optional.of("anode is missing: a tank recipe needs it");
    }
    return positive(figures)
        .or(() -> hazardMissing(ion, hazards))
        .or(() -> claimFault(how, claim, figures));
  }

  private static Optional<String> positive(Map<FigureKey, Figure> figures) {
    for (Map.Entry<FigureKey, Figure> entry : figures.entrySet()) {
      if (entry.getValue().low() <= 0) {
        return Optional.of(
            entry.getKey().key() + " " + entry.getValue().show() + " is not above zero");
      }
    }
    Figure efficiency = figures.get(FigureKey.EFFICIENCY);
    if (efficiency != null && efficiency.highSi() > 1 + 1e-12) {
      return Optional.of("efficiency " + efficiency.show() + " is above 100 %");
    }
    return Optional.empty();
  }

  private static Optional<String> hazardMissing(Ion ion, Set<Hazard> hazards) {
    List<Hazard> owed =
        switch (ion.metal()) {
          case NICKEL -> List.of(Hazard.NICKEL);
          case PALLADIUM -> List.of(Hazard.PALLADIUM);
          case COPPER -> List.of(Hazard.COPPER_SALTS);
          case CHROMIUM ->
              ion.valence() == 6
                  ? List.of(Hazard.HEXAVALENT_CHROMIUM, Hazard.CHROMIC_ACID_AND_SOLVENT)
                  : List.of(Hazard.TRIVALENT_CHROMIUM);
          case PLATINUM, GOLD, SILVER, TIN, ZINC, RHODIUM, IRON, COBALT -> List.of();
        };
    return owed.stream()
        .filter(h -> !hazards.contains(h))
        .findFirst()
        .map(h -> "hazard " + h.key() + " is missing: a solution of " + ion + " carries it");
  }

  private static Optional<String> claimFault(How how, Claim claim, Map<FigureKey, Figure> figures) {
    Figure factor = figures.get(FigureKey.FACTOR);
    return switch (claim) {
      case FARADAY ->
          how == How.BRUSH && factor == null
              ? Optional.of("factor is missing: a brush recipe needs it, or claim: coupon")
              : Optional.empty();
      case COUPON ->
          factor != null
              ? Optional.of("factor " + factor.show() + " contradicts claim: coupon")
              : Optional.empty();
      case CAPPED -> capFault(factor, figures.get(FigureKey.THICKNESS_CAP));
    };
  }

  private static Optional<String> capFault(Figure factor, Figure cap) {
    if (cap == null) {
      return Optional.of("thickness-cap is missing: claim: capped needs it");
    }
    if (factor == null) {
      return Optional.of("factor is missing: claim: capped needs it");
    }
    double slack = 1e-9;
    boolean wide =
        factor.low() <= factor.typical() * (1 - LEAST_DARK_BAND + slack)
            && factor.high() >= factor.typical() * (1 + LEAST_DARK_BAND - slack);
    return wide
        ? Optional.empty()
        : Optional.of(
            "factor " + factor.show() + " is too sure: claim: capped needs at least +-50 %");
  }

  /** The unit in which a figure is kept; temperatures are kept in kelvin. */
  static Unit kelvin() {
    return Unit.of("K");
  }
}
