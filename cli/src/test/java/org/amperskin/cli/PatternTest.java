package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The verb {@code pattern} through the whole program. */
class PatternTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  private static JsonNode answer(String line) throws Exception {
    Cli.Result shown = Cli.run(Words.of(line));
    assertThat(shown.code()).as(shown.err()).isZero();
    return JSON.readTree(shown.out());
  }

  /** The drawing that is written opens that share when {@code mask} lays it on the same part. */
  @ParameterizedTest
  @CsvSource({
    "test-meshes/demo/visor.stl, chevrons --pitch 6mm",
    "test-meshes/demo/shoulder-plate.obj, woven --pitch 8mm --angle 45deg",
  })
  void openShareIsMetOnThePartByTheDrawingWritten(String part, String motif) throws Exception {
    Path svg = folder.resolve("drawn.svg");
    JsonNode solved =
        answer(
            "pattern %s --open 35%% --on %s --toward +y --out %s --json"
                .formatted(motif, part, svg));
    assertThat(solved.get("openFraction").asDouble()).isCloseTo(0.35, within(0.0001));
    JsonNode laid = answer("mask %s --artwork %s --toward +y --json".formatted(part, svg));
    double exposed = laid.get("exposedAreaMm2").asDouble();
    double masked = laid.get("maskedAreaMm2").asDouble();
    assertThat(exposed / (exposed + masked)).isCloseTo(0.35, within(0.001));
    assertThat(exposed).isCloseTo(solved.get("openAreaMm2").asDouble(), within(0.5));
  }

  @Test
  void aJobsFilmIsReplacedAndCountedInTheRegionNamed() throws Exception {
    JsonNode solved =
        answer(
            "pattern bands --pitch 2mm --open 20% --job test-meshes/examples/every-key.yaml"
                + " --film cells --region end --size 16x16mm --json");
    assertThat(solved.get("openFraction").asDouble()).isCloseTo(0.2, within(0.0001));
    assertThat(solved.get("region").asText()).isEqualTo("end");
    // the side of the cube, above 5 mm
    double counted = solved.get("openAreaMm2").asDouble() + solved.get("closedAreaMm2").asDouble();
    assertThat(counted).isCloseTo(20 * 15, within(1e-6));
  }

  @Test
  void shareThatCannotBeHadIsOneWithItsRange() {
    Cli.Result shown = Cli.run(Words.of("pattern dots --pitch 4mm --open 35%"));
    assertThat(shown.code()).isEqualTo(1);
    assertThat(shown.out()).isEmpty();
    assertThat(shown.err()).contains("open 35 % cannot be had with dots", "(line 3.99 mm)");
  }

  @Test
  void givenLineIsToldWithoutSolving() {
    Cli.Result shown =
        Cli.run(
            Words.of(
                "pattern bands --pitch 4mm --line 1mm --on test-meshes/examples/cube20.stl"
                    + " --toward -z --unit mm"));
    assertThat(shown.code()).isZero();
    assertThat(shown.out()).contains("75.000 % of both").doesNotContain("solved");
  }
}
