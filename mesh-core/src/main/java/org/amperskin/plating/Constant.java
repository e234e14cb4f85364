package org.amperskin.plating;

import org.amperskin.units.Unit;

/**
 * The one table of physical constants: name, unit, value, valid range, mark and source.
 *
 * <p>The valid range is the standard uncertainty for atomic weights, and the spread of printed
 * tables for densities; electrodeposits can be some per cent lighter still, so recipes may override
 * a density. Not here: what belongs to a solution (efficiency, windows), which stands in its
 * recipe.
 */
public enum Constant {
  AVOGADRO(
      "Avogadro constant",
      "mol-1",
      6.02214076e23,
      6.02214076e23,
      6.02214076e23,
      Mark.READ,
      "SI Brochure, 9th edition (BIPM 2019)"),
  ELEMENTARY_CHARGE(
      "elementary charge",
      "C",
      1.602176634e-19,
      1.602176634e-19,
      1.602176634e-19,
      Mark.MEMORY,
      "SI Brochure, 9th edition (BIPM 2019)"),
  FARADAY(
      "Faraday constant, e times N_A",
      "C/mol",
      96485.3321233100184,
      96485.3321233100184,
      96485.3321233100184,
      Mark.COMPUTED,
      "SI Brochure, 9th edition (BIPM 2019)"),
  GAS(
      "molar gas constant",
      "J/(mol.K)",
      8.314462618,
      8.314462618,
      8.314462618,
      Mark.MEMORY,
      "SI Brochure, 9th edition (BIPM 2019)"),
  ATMOSPHERE(
      "standard atmosphere",
      "J/m3",
      101325,
      101325,
      101325,
      Mark.MEMORY,
      "ISO 2533, Standard Atmosphere"),
  WEIGHT_CU(
      "atomic weight of copper",
      "g/mol",
      63.546,
      63.543,
      63.549,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_NI(
      "atomic weight of nickel",
      "g/mol",
      58.6934,
      58.6930,
      58.6938,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_CR(
      "atomic weight of chromium",
      "g/mol",
      51.9961,
      51.9955,
      51.9967,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_PD(
      "atomic weight of palladium",
      "g/mol",
      106.42,
      106.41,
      106.43,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_PT(
      "atomic weight of platinum",
      "g/mol",
      195.084,
      195.075,
      195.093,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_AU(
      "atomic weight of gold",
      "g/mol",
      196.966570,
      196.966566,
      196.966574,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_AG(
      "atomic weight of silver",
      "g/mol",
      107.8682,
      107.8680,
      107.8684,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_SN(
      "atomic weight of tin",
      "g/mol",
      118.710,
      118.703,
      118.717,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_ZN(
      "atomic weight of zinc",
      "g/mol",
      65.38,
      65.36,
      65.40,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_RH(
      "atomic weight of rhodium",
      "g/mol",
      102.90549,
      102.90547,
      102.90551,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_FE(
      "atomic weight of iron",
      "g/mol",
      55.845,
      55.843,
      55.847,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_CO(
      "atomic weight of cobalt",
      "g/mol",
      58.933194,
      58.933191,
      58.933197,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_H(
      "atomic weight of hydrogen",
      "g/mol",
      1.008,
      1.00784,
      1.00811,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_B(
      "atomic weight of boron",
      "g/mol",
      10.81,
      10.806,
      10.821,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_N(
      "atomic weight of nitrogen",
      "g/mol",
      14.007,
      14.00643,
      14.00728,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_O(
      "atomic weight of oxygen",
      "g/mol",
      15.999,
      15.998,
      16.0,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022):"
          + " abridged, 15.999 +- 0.001"),
  WEIGHT_NA(
      "atomic weight of sodium",
      "g/mol",
      22.98976928,
      22.98976926,
      22.98976930,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_S(
      "atomic weight of sulfur",
      "g/mol",
      32.06,
      32.059,
      32.076,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  WEIGHT_CL(
      "atomic weight of chlorine",
      "g/mol",
      35.45,
      35.446,
      35.457,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)"),
  DENSITY_CU(
      "density of copper, wrought",
      "g/cm3",
      8.96,
      8.92,
      8.96,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_NI(
      "density of nickel, wrought",
      "g/cm3",
      8.90,
      8.90,
      8.907,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_CR(
      "density of chromium, wrought",
      "g/cm3",
      7.15,
      7.0,
      7.2,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_PD(
      "density of palladium, wrought",
      "g/cm3",
      12.0,
      12.0,
      12.02,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_PT(
      "density of platinum, wrought",
      "g/cm3",
      21.5,
      21.4,
      21.5,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_AU(
      "density of gold, wrought",
      "g/cm3",
      19.3,
      19.3,
      19.32,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_AG(
      "density of silver, wrought",
      "g/cm3",
      10.5,
      10.49,
      10.5,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_SN(
      "density of tin, wrought",
      "g/cm3",
      7.287,
      7.26,
      7.31,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_ZN(
      "density of zinc, wrought",
      "g/cm3",
      7.134,
      7.1,
      7.14,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_RH(
      "density of rhodium, wrought",
      "g/cm3",
      12.4,
      12.4,
      12.5,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_FE(
      "density of iron, wrought",
      "g/cm3",
      7.87,
      7.86,
      7.874,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  DENSITY_CO(
      "density of cobalt, wrought",
      "g/cm3",
      8.86,
      8.86,
      8.9,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  RESISTIVITY_CU(
      "electrical resistivity of copper",
      "ohm.m",
      1.724e-8,
      1.68e-8,
      2.2e-8,
      Mark.MEMORY,
      "IEC 60028, standard annealed copper"),
  RESISTIVITY_NI(
      "electrical resistivity of nickel",
      "ohm.m",
      6.9e-8,
      6.9e-8,
      1.0e-7,
      Mark.MEMORY,
      "CRC Handbook of Chemistry and Physics, Physical constants of inorganic compounds"),
  TAFEL_CU(
      "cathodic Tafel slope RT/(alpha F) of acid copper at 25 C",
      "V",
      0.0435,
      0.035,
      0.06,
      Mark.COMPUTED,
      "Fuller and Harb, Electrochemical Engineering: fit alpha_c 0.59 to copper kinetics in 1 M sulfate and 1 M acid"),
  TAFEL_NI(
      "cathodic Tafel slope of Watts nickel",
      "V",
      0.051,
      0.039,
      0.052,
      Mark.MEMORY,
      "electrochemistry texts: alpha_c near 0.5, measured 90-120 mV per decade"),
  NAOH_MOLAR_MASS(
      "molar mass of sodium hydroxide",
      "g/mol",
      39.997,
      39.996,
      39.998,
      Mark.MEMORY,
      "IUPAC, Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022)");

  private final String label;
  private final Unit unit;
  private final double value;
  private final double low;
  private final double high;
  private final Mark mark;
  private final String source;

  Constant(
      String label, String unit, double value, double low, double high, Mark mark, String source) {
    this.label = label;
    this.unit = Unit.of(unit);
    this.value = value;
    this.low = low;
    this.high = high;
    this.mark = mark;
    this.source = source;
  }

  /** What it is. */
  public String label() {
    return label;
  }

  /** The unit of the value and range. */
  public Unit unit() {
    return unit;
  }

  /** The value in its unit. */
  public double value() {
    return value;
  }

  /** The value in the SI-coherent unit. */
  public double si() {
    return unit.toSi(value);
  }

  /** The least value in its unit that may replace it. */
  public double low() {
    return low;
  }

  /** The greatest value in its unit that may replace it. */
  public double high() {
    return high;
  }

  /** How far it can be trusted. */
  public Mark mark() {
    return mark;
  }

  /** Where it comes from. */
  public String source() {
    return source;
  }
}
