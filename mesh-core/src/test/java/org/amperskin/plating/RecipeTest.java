package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.amperskin.yaml.YamlFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RecipeTest {
  private static String resource(String name) {
    try (var in = Recipe.class.getResourceAsStream("recipes/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new java.io.UncheckedIOException(name, broken);
    }
  }

  static Stream<Recipe> recipes() {
    return RecipeLibrary.standard().all().stream();
  }

  @Test
  void theFolderAndItsIndexAgreeBothWays() throws Exception {
    Path folder = Path.of(Recipe.class.getResource("recipes/index.txt").toURI()).getParent();
    try (Stream<Path> files = Files.list(folder)) {
      List<String> ids =
          files
              .map(p -> p.getFileName().toString())
              .filter(n -> n.endsWith(".yaml"))
              .map(n -> n.replace(".yaml", ""))
              .toList();
      assertThat(ids).containsExactlyInAnyOrderElementsOf(recipes().map(Recipe::id).toList());
      assertThat(ids).hasSize(26);
    }
  }

  @ParameterizedTest
  @MethodSource("recipes")
  void everyNumberHasASourceAndEveryRecipeItsHazards(Recipe recipe) {
    assertThat(recipe.figures().values())
        .allSatisfy(figure -> assertThat(figure.source()).isNotBlank());
    assertThat(recipe.figures().values())
        .filteredOn(f -> f.source().contains("no source") && !f.source().contains(";"))
        .allSatisfy(f -> assertThat(f.mark()).isEqualTo(Mark.COMMON));
    assertThat(recipe.allCautions())
        .extracting(Caution::hazard)
        .contains("waste", "electricity")
        .endsWith("local rules");
    // pyrophosphate pH 8.0-8.7, ammine palladium 8.0-9.5, two brush solutions by their name
    assertThat(recipe.alkaline())
        .isEqualTo(
            List.of(
                    "copper-pyrophosphate",
                    "palladium-ammine",
                    "copper-brush-alkaline",
                    "nickel-brush-alkaline")
                .contains(recipe.id()));
  }

  @ParameterizedTest
  @MethodSource("recipes")
  void theCentralValueLiesInItsBand(Recipe recipe) {
    if (recipe.claim() == Claim.COUPON) {
      return;
    }
    if (recipe.how() == How.ETCH) {
      StepEstimate etched =
          EtchStep.of("s", recipe, PlatedSurface.bare(5000), Target.um(1)).build().estimate();
      Band time = etched.timeBandS().orElseThrow();
      assertThat(etched.timeS().orElseThrow()).isBetween(time.low(), time.high());
      Band depth = etched.figure(EtchEstimator.DEPTH).orElseThrow().band().orElseThrow();
      assertThat(1.0).isBetween(depth.low(), depth.high());
      return;
    }
    Step step =
        recipe.how() == How.TANK
            ? TankStep.of("s", recipe, PlatedSurface.bare(5000), Target.um(1)).build()
            : BrushStep.of("s", recipe, PlatedSurface.bare(5000), Target.um(1)).build();
    StepEstimate e = step.estimate();
    Band time = e.timeBandS().orElseThrow();
    assertThat(e.timeS().orElseThrow()).isBetween(time.low(), time.high());
    Band mass = e.massBandG().orElseThrow();
    assertThat(e.massG().orElseThrow()).isBetween(mass.low(), mass.high());
    Band thickness = e.thicknessBandUm().orElseThrow();
    assertThat(1.0).isBetween(thickness.low(), thickness.high());
  }

  @Test
  void unknownRecipesGetAHint() {
    RecipeLibrary library = RecipeLibrary.standard();
    assertThatThrownBy(() -> library.find("nickle-wats"))
        .hasMessageContaining("'nickle-wats'")
        .hasMessageContaining("did you mean 'nickel-watts'");
    assertThatThrownBy(() -> library.find("zirconium"))
        .hasMessageContaining("there are copper-acid-decorative");
  }

  @Test
  void figuresAreReadInTheirUnits() {
    Recipe recipe = RecipeLibrary.standard().find("copper-acid-decorative");
    assertThat(recipe.needed(FigureKey.DENSITY).typicalSi()).isCloseTo(200, within(1e-9));
    assertThat(recipe.needed(FigureKey.TEMPERATURE).typicalSi()).isCloseTo(298.15, within(1e-9));
    assertThat(recipe.needed(FigureKey.DENSITY).show()).isEqualTo("2 A/dm2 (1 to 6)");
    assertThat(recipe.needed(FigureKey.TEMPERATURE).show()).isEqualTo("25 C (20 to 32)");
    assertThat(recipe.anode().orElseThrow().soluble()).isTrue();
  }

  @Test
  void aRecipeOfTheSameIdReplacesTheStandardOne() throws Exception {
    String text = resource("nickel-watts.yaml").replace("Watts nickel", "My nickel");
    Recipe mine = RecipeReader.read(text, "mine.yaml");
    RecipeLibrary library = RecipeLibrary.standard().with(List.of(mine));
    assertThat(library.find("nickel-watts").name()).isEqualTo("My nickel");
    assertThat(library.all()).hasSize(26);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "valence: 2|valence: 2\\nvoltagee: 3|key 'voltagee' is not known, did you mean 'voltage'",
        "mark: M, source: \"Nickel Plating Handbook; nickel|source: \"nickel|'mark' is missing",
        "low: 2, typical: 2, high: 7|low: 8, typical: 2, high: 7|low 8, typical 2, high 7 A/dm2",
        "unit: A/dm2|unit: A/dm3|did you mean 'A/dm2'",
        "unit: A/dm2|unit: V|not a unit of current density",
        "typical: 2,|typical: 2x,|is not a unit",
        "typical: 2, high|high|key 'typical' is missing",
        "mark: M|mark: Z|mark 'Z' is not one of [R, M, C, X]",
        "metal: Ni|metal: Unobtainium|metal 'Unobtainium' is not one of",
        "valence: 2|valence: 4|valence 4 of nickel is not one of [2]",
        "valence: 2|valence: two|not a whole number",
        "how: tank|how: tnk|did you mean 'tank'",
        "claim: faraday|claim: maybe|claim 'maybe' is not one of",
        "alkaline: false|alkaline: no|neither true nor false",
        "hazards: [nickel, acid|hazards: [acid|hazard nickel is missing",
        "hazards: [nickel|hazards: [nikel|did you mean 'nickel'",
        "id: nickel-watts|id: Nickel Watts|kebab-case",
        "id: nickel-watts|id: nickel-watts\\nid: other|'id' is given twice",
        "nickel sulfate hexahydrate|potassium cyanide|cyanide solutions are not offered",
        "make-up:|make-up: 3 #|not YAML",
        "notes:|notes: {a: 1}\\nxx:|key 'xx' is not known",
        "low: 93, typical: 95, high: 97|low: 93, typical: 95, high: 107|above 100 %",
        "low: 4, typical: 5, high: 8|low: 0, typical: 5, high: 8|is not above zero",
        "low: 4, typical: 5, high: 8|value: 5, low: 4|give one or the other",
        "name: Watts nickel|name: ''|'name' has no value",
      })
  void brokenRecipesAreToldWithTheirLine(String find, String put, String message) {
    String good = resource("nickel-watts.yaml");
    String bad = good.replaceFirst(java.util.regex.Pattern.quote(find), put.replace("\\n", "\n"));
    assertThat(bad).as("the edit took").isNotEqualTo(good);
    YamlFault fault =
        catchThrowableOfType(YamlFault.class, () -> RecipeReader.read(bad, "bad.yaml"));
    assertThat(fault).as(put).isNotNull();
    assertThat(fault.getMessage()).startsWith("bad.yaml:").contains(message);
    if (!message.equals("not YAML")) {
      // faults stand on the edited line, on its last one where the edit added a line
      String before = good.substring(0, good.indexOf(find)) + put.replace("\\n", "\n");
      assertThat((long) fault.place().line())
          .isEqualTo(1 + before.chars().filter(c -> c == '\n').count());
    }
  }

  @Test
  void aNumberWithoutSourceIsToldWithItsPlace() {
    String good = resource("nickel-watts.yaml");
    String bad = good.replaceFirst("mark: M, source: \"[^\"]*\"", "mark: M");
    assertThatThrownBy(() -> RecipeReader.read(bad, "bad.yaml"))
        .hasMessage("bad.yaml:9:10: key 'source' is missing");
    String blank = good.replaceFirst("mark: M, source: \"[^\"]*\"", "mark: M, source: \"\"");
    assertThatThrownBy(() -> RecipeReader.read(blank, "bad.yaml"))
        .hasMessageContaining("bad.yaml:9:")
        .hasMessageContaining("'source' has no value");
  }

  @Test
  void whatIsNoRecipeAtAllIsTold() {
    assertThatThrownBy(() -> RecipeReader.read("", "e.yaml"))
        .hasMessageContaining("e.yaml:1:1: the file is empty");
    assertThatThrownBy(() -> RecipeReader.read("- a", "l.yaml"))
        .hasMessageContaining("l.yaml:1:1: recipe is not a mapping");
    assertThatThrownBy(() -> RecipeReader.read("a: [1, 2", "b.yaml"))
        .hasMessageContaining("b.yaml:1:")
        .hasMessageContaining("not YAML");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "low: 1, typical: 2, high: 3|low: 1.9, typical: 2, high: 2.1|factor 2 A.h/(in2.mil)",
        "thickness-cap: {value: 2|notes: [] #|thickness-cap is missing",
        "hexavalent-chromium, |solvent, |hazard hexavalent-chromium is missing",
        "chromic-acid-and-solvent, |solvent, |hazard chromic-acid-and-solvent is missing",
      })
  void darkChromiumCannotBeMadeSurerOrSaferThanItIs(String find, String put, String message) {
    String good =
        resource("chromium-brush-dark-hexavalent.yaml").replaceAll("(?s)\\nnotes:.*", "\n");
    String bad = good.replaceFirst(java.util.regex.Pattern.quote(find), put);
    assertThat(bad).isNotEqualTo(good);
    assertThatThrownBy(() -> RecipeReader.read(bad, "bad.yaml"))
        .isInstanceOf(YamlFault.class)
        .hasMessageContaining(message);
  }

  @Test
  void trivalentDarkChromiumCannotBeGivenAFactor() {
    String bad =
        resource("chromium-brush-dark-trivalent.yaml")
            .replace("speed:", "factor: {value: 1, unit: A.h/in3, mark: C, source: x}\nspeed:");
    assertThatThrownBy(() -> RecipeReader.read(bad, "bad.yaml"))
        .hasMessageContaining("contradicts claim: coupon");
  }
}
