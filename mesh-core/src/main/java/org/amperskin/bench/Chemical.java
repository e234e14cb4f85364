package org.amperskin.bench;

import static java.util.Map.entry;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.amperskin.plating.Constant;
import org.amperskin.plating.Metal;
import org.amperskin.units.NearestWord;

/**
 * The chemicals that baths are made up from, by formula.
 *
 * <p>Definition: molar mass is the sum over the atoms of {@link Constant}'s atomic weights.
 * Guaranteed: no cyanide. Not guaranteed: the purity of what is in the jar; technical grades carry
 * less, and their label goes before this.
 */
public enum Chemical {
  COPPER_SULFATE(
      "copper sulfate pentahydrate",
      "CuSO4.5H2O",
      Optional.of(Metal.COPPER),
      Map.ofEntries(
          entry(Constant.WEIGHT_CU, 1),
          entry(Constant.WEIGHT_S, 1),
          entry(Constant.WEIGHT_O, 9),
          entry(Constant.WEIGHT_H, 10)),
      "copper sulfate"),
  SULFURIC_ACID(
      "sulfuric acid",
      "H2SO4",
      Optional.empty(),
      Map.ofEntries(
          entry(Constant.WEIGHT_H, 2), entry(Constant.WEIGHT_S, 1), entry(Constant.WEIGHT_O, 4)),
      "battery acid"),
  HYDROCHLORIC_ACID(
      "hydrochloric acid",
      "HCl",
      Optional.empty(),
      Map.ofEntries(entry(Constant.WEIGHT_H, 1), entry(Constant.WEIGHT_CL, 1))),
  SODIUM_CHLORIDE(
      "sodium chloride",
      "NaCl",
      Optional.empty(),
      Map.ofEntries(entry(Constant.WEIGHT_NA, 1), entry(Constant.WEIGHT_CL, 1)),
      "salt"),
  NICKEL_SULFATE(
      "nickel sulfate hexahydrate",
      "NiSO4.6H2O",
      Optional.of(Metal.NICKEL),
      Map.ofEntries(
          entry(Constant.WEIGHT_NI, 1),
          entry(Constant.WEIGHT_S, 1),
          entry(Constant.WEIGHT_O, 10),
          entry(Constant.WEIGHT_H, 12)),
      "nickel sulfate"),
  NICKEL_CHLORIDE(
      "nickel chloride hexahydrate",
      "NiCl2.6H2O",
      Optional.of(Metal.NICKEL),
      Map.ofEntries(
          entry(Constant.WEIGHT_NI, 1),
          entry(Constant.WEIGHT_CL, 2),
          entry(Constant.WEIGHT_O, 6),
          entry(Constant.WEIGHT_H, 12)),
      "nickel chloride"),
  NICKEL_SULFAMATE(
      "nickel sulfamate tetrahydrate",
      "Ni(SO3NH2)2.4H2O",
      Optional.of(Metal.NICKEL),
      Map.ofEntries(
          entry(Constant.WEIGHT_NI, 1),
          entry(Constant.WEIGHT_S, 2),
          entry(Constant.WEIGHT_O, 10),
          entry(Constant.WEIGHT_N, 2),
          entry(Constant.WEIGHT_H, 12)),
      "nickel sulfamate"),
  BORIC_ACID(
      "boric acid",
      "H3BO3",
      Optional.empty(),
      Map.ofEntries(
          entry(Constant.WEIGHT_H, 3), entry(Constant.WEIGHT_B, 1), entry(Constant.WEIGHT_O, 3))),
  SODIUM_HYDROXIDE(
      "sodium hydroxide",
      "NaOH",
      Optional.empty(),
      Map.ofEntries(
          entry(Constant.WEIGHT_NA, 1), entry(Constant.WEIGHT_O, 1), entry(Constant.WEIGHT_H, 1)),
      "caustic soda",
      "lye");

  private final String label;
  private final String formula;
  private final Optional<Metal> metal;
  private final Map<Constant, Integer> atoms;
  private final List<String> otherNames;

  Chemical(
      String label,
      String formula,
      Optional<Metal> metal,
      Map<Constant, Integer> atoms,
      String... otherNames) {
    this.label = label;
    this.formula = formula;
    this.metal = metal;
    this.atoms = atoms;
    this.otherNames = List.of(otherNames);
  }

  /** Name. */
  public String label() {
    return label;
  }

  /** Every name it is known by, the usual one first. */
  public List<String> names() {
    return Stream.concat(Stream.of(label), otherNames.stream()).toList();
  }

  /** Formula. */
  public String formula() {
    return formula;
  }

  /** Its metal, if it has one. */
  public Optional<Metal> metal() {
    return metal;
  }

  /** Molar mass (g/mol). */
  public double molarMassGPerMol() {
    double sum = 0;
    for (Constant atom : Constant.values()) { // in the table's order, so always the same sum
      sum += atoms.getOrDefault(atom, 0) * atom.value();
    }
    return sum;
  }

  /** Mass of metal in a unit of its mass, 0 without a metal. */
  public double metalShare() {
    return metal.map(m -> m.molarMassKgPerMol() * 1000 / molarMassGPerMol()).orElse(0.0);
  }

  /** Mass of chloride in a unit of its mass, 0 without one. */
  public double chlorideShare() {
    int count = atoms.getOrDefault(Constant.WEIGHT_CL, 0);
    return count * Constant.WEIGHT_CL.value() / molarMassGPerMol();
  }

  /** The chemical of this name or formula, letter case aside. */
  public static Optional<Chemical> find(String word) {
    for (Chemical c : values()) {
      boolean named =
          c.label.equalsIgnoreCase(word.strip())
              || c.formula.equalsIgnoreCase(word.strip())
              || c.otherNames.contains(word.strip().toLowerCase(Locale.ROOT));
      if (named) {
        return Optional.of(c);
      }
    }
    return Optional.empty();
  }

  /** What to say of a name that is none of these. */
  static String unknown(String word, List<Chemical> fitting) {
    List<String> names = fitting.stream().flatMap(c -> c.names().stream()).toList();
    return "chemical '"
        + word
        + "' is not known here"
        + NearestWord.of(word, names)
            .map(near -> ", did you mean '" + near + "'?")
            .orElse("; " + names + " fit");
  }
}
