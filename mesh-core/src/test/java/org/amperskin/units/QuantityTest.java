package org.amperskin.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Factors: inch 0.0254 m, foot 0.3048 m, ounce 28.349523125 g and US gallon 231 in3 are exact by
 * definition (NIST Special Publication 811, Guide for the Use of the International System of Units,
 * Appendix B).
 */
class QuantityTest {
  private static double read(String text, Dimension dimension) {
    return Quantity.parse(text, dimension).si();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2.5 A/dm2|CURRENT_DENSITY|250",
        "2.5A/dm2|CURRENT_DENSITY|250",
        "2.5 A/dm^2|CURRENT_DENSITY|250",
        "2.5 A/dm²|CURRENT_DENSITY|250",
        "2.5 A / dm2|CURRENT_DENSITY|250",
        "2.5 A.dm-2|CURRENT_DENSITY|250",
        "2.5 A·dm⁻²|CURRENT_DENSITY|250",
        "2.5 ASD|CURRENT_DENSITY|250",
        "25 A/ft2|CURRENT_DENSITY|269.0977604",
        "25 ASF|CURRENT_DENSITY|269.0977604",
        "5 A/in2|CURRENT_DENSITY|7750.015500",
        "0.4 A/cm2|CURRENT_DENSITY|4000",
        "5 mA/cm2|CURRENT_DENSITY|50",
        "30 um|LENGTH|3e-5",
        "30 \u00b5m|LENGTH|3e-5",
        "30 \u03bcm|LENGTH|3e-5",
        "30um|LENGTH|3e-5",
        "+30 um|LENGTH|3e-5",
        "0.001 in|LENGTH|2.54e-5",
        "1 mil|LENGTH|2.54e-5",
        ".5 mm|LENGTH|5e-4",
        "3e1 um|LENGTH|3e-5",
        "7 g/L|CONCENTRATION|7",
        "1 oz/gal|CONCENTRATION|7.489151707",
        "45 min|TIME|2700",
        "1.5 h|TIME|5400",
        "90 s|TIME|90",
        "12 A.h|CHARGE|43200",
        "12 Ah|CHARGE|43200",
        "12 A h|CHARGE|43200",
        "12 A*h|CHARGE|43200",
        "500 C|CHARGE|500",
        "500 mA.h|CHARGE|1800",
        "250 mL|VOLUME|2.5e-4",
        "0.9 dm2|AREA|0.009",
        "90 cm2|AREA|0.009",
        "9000 mm²|AREA|0.009",
        "95 %|FRACTION|0.95",
        "95%|FRACTION|0.95",
        "180 deg|ANGLE|3.141592653589793",
        "180°|ANGLE|3.141592653589793",
        "25 C|TEMPERATURE|298.15",
        "25 °C|TEMPERATURE|298.15",
        "77 F|TEMPERATURE|298.15",
        "-5 degC|TEMPERATURE|268.15",
        "50 ft/min|SPEED|0.254",
        "15 m/min|SPEED|0.25",
        "20 S/m|CONDUCTIVITY|20",
        "200 mS/cm|CONDUCTIVITY|20",
        "0.5 ohm/sq|SHEET_RESISTANCE|0.5",
        "0.5 Ω/□|SHEET_RESISTANCE|0.5",
        "44.5 A.h/L|CHARGE_PER_LIQUID|160200000",
        "0.5 A.h/dm2|CHARGE_PER_AREA|180000",
        "1 A.h/(dm2.um)|ENERGY_FACTOR|3.6e11",
        "1 A.h/dm2/um|ENERGY_FACTOR|3.6e11",
        "8.9 g/cm3|DENSITY|8900",
        "0.5 dm2/L|AREA_PER_LIQUID|5",
        "0.5 A/L|CURRENT_PER_LIQUID|500",
        "5 mW/cm2|IRRADIANCE|50",
        "120 mJ/cm2|DOSE|1200",
        "1.1 V|VOLTAGE|1.1",
      })
  void readsWhatPeopleType(String text, Dimension dimension, double si) {
    assertThat(read(text, dimension)).isCloseTo(si, within(Math.abs(si) * 1e-9));
  }

  /** 1 A/dm2 = 9.2903 A/ft2 and 1 A/in2 = 15.500 A/dm2, as any plating handbook prints. */
  @Test
  void unitAnchorsOfTheTradeHold() {
    assertThat(Quantity.parse("1 A/dm2", Dimension.CURRENT_DENSITY).in(Unit.of("A/ft2")))
        .isCloseTo(9.2903, within(5e-5));
    assertThat(Quantity.parse("1 A/in2", Dimension.CURRENT_DENSITY).in(Unit.of("A/dm2")))
        .isCloseTo(15.500, within(5e-4));
    assertThat(Unit.of("gal").toSi(1) / Unit.of("ft2").toSi(1000) / Unit.of("mL/m2").toSi(1))
        .isCloseTo(40.746, within(5e-4));
  }

  @Test
  void wholeNumbersConvertWithoutRoundingNoise() {
    assertThat(read("30 um", Dimension.LENGTH)).isEqualTo(3e-5);
    assertThat(read("0.2 dm2", Dimension.AREA)).isEqualTo(0.002);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2.5|CURRENT_DENSITY|has no unit;A/dm2;A/ft2",
        "2,5 A/dm2|CURRENT_DENSITY|use a point;2.5 A/dm2",
        "1,000.5 mm|LENGTH|use a point",
        "Infinity um|LENGTH|finite number",
        "NaN um|LENGTH|finite number",
        "1e400 um|LENGTH|too large",
        "''|LENGTH|finite number",
        "um|LENGTH|finite number",
        "30 kg|LENGTH|'30 kg';not a unit of length;um, mm",
        "2 A|CURRENT_DENSITY|not a unit of current density;did you mean",
        "2 A/dn2|CURRENT_DENSITY|'dn' is not a unit;did you mean 'A/dm2'",
        "2 A/dm|CURRENT_DENSITY|did you mean 'A/dm2'",
        "30 microns|LENGTH|did you mean 'um'",
        "2 amps|CURRENT|did you mean 'A'",
        "3 hours|TIME|did you mean 'h'",
        "3 percent|FRACTION|did you mean '%'",
        "0.5 ohm|SHEET_RESISTANCE|not a unit of sheet resistance;did you mean 'ohm/sq'",
        "25 X|TEMPERATURE|not a unit of temperature;C, K, F",
        "-300 C|TEMPERATURE|absolute zero",
        "3 A.h/(dm2.um|ENERGY_FACTOR|bracket not closed",
        "3 A/|CURRENT|not a unit",
        "3 m0|LENGTH|exponent 0",
        "3 m99|LENGTH|exponent",
        "1 / 2 m|LENGTH|not a unit",
      })
  void refusesAndSaysWhatWouldFit(String text, Dimension dimension, String parts) {
    for (String part : parts.split(";")) {
      assertThatThrownBy(() -> Quantity.parse(text, dimension))
          .isInstanceOf(QuantityException.class)
          .hasMessageContaining(part);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.4|CURRENT|400 mA",
        "1.2345|CURRENT|1.23 A",
        "0.9996|CURRENT|1.00 A",
        "1540|TIME|25.7 min",
        "90|TIME|90.0 s",
        "7200|TIME|2.00 h",
        "1e-5|LENGTH|10.0 um",
        "0.002|AREA|20.0 cm2",
        "200|CURRENT_DENSITY|2.00 A/dm2",
        "0.95|FRACTION|95.0 %",
        "298.15|TEMPERATURE|25.0 C",
        "0.000178|MASS|178 mg",
        "8900|DENSITY|8.90 g/cm3",
        "0|MASS|0 mg",
        "123456|VOLTAGE|123456 V",
      })
  void showsAReadableUnitWithSignificantDigits(double si, Dimension dimension, String shown) {
    assertThat(Quantity.show(si, dimension)).isEqualTo(shown);
  }

  @ParameterizedTest
  @EnumSource(Dimension.class)
  void whatIsShownIsReadBack(Dimension dimension) {
    for (double si : new double[] {1e-7, 0.00123, 0.5, 1, 77.7, 31234, 4.5e11}) {
      double value = dimension == Dimension.TEMPERATURE ? 250 + si % 100 : si;
      String shown = Quantity.show(value, dimension, 6);
      assertThat(read(shown, dimension)).as(shown).isCloseTo(value, within(value * 1e-5));
    }
  }

  @ParameterizedTest
  @EnumSource(Dimension.class)
  void everyUnitNamedAsFittingIsRead(Dimension dimension) {
    for (String unit : dimension.fitting()) {
      assertThat(read("300 " + unit, dimension)).as(unit).isPositive();
    }
  }

  @Test
  void showingDoesNotFollowTheLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Quantity.show(1.25, Dimension.VOLTAGE)).isEqualTo("1.25 V");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void nothingThatIsNotANumberIsShown() {
    assertThatThrownBy(() -> Quantity.plain(Double.NaN, 3)).hasMessageContaining("NaN");
    assertThatThrownBy(() -> new Quantity(Double.POSITIVE_INFINITY, Dimension.MASS))
        .hasMessageContaining("mass");
    assertThatThrownBy(() -> new Length(Double.NaN)).hasMessageContaining("length (NaN m)");
  }

  @Test
  void askingForAnotherKindOfUnitIsRefused() {
    assertThatThrownBy(() -> Quantity.parse("1 h", Dimension.TIME).in(Unit.of("A")))
        .hasMessageContaining("A is not a unit of time");
  }

  @Test
  void nearestWordIsOfferedOnlyWhenNear() {
    var known = java.util.List.of("nickel-watts", "copper-acid-decorative", "palladium-brush");
    assertThat(NearestWord.of("nickle-watts", known)).contains("nickel-watts");
    assertThat(NearestWord.of("Palladium_Brush", known)).contains("palladium-brush");
    assertThat(NearestWord.of("zirconium", known)).isEmpty();
  }

  @Test
  void recordsConvertThroughTheSameTable() {
    assertThat(Area.ofDm2(0.2).inMm2()).isEqualTo(2000);
    assertThat(Charge.ofAmpereHours(1).coulombs()).isEqualTo(3600);
    assertThat(CurrentDensity.ofPerCm2(0.775).inPerDm2()).isCloseTo(77.5, within(1e-12));
    assertThat(Volume.ofMillilitres(250).inLitres()).isEqualTo(0.25);
  }
}
