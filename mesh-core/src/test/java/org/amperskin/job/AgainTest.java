package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.OptionalDouble;
import org.amperskin.geom.Progress;
import org.amperskin.plating.Plan;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepEstimate;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;

/** Jobs that are taken up again, on the cube of 20 mm: 24 cm2, all by hand. */
class AgainTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();

  private static Job job(String steps) throws Exception {
    String text = "part: {file: cube20.stl, unit: mm}\nstep:\n" + steps;
    return JobFile.parse(text, TestMeshes.folder().resolve("examples/again.yaml"), RECIPES);
  }

  private static final String COPPER =
      "  - {name: copper, recipe: copper-acid-decorative, thickness: 60 um}\n"
          + "  - {work: rinse}\n"
          + "  - {name: dark, recipe: chromium-brush-dark-trivalent, coverage: 0.4 A.h/dm2}\n";

  private static Plan plan(Job job) throws Exception {
    return JobRun.of(job, Progress.SILENT).plan();
  }

  @Test
  void loggedChargeIsTakenOffItsStepOnly() throws Exception {
    Job job = job(COPPER);
    Plan whole = plan(job);
    Plan rest = plan(Again.continued(job, Map.of("copper", 0.5)));
    assertThat(rest.steps().get(0).chargeAh().orElseThrow())
        .isCloseTo(whole.steps().get(0).chargeAh().orElseThrow() - 0.5, within(1e-9));
    assertThat(rest.steps().get(2).chargeAh()).isEqualTo(whole.steps().get(2).chargeAh());
    assertThatThrownBy(() -> Again.continued(job, Map.of("coper", 0.5)))
        .hasMessageContaining("did you mean 'copper'");
  }

  /** Half of 60 um comes off 24 cm2: 24 x 30e-4 x 8.92 = 0.642 g, and 30 um are plated again. */
  @Test
  void aBadLayerIsTakenHalfOffAndPlatedAgain() throws Exception {
    Plan plan = plan(Again.redone(job(COPPER), "copper", OptionalDouble.empty(), RECIPES));
    assertThat(plan.steps())
        .extracting(StepEstimate::name)
        .containsExactly("take off copper", "rinse", "sand", "activate", "copper", "rinse", "dark");
    StepEstimate off = plan.steps().get(0);
    assertThat(off.figure("removedG").orElseThrow().value())
        .isCloseTo(24 * 30e-4 * 8.92, within(1e-9));
    StepEstimate again = plan.steps().get(4);
    assertThat(again.massG().orElseThrow()).isCloseTo(24 * 30e-4 * 8.96, within(1e-9));
    assertThat(again.figure("alreadyUm").orElseThrow().value()).isCloseTo(30, within(1e-9));
    assertThat(plan.warnings()).noneMatch(w -> w.contains("take off"));
  }

  @Test
  void whatCannotBeRedoneSaysWhatCan() throws Exception {
    Job job = job(COPPER + "  - {name: ni, recipe: nickel-watts, thickness: 5 um}\n");
    OptionalDouble half = OptionalDouble.empty();
    assertThatThrownBy(() -> Again.redone(job, "dark", half, RECIPES))
        .hasMessageContaining("has no thickness");
    assertThatThrownBy(() -> Again.redone(job, "ni", half, RECIPES))
        .hasMessageContaining("takes nickel off");
    assertThatThrownBy(() -> Again.redone(job, "rinse", half, RECIPES))
        .hasMessageContaining("plates nothing");
    assertThatThrownBy(() -> Again.redone(job, "copper", OptionalDouble.of(60), RECIPES))
        .hasMessageContaining("something must stay");
  }
}
