package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.units.Charge;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Electrochemical equivalents against hand arithmetic and printed tables. */
class EquivalentsTest {
  private static final CurrentDensity ONE_PER_DM2 = CurrentDensity.ofPerDm2(1);

  private static Ion ion(String symbol, int valence) {
    return new Ion(Metal.find(symbol).orElseThrow(), valence);
  }

  private static double unitOfLastDigit(String printed) {
    int point = printed.indexOf('.');
    return point < 0 ? 1 : Math.pow(10, -(printed.length() - point - 1));
  }

  private static void check(String what, double value, String printed) {
    // one unit of the last printed digit, and a hair for the binary form of that unit
    assertThat(value)
        .as(what)
        .isCloseTo(Double.parseDouble(printed), within(unitOfLastDigit(printed) * (1 + 1e-9)));
  }

  /**
   * Every column worked out by hand from the IUPAC 2021 atomic weights, the exact Faraday constant
   * and CRC Handbook densities.
   */
  @ParameterizedTest
  @CsvSource({
    "Cu,1,0.65861,2.3710,8.96,26.462,0.44103,0.037790,8.9175,0.0061927",
    "Cu,2,0.32930,1.1855,8.96,13.231,0.22052,0.075580,17.835,0.012385",
    "Ni,2,0.30416,1.0950,8.90,12.303,0.20505,0.081281,19.180,0.013320",
    "Cr,6,0.089817,0.32334,7.15,4.5223,0.075371,0.22113,52.181,0.036237",
    "Cr,3,0.17963,0.64668,7.15,9.0445,0.15074,0.11056,26.090,0.018118",
    "Pd,2,0.55148,1.9853,12.0,16.544,0.27574,0.060443,14.263,0.0099049",
    "Pt,2,1.0110,3.6394,21.5,16.928,0.28213,0.059075,13.940,0.0096807",
    "Pt,4,0.50548,1.8197,21.5,8.4638,0.14106,0.11815,27.880,0.019361",
    "Au,1,2.0414,7.3491,19.3,38.078,0.63464,0.026262,6.1971,0.0043035",
    "Au,3,0.68047,2.4497,19.3,12.693,0.21155,0.078785,18.591,0.012911",
    "Ag,1,1.1180,4.0247,10.5,38.331,0.63884,0.026089,6.1563,0.0042752",
    "Sn,2,0.61517,2.2146,7.287,30.391,0.50652,0.032904,7.7645,0.0053920",
    "Sn,4,0.30759,1.1073,7.287,15.196,0.25326,0.065808,15.529,0.010784",
    "Zn,2,0.33881,1.2197,7.134,17.097,0.28495,0.058489,13.802,0.0095847",
    "Rh,3,0.35551,1.2798,12.4,10.321,0.17202,0.096886,22.863,0.015877",
    "Fe,2,0.28940,1.0418,7.87,13.238,0.22063,0.075540,17.826,0.012379",
    "Co,2,0.30540,1.0994,8.86,12.409,0.20682,0.080587,19.016,0.013206",
  })
  void everyColumnOfTheTableIsReproduced(
      String symbol,
      int valence,
      String mgPerC,
      String gPerAh,
      double density,
      String umPerH,
      String umPerMin,
      String ahPerDm2Um,
      String ahPerFt2Mil,
      String ahPerIn2TenthMil) {
    Ion ion = ion(symbol, valence);
    MassDensity rho = ion.metal().density();
    assertThat(rho.inGramsPerCm3()).isCloseTo(density, within(1e-12));
    check("mg/C", ion.kilogramsPerCoulomb() * 1e6, mgPerC);
    check("g/A.h", ion.massPerAmpereHour().inGrams(), gPerAh);
    double um = ion.thicknessPerHour(ONE_PER_DM2, rho).inUm();
    check("um/h", um, umPerH);
    check("um/min", um / 60, umPerMin);
    check("A.h/(dm2.um)", ion.ampereHoursPerDm2Um(rho), ahPerDm2Um);
    check("A.h/(ft2.mil)", ion.ampereHoursPerFt2Mil(rho), ahPerFt2Mil);
    double perIn2 = Unit.of("A.h/(in2.mil)").fromSi(ion.coulombsPerCubicMetre(rho)) / 10;
    check("A.h/in2 per 0.0001 in", perIn2, ahPerIn2TenthMil);
  }

  /**
   * Guidebook-type table of electrochemical equivalents, as reprinted by a plating supplier
   * (A.h/ft2 for 0.001 in), 0.5 % or half its last digit. Densities are the table's where they can
   * be told.
   */
  @ParameterizedTest
  @CsvSource({
    "Cr,6,7.1,51.8", "Co,2,8.86,19.0", "Cu,1,8.93,8.89", "Cu,2,8.93,17.8", "Au,1,19.3,6.2",
    "Au,3,19.3,18.6", "Ni,2,8.90,19.0", "Pt,4,21.4,27.8", "Rh,3,12.4,22.9", "Ag,1,10.5,6.2",
    "Sn,2,7.287,7.8", "Sn,4,7.287,15.6",
  })
  void guidebookArealFiguresAgree(String symbol, int valence, double density, double printed) {
    double ah = ion(symbol, valence).ampereHoursPerFt2Mil(MassDensity.ofGramsPerCm3(density));
    // nickel is printed 19.0 for a computed 19.18: 0.95 %, a rounded efficiency or density of
    // theirs
    double tolerance = symbol.equals("Ni") ? 0.01 : 0.005;
    assertThat(ah).isCloseTo(printed, within(Math.max(printed * tolerance, 0.05)));
  }

  /** The same table, g/A.h, 0.5 %. */
  @ParameterizedTest
  @CsvSource({
    "Cr,6,0.323",
    "Cu,2,1.186",
    "Cu,1,2.37",
    "Au,1,7.348",
    "Au,3,2.449",
    "Ni,2,1.095",
    "Pd,2,1.985",
    "Pt,4,1.819",
    "Rh,3,1.28",
    "Ag,1,4.024",
    "Zn,2,1.219",
  })
  void guidebookMassFiguresAgree(String symbol, int valence, double printed) {
    assertThat(ion(symbol, valence).massPerAmpereHour().inGrams())
        .isCloseTo(printed, within(printed * 0.005));
  }

  /**
   * The same table prints palladium 13.5 and zinc 14.3 A.h/ft2 per 0.001 in. Its own g/A.h for both
   * is right, so the areal figures contradict it: physics gives 14.26 and 13.80.
   */
  @Test
  void theTwoFaultsOfThePrintedTableAreNotReproduced() {
    double palladium = ion("Pd", 2).ampereHoursPerFt2Mil(MassDensity.ofGramsPerCm3(12.0));
    assertThat(palladium).isCloseTo(14.26, within(0.01)).isGreaterThan(13.5 * 1.05);
    double zinc = ion("Zn", 2).ampereHoursPerFt2Mil(MassDensity.ofGramsPerCm3(7.134));
    assertThat(zinc).isCloseTo(13.80, within(0.01)).isLessThan(14.3 / 1.03);
  }

  /** Japanese engineering tutorial on plating thickness (no. 166), um per minute at 1 A/dm2. */
  @ParameterizedTest
  @CsvSource({
    "Zn,2,7.134,0.286", "Au,1,19.3,0.635", "Au,3,19.3,0.212", "Ag,1,10.5,0.639",
    "Cr,6,7.1,0.076", "Cr,3,7.1,0.152", "Co,2,8.86,0.206", "Sn,2,7.287,0.506",
    "Sn,4,7.287,0.253", "Fe,2,7.87,0.220", "Cu,2,8.92,0.222", "Cu,1,8.92,0.443",
    "Ni,2,8.90,0.205", "Pt,4,21.4,0.142", "Pt,2,21.4,0.283", "Pd,2,12.0,0.276",
    "Rh,3,12.4,0.171",
  })
  void tutorialGrowthRatesAgree(String symbol, int valence, double density, double printed) {
    double um =
        ion(symbol, valence)
                .thicknessPerHour(ONE_PER_DM2, MassDensity.ofGramsPerCm3(density))
                .inUm()
            / 60;
    assertThat(um).isCloseTo(printed, within(Math.max(printed * 0.005, 0.0011)));
  }

  /** Nickel Plating Handbook: T = 12.294 I t / S for a density of 8.907 g/cm3 (1.095 g/A.h). */
  @Test
  void nickelHandbookEquationHolds() {
    double um = ion("Ni", 2).thicknessPerHour(ONE_PER_DM2, MassDensity.ofGramsPerCm3(8.907)).inUm();
    assertThat(um).isCloseTo(12.294, within(0.001));
  }

  /** e and N_A are exact by the SI Brochure, 9th edition, so F is their product. */
  @Test
  void faradayConstantIsTheExactProduct() {
    double product = Constant.ELEMENTARY_CHARGE.value() * Constant.AVOGADRO.value();
    assertThat(Constant.FARADAY.value()).isCloseTo(product, within(1e-10));
    assertThat(Constant.FARADAY.value()).isCloseTo(96485, within(96485 * 2e-4));
  }

  /** Ideal gas at 101.325 kPa: 0.41815 L of hydrogen per A.h at 0 C and 0.45642 L at 25 C. */
  @Test
  void hydrogenVolumePerAmpereHour() {
    Charge ah = Charge.ofAmpereHours(1);
    assertThat(Faraday.hydrogen(ah, 273.15).inLitres()).isCloseTo(0.41815, within(1e-5));
    assertThat(Faraday.hydrogen(ah, 298.15).inLitres()).isCloseTo(0.45642, within(1e-5));
  }

  @ParameterizedTest
  @EnumSource(Constant.class)
  void everyConstantHasASourceAndLiesInItsRange(Constant constant) {
    assertThat(constant.source()).isNotBlank();
    assertThat(constant.label()).isNotBlank();
    assertThat(constant.value()).isBetween(constant.low(), constant.high());
  }

  @Test
  void aValenceTheMetalDoesNotHaveIsRefused() {
    assertThatThrownBy(() -> new Ion(Metal.CHROMIUM, 2))
        .hasMessageContaining("valence 2 of chromium")
        .hasMessageContaining("[3, 6]");
  }
}
