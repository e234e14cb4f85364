package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How {@code mask} lays a film, and what it tells of its print. */
class MaskOptionsTest {
  private static Cli.Result mask(String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "mask",
                "test-meshes/examples/cube20.stl",
                "--unit",
                "mm",
                "--artwork",
                "test-meshes/examples/square20.svg"));
    words.addAll(List.of(more));
    return Cli.run(words.toArray(new String[0]));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "--lies bent; --lies bent: one of [flat, wrapped, draped] fits",
        "--lies flat; a flat film wants --toward",
        "--lies draped; a draped film wants --from",
        "--lies wrapped --toward -z; --toward -z does not fit a wrapped film",
        "--toward -z --crease 20deg; --crease 20deg goes with --from",
        "--toward -z --light 5; angle takes deg",
        "--toward -z --light 80deg; 0 to 60 fits",
        "--toward -z --layers 9; 9 layers of film; 1 to 4 fit",
        "--toward -z --irradiance 5W; irradiance takes mW/cm2, W/m2",
        "--toward -z --dose 0mJ/cm2; --dose 0mJ/cm2 is not above zero"
      })
  void impossibleOptionsAreUsageFaults(String options, String told) {
    Cli.Result shown = mask(options.split(" "));
    assertThat(shown.code()).isEqualTo(ExitCode.USAGE);
    assertThat(shown.err().replaceAll("\\s+", " ")).contains(told);
  }

  // The top of the cube is flat: draped, it is 20 x 20 mm, all under the opaque square.
  @Test
  void drapedFilmCoversTheFaceItGrowsOn() {
    Cli.Result shown =
        mask("--lies", "draped", "--from", "10 10 20 mm", "--crease", "20deg", "--up", "+y");
    assertThat(shown.err()).isEmpty();
    assertThat(shown.code()).isZero();
    assertThat(shown.out()).contains("Film film  (draped, cut to the patch, without seams)");
    assertThat(shown.out()).containsPattern("masked +0.04000 dm2");
  }

  @Test
  void aCubeCannotBeWrappedAndSaysSo() {
    Cli.Result shown = mask("--lies", "wrapped", "--from", "10 10 20 mm", "--crease", "20deg");
    assertThat(shown.code()).isEqualTo(ExitCode.USAGE);
    assertThat(shown.err()).contains("flat");
  }

  // 150 mJ/cm2 x 1.5 / 5 mW/cm2 through two clear sheets and a pane: 45 / (0.85^2 x 0.9) = 69.2 s.
  @Test
  void exposureTimeFollowsFromIrradianceAndLayers() {
    Cli.Result shown =
        mask("--toward", "-z", "--irradiance", "5mW/cm2", "--layers", "2", "--light", "3deg");
    assertThat(shown.code()).isZero();
    assertThat(shown.out()).contains("69.2 s square-on").contains("2 x 2 = 4 passes 0.01 %");
    for (String line : shown.out().split("\n")) {
      assertThat(line.length()).as(line).isLessThanOrEqualTo(80);
    }
  }

  @Test
  void aFilmThatMissesThePartIsTold() {
    Cli.Result shown = mask("--toward", "-z", "--centre", "500 0 0 mm");
    assertThat(shown.code()).isZero();
    assertThat(shown.out()).contains("! film film lights 0.0 mm2");
  }
}
