package org.amperskin.plating;

import java.util.List;
import java.util.Optional;
import org.amperskin.units.MassDensity;

/** The metals that are plated here, with the valences their baths offer. */
public enum Metal {
  COPPER("Cu", "copper", Constant.WEIGHT_CU, Constant.DENSITY_CU, 1, 2),
  NICKEL("Ni", "nickel", Constant.WEIGHT_NI, Constant.DENSITY_NI, 2),
  CHROMIUM("Cr", "chromium", Constant.WEIGHT_CR, Constant.DENSITY_CR, 3, 6),
  PALLADIUM("Pd", "palladium", Constant.WEIGHT_PD, Constant.DENSITY_PD, 2),
  PLATINUM("Pt", "platinum", Constant.WEIGHT_PT, Constant.DENSITY_PT, 2, 4),
  GOLD("Au", "gold", Constant.WEIGHT_AU, Constant.DENSITY_AU, 1, 3),
  SILVER("Ag", "silver", Constant.WEIGHT_AG, Constant.DENSITY_AG, 1),
  TIN("Sn", "tin", Constant.WEIGHT_SN, Constant.DENSITY_SN, 2, 4),
  ZINC("Zn", "zinc", Constant.WEIGHT_ZN, Constant.DENSITY_ZN, 2),
  RHODIUM("Rh", "rhodium", Constant.WEIGHT_RH, Constant.DENSITY_RH, 3),
  IRON("Fe", "iron", Constant.WEIGHT_FE, Constant.DENSITY_FE, 2),
  COBALT("Co", "cobalt", Constant.WEIGHT_CO, Constant.DENSITY_CO, 2);

  private final String symbol;
  private final String label;
  private final Constant weight;
  private final Constant density;
  private final List<Integer> valences;

  Metal(String symbol, String label, Constant weight, Constant density, Integer... valences) {
    this.symbol = symbol;
    this.label = label;
    this.weight = weight;
    this.density = density;
    this.valences = List.of(valences);
  }

  /** Chemical symbol. */
  public String symbol() {
    return symbol;
  }

  /** Name in words. */
  public String label() {
    return label;
  }

  /** Molar mass in kg/mol. */
  public double molarMassKgPerMol() {
    return weight.si();
  }

  /** Density of the wrought metal. */
  public MassDensity density() {
    return new MassDensity(density.si());
  }

  /** The table row behind {@link #density()}. */
  public Constant densityConstant() {
    return density;
  }

  /** Valences it is plated from. */
  public List<Integer> valences() {
    return valences;
  }

  /** The metal with this symbol or name, letter case aside. */
  public static Optional<Metal> find(String word) {
    for (Metal metal : values()) {
      if (metal.symbol.equalsIgnoreCase(word) || metal.label.equalsIgnoreCase(word)) {
        return Optional.of(metal);
      }
    }
    return Optional.empty();
  }
}
