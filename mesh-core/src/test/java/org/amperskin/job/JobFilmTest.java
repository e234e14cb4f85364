package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.amperskin.geom.Progress;
import org.amperskin.plating.Caution;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the steps of a job make of a film's black and clear. */
class JobFilmTest {
  @TempDir private Path folder;

  private Estimate estimate(String text) throws Exception {
    Path examples = TestMeshes.folder().resolve("examples");
    Path file = folder.resolve("job.yaml");
    Files.writeString(
        file,
        text.replace("CUBE", examples.resolve("cube20.stl").toString())
            .replace("SQ", examples.resolve("square20.svg").toString()));
    return JobRun.of(JobFile.read(file, RecipeLibrary.standard()), Progress.SILENT);
  }

  private static final String FILM =
      """
      part: {file: CUBE, unit: mm}
      resist: {kind: KIND}
      film:
        square: {artwork: SQ, toward: -z, scale: 50 %, surround: clear}
      """;

  private static final String STEPS =
      """
      step:
        - {name: bright nickel, recipe: nickel-watts, thickness: 5 um}
        - {name: thin palladium, recipe: palladium-brush, thickness: 0.2 um, region: square,
           swab: {contact: 1 cm2}}
        - {name: later, recipe: nickel-watts, thickness: 1 um, region: square}
      """;

  @Test
  void positiveResistPlatesTheClear() throws Exception {
    JobFilm film =
        JobFilm.of(estimate(FILM.replace("KIND", "positive") + STEPS), Optional.empty()).get(0);
    assertThat(film.polarity())
        .isEqualTo(
            "Positive resist: black stays bare bright nickel, clear becomes thin palladium.");
    assertThat(film.lying()).contains("light along -z", "top of the film along +y");
    assertThat(film.layout().black().areaMm2()).isEqualTo(100);
  }

  @Test
  void negativeResistPlatesTheBlack() throws Exception {
    JobFilm film =
        JobFilm.of(estimate(FILM.replace("KIND", "negative") + STEPS), Optional.of("square"))
            .get(0);
    assertThat(film.polarity())
        .isEqualTo(
            "Negative resist: clear stays bare bright nickel, black becomes thin palladium.");
    assertThat(film.stencilPolarity())
        .isEqualTo(
            "What the stencil covers stays bare bright nickel, what is cut out becomes thin"
                + " palladium.");
    // the outline is 20 x 20 mm (10 mm and 5 mm on each side), 10 x 10 mm of it are not covered
    assertThat(film.layout().covered().areaMm2()).isEqualTo(300);
  }

  @Test
  void regionsThatUseTheFilmCountAndEtchingIsNamed() throws Exception {
    String regions =
        """
        region:
          upper: {film: square, within: {plane: {point: 0 0 10 mm, normal: +z}}}
        step:
          - {work: etch, region: upper}
        """;
    JobFilm film =
        JobFilm.of(estimate(FILM.replace("KIND", "positive") + regions), Optional.empty()).get(0);
    assertThat(film.polarity()).endsWith("black stays as it is, clear is etched.");
  }

  @Test
  void cautionsOfLightAndResistAreThere() throws Exception {
    JobFilm film = JobFilm.of(estimate(FILM.replace("KIND", "positive")), Optional.empty()).get(0);
    assertThat(film.cautions())
        .extracting(Caution::hazard)
        .contains("ultraviolet light", "solvents and aerosols", "caustic", "local rules");
    assertThat(film.stencilCautions()).extracting(Caution::hazard).contains("blades");
    assertThat(film.polarity()).contains("clear is laid bare");
  }

  @Test
  void stopOffsAreLeftOutUnlessNamed() throws Exception {
    String text =
        """
        part: {file: CUBE, unit: mm}
        film:
          light: {artwork: SQ, toward: -z}
          tape: {artwork: SQ, toward: +x, use: stop-off}
        """;
    Estimate job = estimate(text);
    assertThat(JobFilm.of(job, Optional.empty()))
        .extracting(f -> f.layout().name())
        .isEqualTo(List.of("light"));
    assertThat(JobFilm.of(job, Optional.of("tape")).get(0).polarity())
        .startsWith("Stop-off: black is covered");
    assertThatThrownBy(() -> JobFilm.of(job, Optional.of("tap")))
        .hasMessageContaining("did you mean 'tape'?");
  }

  @Test
  void testStripsCarryTheTimesOfTheFilmsWindow() throws Exception {
    Estimate lit =
        estimate(FILM.replace("KIND", "positive") + "light: {irradiance: 5 mW/cm2}\n" + STEPS);
    JobFilm strips = JobFilm.of(lit, Optional.empty()).get(0).testStrips(lit);
    assertThat(strips.layout().name()).isEqualTo("square test strips");
    // 150 mJ/cm2 x 1.5 over 5 mW/cm2 and the 85 % and 90 % that film and pane pass: the middle
    // strip
    double squareOn = 1.5 * 150 / 5 / lit.films().get(0).check().exposure().passed();
    assertThat(strips.lying())
        .contains(String.format(java.util.Locale.ROOT, "4 at %.0f s", squareOn));
    assertThat(strips.polarity()).contains("clear becomes thin palladium");
  }

  @Test
  void aStopOffHasNoTestStrips() throws Exception {
    Estimate tape =
        estimate(
            FILM.replace("KIND", "positive").replace("clear}", "clear, use: stop-off}") + STEPS);
    JobFilm film = JobFilm.of(tape, Optional.of("square")).get(0);
    assertThatThrownBy(() -> film.testStrips(tape)).hasMessageContaining("0 strips to expose");
  }

  @Test
  void linesFinerThanHomeFilmPrintsAreTold() throws Exception {
    for (String width : new String[] {"0.12", "0.16"}) {
      Path drawing = folder.resolve("rib.svg");
      Files.writeString(
          drawing,
          "<svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='20mm' viewBox='0 0 20 20'>"
              + "<rect x='4' y='4' width='"
              + width
              + "' height='12'/></svg>");
      Estimate e =
          estimate(
              FILM.replace("KIND", "positive")
                  .replace("SQ", drawing.toString())
                  .replace("50 %", "100 %"));
      boolean told =
          e.films().get(0).warnings().stream()
              .anyMatch(w -> w.contains("the finest line is 0.12 mm on the film"));
      assertThat(told).as(width).isEqualTo(width.equals("0.12"));
    }
  }
}
