package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.amperskin.geom.Progress;
import org.amperskin.plating.Rack;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.testmeshes.TestMeshes;
import org.amperskin.yaml.YamlFault;
import org.junit.jupiter.api.Test;

/** Cubes of 20 and 40 mm in one tank: 24 and 96 cm2, by hand. */
class RackJobsTest {
  private static final String STEP =
      "step:\n  - {work: rinse}\n"
          + "  - {name: copper, recipe: copper-acid-decorative, thickness: 30 um, density: %s A/dm2}\n";

  private static Job job(String name, String scale, String rest) throws Exception {
    String text = "part: {file: cube20.stl, unit: mm, scale: " + scale + "}\n" + rest;
    return JobFile.parse(
        text, TestMeshes.folder().resolve("examples/" + name), RecipeLibrary.standard());
  }

  private static RackJobs hung(Job... jobs) throws Exception {
    return RackJobs.of(List.of(jobs), Optional.empty(), job -> JobRun.of(job, Progress.SILENT));
  }

  @Test
  void theyShareByAreaAtTheLowestDensity() throws Exception {
    RackJobs rack =
        hung(
            job("small.yaml", "100 %", STEP.formatted("2")),
            job("large.yaml", "200 %", STEP.formatted("3")));
    assertThat(rack.densityADm2()).isCloseTo(2, within(1e-12));
    assertThat(rack.toldADm2()).hasSize(1).containsEntry("large", 3.0);
    assertThat(rack.rack().areaDm2()).isCloseTo(0.24 + 0.96, within(1e-9));
    assertThat(rack.rack().mostA()).isCloseTo(2 * 1.2, within(1e-9));
  }

  @Test
  void theSameJobTwiceIsTwoParts() throws Exception {
    Job job = job("small.yaml", "100 %", STEP.formatted("2"));
    RackJobs rack = hung(job, job);
    assertThat(rack.rack().parts()).extracting(Rack.Hung::name).containsExactly("small", "small 2");
    assertThat(rack.rack().areaDm2()).isCloseTo(0.48, within(1e-9));
  }

  /** The whole skin hangs: a drawing for later steps is neither read nor missed. */
  @Test
  void filmsThatTheStepDoesNotWorkThroughAreLeftAlone() throws Exception {
    String film = "film: {later: {artwork: not-drawn-yet.svg, toward: -z}}\n" + STEP.formatted("2");
    assertThat(hung(job("small.yaml", "100 %", film)).rack().areaDm2())
        .isCloseTo(0.24, within(1e-9));
    String through = film.replace("thickness", "region: later, thickness");
    assertThatThrownBy(() -> hung(job("small.yaml", "100 %", through)))
        .hasMessageContaining("not-drawn-yet.svg");
  }

  @Test
  void aJobWithoutThatBathIsTold() throws Exception {
    Job copper = job("small.yaml", "100 %", STEP.formatted("2"));
    Job nickel =
        job(
            "other.yaml",
            "100 %",
            STEP.formatted("2").replace("copper-acid-decorative", "nickel-watts"));
    assertThatThrownBy(() -> hung(copper, nickel))
        .isInstanceOf(YamlFault.class)
        .hasMessageContaining("other has not a tank step in copper-acid-decorative")
        .hasMessageContaining("'copper' in nickel-watts");
  }
}
