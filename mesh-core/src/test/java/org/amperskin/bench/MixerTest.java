package org.amperskin.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.units.Mass;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Solutions weighed out, against published molar masses, densities and mixing figures. */
class MixerTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final Recipe HIGH_THROW = RECIPES.find("copper-acid-high-throw");
  private static final Recipe DECORATIVE = RECIPES.find("copper-acid-decorative");
  private static final Recipe WATTS = RECIPES.find("nickel-watts");

  private static Mix.Item item(Mix mix, String formula) {
    return mix.items().stream().filter(i -> i.formula().equals(formula)).findFirst().orElseThrow();
  }

  /** CRC Handbook of Chemistry and Physics, physical constants of inorganic compounds (memory). */
  @ParameterizedTest
  @CsvSource({
    "COPPER_SULFATE, 249.685",
    "SULFURIC_ACID, 98.079",
    "HYDROCHLORIC_ACID, 36.461",
    "SODIUM_CHLORIDE, 58.443",
    "NICKEL_SULFATE, 262.847",
    "NICKEL_CHLORIDE, 237.690",
    "NICKEL_SULFAMATE, 322.93",
    "BORIC_ACID, 61.833",
    "SODIUM_HYDROXIDE, 39.997"
  })
  void molarMassesAreThePublishedOnes(Chemical chemical, double gPerMol) {
    // natural sulfur spans 32.059 to 32.076: tables that take 32.065 come out 1e-4 heavier
    assertThat(chemical.molarMassGPerMol()).isCloseTo(gPerMol, Percentage.withPercentage(0.01));
  }

  /** 7 g/L, 0.175 mol/L: 3.5 g in 500 mL is the common figure (common practice, no source). */
  @ParameterizedTest
  @CsvSource({"0.25, 1.75", "0.5, 3.5", "1, 7"})
  void developerIsSevenGramsALitre(double litres, double grams) {
    Mix mix = new Mixer().developer(litres);
    assertThat(mix.items().get(0).massG()).isCloseTo(grams, within(1e-9));
    assertThat(mix.molPerLitre().orElseThrow()).isCloseTo(0.175, within(0.0005));
    assertThat(mix.cautions()).extracting("hazard").contains("caustic", "waste", "local rules");
  }

  @Test
  void developerFromWhatIsInTheJar() {
    Mix mix = new Mixer().developerWith(Mass.ofGrams(10));
    assertThat(mix.volumeL()).isCloseTo(10 / 7.0, within(1e-9));
    assertThat(mix.items().get(0).massG()).isCloseTo(10, within(1e-9));
  }

  /** Copper 49.6-63.1 g/L in 195-248 g/L of the pentahydrate, 15.3-19.1 in 60-75: by hand. */
  @ParameterizedTest
  @CsvSource({
    "copper-acid-decorative, 195, 49.63",
    "copper-acid-decorative, 248, 63.12",
    "copper-acid-high-throw, 60, 15.27",
    "copper-acid-high-throw, 75, 19.09"
  })
  void copperInTheSulfateIsThePublishedRange(String recipe, double sulfate, double copper) {
    Mix mix =
        new Mixer().strength("copper sulfate pentahydrate", sulfate).bath(RECIPES.find(recipe), 1);
    assertThat(mix.metalGPerL().orElseThrow()).isCloseTo(copper, within(0.01));
  }

  /** 200 g of the pentahydrate hold 50.9 g of copper: 0.801 mol (by hand). */
  @Test
  void aLitreOfDecorativeCopper() {
    Mix mix = new Mixer().bath(DECORATIVE, 1);
    assertThat(item(mix, "CuSO4.5H2O").massG()).isCloseTo(200, within(1e-9));
    assertThat(mix.metalGPerL().orElseThrow()).isCloseTo(50.9, within(0.05));
    // 60 g of acid: 34.0 mL of 96 % at 1.84 g/mL
    assertThat(item(mix, "H2SO4").massG()).isCloseTo(62.5, within(1e-9));
    assertThat(item(mix, "H2SO4").volumeMl().orElseThrow()).isCloseTo(34.0, within(0.1));
    // 60 mg of chloride: 0.14 mL of 37 % hydrochloric acid
    assertThat(item(mix, "HCl").volumeMl().orElseThrow()).isCloseTo(0.141, within(0.001));
  }

  /**
   * Surface Finishing Guidebook 2011-12 p. 206: 10 mL of concentrated acid in 100 US gal raise
   * chloride by 12 ppm. At 37 % it is 11.3: the page rounds, or its acid is a little stronger.
   */
  @Test
  void chlorideOfHydrochloricAcidIsNearThePrintedFigure() {
    double litres = 100 * 3.785411784;
    double perPpm = item(new Mixer().bath(DECORATIVE, litres), "HCl").volumeMl().orElseThrow() / 60;
    assertThat(10 / perPpm)
        .isCloseTo(11.3, within(0.1))
        .isCloseTo(12, Percentage.withPercentage(7));
  }

  /** A bath sheet prints 265 mL of analytical acid (35-37 %) in 1000 L for 120 ppm; 37 % is 282. */
  @Test
  void chlorideOfAThousandLitres() {
    double at37 = ppm120(0.37);
    assertThat(at37).isCloseTo(282, within(2.0)).isCloseTo(265, Percentage.withPercentage(7));
    assertThat(ppm120(0.35)).isGreaterThan(at37);
  }

  private static double ppm120(double share) {
    Mix mix = new Mixer().hydrochloric(share).strength("chloride", 0.120).bath(DECORATIVE, 1000);
    return item(mix, "HCl").volumeMl().orElseThrow();
  }

  /** 187-225 g/L are 106-128 mL of 96 % acid (1.84 g/mL; by hand). */
  @Test
  void highThrowAcidByVolumeAndByBatteryAcid() {
    assertThat(acidMl(187, 0.96)).isCloseTo(106, within(0.5));
    assertThat(acidMl(225, 0.96)).isCloseTo(127.6, within(0.5));
    // battery acid: 200 g/L are 540.5 g of 37 %, 423 mL at 1.277 g/mL
    assertThat(acidMl(200, 0.37)).isCloseTo(423.3, within(1.0));
  }

  private static double acidMl(double gPerL, double share) {
    Mix mix = new Mixer().sulfuric(share).strength("sulfuric acid", gPerL).bath(HIGH_THROW, 1);
    return item(mix, "H2SO4").volumeMl().orElseThrow();
  }

  @Test
  void saltBringsTheSameChloride() {
    Mix salt = new Mixer().chloride(Chemical.SODIUM_CHLORIDE).bath(HIGH_THROW, 2);
    // 70 mg/L in 2 L: 140 mg of chloride, 230.8 mg of NaCl (58.44/35.45)
    assertThat(item(salt, "NaCl").massG()).isCloseTo(0.2308, within(1e-4));
    assertThat(salt.steps().toString()).contains("sodium chloride to 1 mg");
  }

  @Test
  void wattsNickelCountsBothSalts() {
    Mix mix = new Mixer().bath(WATTS, 3);
    assertThat(item(mix, "NiSO4.6H2O").massG()).isCloseTo(810, within(1e-9));
    // 270 x 58.6934/262.847 + 50 x 58.6934/237.69
    assertThat(mix.metalGPerL().orElseThrow()).isCloseTo(60.29 + 12.35, within(0.01));
    assertThat(mix.cautions()).extracting("hazard").contains("nickel salts", "acid", "waste");
  }

  @Test
  void sulfamateIsCountedByItsNickel() {
    Mix mix = new Mixer().bath(RECIPES.find("nickel-sulfamate"), 1);
    // 85 g of nickel: 467.7 g of the tetrahydrate (322.93/58.6934)
    assertThat(item(mix, "Ni(SO3NH2)2.4H2O").massG()).isCloseTo(467.7, within(0.1));
    assertThat(mix.notes().toString()).contains("concentrate");
  }

  @Test
  void everyMakeUpHasMetalInItsPublishedRangeAndAcidLast() {
    Mixer mixer = new Mixer();
    assertThat(mixer.solutions()).hasSize(5);
    for (String id : mixer.solutions().subList(1, 5)) {
      Mix mix = mixer.bath(RECIPES.find(id), 2.5);
      assertThat(mix.items()).allMatch(Mix.Item::inRange);
      assertThat(mix.metalGPerL().orElseThrow())
          .isBetween(mix.metalLowGPerL().orElseThrow(), mix.metalHighGPerL().orElseThrow());
      assertThat(mix.steps().get(0)).contains("Goggles", "gloves", "water");
      assertThat(mix.cautions()).extracting("hazard").contains("waste", "local rules");
    }
    String copper = mixer.bath(HIGH_THROW, 1).steps().toString();
    assertThat(copper.indexOf("Acid into water")).isGreaterThan(copper.indexOf("Dissolve"));
    assertThat(copper).contains("never water into acid", "slowly", "heats");
  }

  @Test
  void whatIsAtHandGivesTheVolume() {
    Mix mix = new Mixer().bathWith(HIGH_THROW, Chemical.COPPER_SULFATE, 500);
    assertThat(item(mix, "CuSO4.5H2O").massG()).isCloseTo(500, within(1e-9));
    assertThat(mix.volumeL()).isCloseTo(500 / 68.0, within(1e-9));
  }

  @Test
  void whatLiesOutsideTheSourceIsTold() {
    Mix mix = new Mixer().strength("H2SO4", 260).bath(HIGH_THROW, 1);
    assertThat(mix.notes().get(0))
        .contains("sulfuric acid 260 g/L is outside the 187-225 g/L", "Guidebook");
  }

  @Test
  void whatHasNoMakeUpSaysSoForEveryMetal() {
    for (String id : List.of("copper-etch", "nickel-etch-brush", "palladium-brush", "tin-acid")) {
      assertThatThrownBy(() -> new Mixer().bath(RECIPES.find(id), 1))
          .as(id)
          .hasMessageContaining("no make-up with a source")
          .hasMessageContaining("copper-acid-high-throw");
    }
  }

  @Test
  void whatCannotBeMixedIsRefusedWithNumbers() {
    refused(() -> new Mixer().sulfuric(0.15).bath(HIGH_THROW, 1), "15 % is too weak: 1.2");
    refused(() -> new Mixer().sulfuric(1.2), "120 % is not from 1 to 98 %");
    refused(
        () -> new Mixer().bath(RECIPES.find("chromium-brush-dark-hexavalent"), 1),
        "maker's solution",
        "cancer",
        "trivalent");
    refused(() -> new Mixer().bath(RECIPES.find("chromium-brush-dark-trivalent"), 1), "ready-made");
    refused(() -> new Mixer().developer(1e9 * 0), "volume (0.0 m3) is not above zero");
    refused(() -> new Mixer().strength("NaOH", 50).developer(1), "50.0 g/L");
    refused(() -> new Mixer().strength("sulfric acid", 200).bath(HIGH_THROW, 1), "did you mean");
    refused(() -> new Mixer().bathWith(WATTS, Chemical.SODIUM_HYDROXIDE, 5), "nickel-watts");
  }

  private static void refused(Runnable run, String... words) {
    assertThatThrownBy(run::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContainingAll(words);
  }
}
