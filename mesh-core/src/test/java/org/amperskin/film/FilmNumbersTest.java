package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Blur, parallax, density and exposure against tables worked by hand from the formulas. */
class FilmNumbersTest {
  private static Light light(double degrees) {
    return new Light(degrees, OptionalDouble.empty());
  }

  // Geometry: gap x tan(half-angle), in um at 20, 50, 100, 200, 500 and 1000 um.
  @ParameterizedTest
  @CsvSource({
    "1, 0.3, 0.9, 1.7, 3.5, 8.7, 17.5",
    "5, 1.7, 4.4, 8.7, 17.5, 43.7, 87.5",
    "10, 3.5, 8.8, 17.6, 35.3, 88.2, 176",
    "20, 7.3, 18.2, 36.4, 72.8, 182, 364"
  })
  void edgesAreSmearedByGapTimesTangent(
      double degrees, double a, double b, double c, double d, double e, double f) {
    double[] gapUm = {20, 50, 100, 200, 500, 1000};
    double[] shiftUm = {a, b, c, d, e, f};
    for (int i = 0; i < gapUm.length; i++) {
      double found = 1000 * FilmStock.USUAL.edgeShiftMm(gapUm[i] / 1000, light(degrees));
      // printed to a tenth of a micrometre, the largest to a whole one
      assertThat(found).isCloseTo(shiftUm[i], within(shiftUm[i] > 100 ? 0.5 : 0.06));
    }
  }

  // sqrt(365 nm x gap), the Fresnel width: 2.7, 4.3, 6.0, 8.5, 13.5, 19.1 um; the narrowest line
  // is 1.5 times that with half the resist added to the gap (Madou, from memory).
  @ParameterizedTest
  @CsvSource({"20, 2.7", "50, 4.3", "100, 6.0", "200, 8.5", "500, 13.5", "1000, 19.1"})
  void diffractionGrowsWithTheRootOfTheGap(double gapUm, double fresnelUm) {
    double found = 1000 * Light.diffractionMm(gapUm / 1000 - 0.004, 0.008) / 1.5;
    assertThat(found).isCloseTo(fresnelUm, within(0.06));
  }

  @Test
  void secondLayerStandsOneBaseHigher() {
    FilmStock two = new FilmStock(2, 2, 0.1, 1.6, 0.05);
    // 10 deg in air are 6.2 deg in a base of index 1.6: 0.1 mm x tan = 10.9 um.
    assertThat(1000 * two.parallaxMm(light(10))).isCloseTo(10.9, within(0.05));
    assertThat(two.edgeShiftMm(0, light(10))).isCloseTo(0.0109 + 0.05, within(5e-5));
    assertThat(new FilmStock(1, 2, 0.1, 1.6, 0.05).edgeShiftMm(0, light(10))).isZero();
    assertThat(new FilmStock(3, 2, 0.1, 1.6, 0).parallaxMm(light(10)))
        .isCloseTo(0.0218, within(1e-4));
  }

  // T = 10^-D, densities add: D 2 leaks 1 %, two layers 0.01 %; 1.5: 3.16 % and 0.1 %; 3: 0.1 %.
  @ParameterizedTest
  @CsvSource({"2, 1, 0.01", "2, 2, 0.0001", "1.5, 1, 0.0316", "1.5, 2, 0.001", "3, 1, 0.001"})
  void densitiesOfLayersAdd(double density, int layers, double leak) {
    assertThat(FilmStock.of(layers, density).leak()).isCloseTo(leak, within(0.003 * leak));
  }

  private static ExposureWindow window(double density, int layers, double least, Light light) {
    return new ExposureWindow(FilmStock.of(layers, density), light, Resist.USUAL, least, 1, true);
  }

  // log10(10 x 1.5) = 1.18, shown as 1.2; with resist three times thicker in places 1.65, as 1.7.
  @Test
  void densityNeededFollowsFromLeakAndThickness() {
    ExposureWindow flat = window(2, 1, 1, Light.USUAL);
    assertThat(flat.neededDensity(1)).isCloseTo(1.2, within(0.05));
    assertThat(flat.neededDensity(3)).isCloseTo(1.7, within(0.05));
    assertThat(flat.verdict()).isEqualTo(ExposureWindow.Verdict.ENOUGH);
    assertThat(window(1.3, 1, 1, Light.USUAL).verdict())
        .isEqualTo(ExposureWindow.Verdict.EVEN_ONLY);
    assertThat(window(1, 1, 1, Light.USUAL).verdict()).isEqualTo(ExposureWindow.Verdict.TOO_THIN);
    assertThat(window(1, 2, 1, Light.USUAL).verdict()).isEqualTo(ExposureWindow.Verdict.ENOUGH);
    // A slope of 60 deg gets half the light: log10 2 more.
    assertThat(window(2, 1, 0.5, Light.USUAL).neededDensity(1))
        .isCloseTo(1.176 + 0.301, within(1e-3));
  }

  @Test
  void timesFollowFromDoseAndIrradiance() {
    // 150 mJ/cm2 at 5 mW/cm2 are 30 s; 1.5 times that through 0.85 x 0.9 of clear film and glass.
    Light lamp = new Light(5, OptionalDouble.of(50));
    ExposureWindow w = window(2, 1, 0.5, lamp);
    assertThat(w.squareOnS().getAsDouble()).isCloseTo(45 / 0.765, within(1e-9));
    assertThat(w.shortestS().getAsDouble()).isCloseTo(90 / 0.765, within(1e-9));
    // 1 % leaks: a tenth of the dose after ten times 30 s.
    assertThat(w.longestS().getAsDouble()).isCloseTo(300 / 0.765, within(1e-9));
    assertThat(w.leastShareServed()).isCloseTo(0.15, within(1e-12));
    assertThat(window(2, 1, 1, Light.USUAL).squareOnS()).isEmpty();
  }

  @Test
  void bothEndsOfTheWindowMeetAtTheDensityNeeded() {
    ExposureWindow any = window(2, 1, 0.4, new Light(5, OptionalDouble.of(50)));
    ExposureWindow just = window(any.neededDensity(1), 1, 0.4, any.light());
    assertThat(just.shortestS().getAsDouble())
        .isCloseTo(just.longestS().getAsDouble(), within(1e-9));
    assertThat(just.leastShareServed()).isCloseTo(0.4, within(1e-12));
  }

  @Test
  void stripsStepByTheRootOfTwo() {
    assertThat(window(2, 1, 1, Light.USUAL).stripsS())
        .hasSize(7)
        .satisfies(
            s -> {
              assertThat(s.get(0)).isEqualTo(10);
              assertThat(s.get(1)).isCloseTo(14.14, within(0.005));
              assertThat(s.get(2)).isCloseTo(20, within(1e-9));
              assertThat(s.get(6)).isCloseTo(80, within(1e-9));
            });
    ExposureWindow known = window(2, 1, 1, new Light(5, OptionalDouble.of(50)));
    assertThat(known.stripsS().get(3)).isCloseTo(known.squareOnS().getAsDouble(), within(1e-9));
  }

  @Test
  void impossibleNumbersAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> light(-1))
        .withMessageContaining("-1.0 deg");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Light(5, OptionalDouble.of(0)))
        .withMessageContaining("0.0 W/m2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FilmStock.of(0, 2))
        .withMessageContaining("0 layers");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FilmStock.of(1, 0))
        .withMessageContaining("density 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Resist(0, 1500))
        .withMessageContaining("0.0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> window(2, 1, 0, Light.USUAL))
        .withMessageContaining("share of light 0.0");
  }
}
