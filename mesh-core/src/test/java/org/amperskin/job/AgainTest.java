package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
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
    Plan plan = plan(redone(job(COPPER), "copper"));
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

  private static Job redone(Job job, String name) {
    return Again.redone(job, new Again.Redo(name, OptionalDouble.empty(), false), RECIPES);
  }

  private static List<String> names(Job job) {
    return job.steps().stream().map(StepSpec::name).toList();
  }

  /** 2 um of 5 um of nickel come off by the swab: 24 x 2e-4 x 8.9 g, and 2 um go on again. */
  @Test
  void nickelIsTakenOffAsItWasPlated() throws Exception {
    Job job = job("  - {name: ni, recipe: nickel-brush-acid, thickness: 5 um}\n");
    Plan plan = plan(Again.redone(job, new Again.Redo("ni", OptionalDouble.of(2), false), RECIPES));
    StepEstimate off = plan.steps().get(0);
    assertThat(off.recipe()).contains("nickel-etch-brush");
    assertThat(off.figure("removedG").orElseThrow().value())
        .isCloseTo(24 * 2e-4 * 8.9, within(1e-9));
    assertThat(off.cautions()).anyMatch(c -> c.hazard().equals("nickel salts"));
    assertThat(plan.steps().get(4).massG().orElseThrow()).isCloseTo(24 * 2e-4 * 8.9, within(1e-4));
    Job tank = job("  - {name: ni, recipe: nickel-watts, thickness: 5 um}\n");
    assertThat(plan(redone(tank, "ni")).steps().get(0).recipe()).contains("nickel-etch");
  }

  private static final String THROUGH_RESIST =
      "  - {work: resist}\n"
          + "  - {work: expose}\n"
          + "  - {work: develop}\n"
          + "  - {name: acid dip, work: activate}\n"
          + "  - {name: nickel, recipe: nickel-brush-acid, thickness: 5 um}\n"
          + "  - {name: flash, recipe: palladium-brush, thickness: 0.3 um}\n"
          + "  - {name: dark, recipe: chromium-brush-dark-trivalent, coverage: 0.4 A.h/dm2}\n"
          + "  - {work: strip}\n";

  /** Dark chromium has no thickness: all of it comes off in acid, the resist stays. */
  @Test
  void chromiumComesOffInAcidThroughTheOpenings() throws Exception {
    Job again = redone(job(THROUGH_RESIST), "dark");
    assertThat(names(again)).containsExactly("take off dark", "rinse", "activate", "dark", "strip");
    Plan plan = plan(again);
    assertThat(plan.steps().get(0).cautions())
        .extracting(c -> c.hazard())
        .contains("acid", "trivalent chromium", "hydrogen");
    assertThat(plan.steps().get(3).chargeAh().orElseThrow()).isCloseTo(0.4 * 0.24, within(1e-9));
    assertThat(plan.materials()).anyMatch(m -> m.name().startsWith("hydrochloric acid"));
    assertThat(plan.warnings()).noneMatch(w -> w.contains("take off"));
  }

  /** If the resist is gone the job lays it again, with its own steps, and plates nothing else. */
  @Test
  void aMaskThatIsGoneIsLaidAgain() throws Exception {
    Again.Redo asked = new Again.Redo("dark", OptionalDouble.empty(), true);
    assertThat(names(Again.redone(job(THROUGH_RESIST), asked, RECIPES)))
        .containsExactly(
            "take off dark",
            "rinse",
            "dry",
            "resist",
            "expose",
            "develop",
            "acid dip",
            "dark",
            "strip");
    Again.Redo bare = new Again.Redo("copper", OptionalDouble.empty(), true);
    assertThatThrownBy(() -> Again.redone(job(COPPER), bare, RECIPES))
        .hasMessageContaining("0 steps 'resist'");
  }

  /** Without its mask nickel in an opening is not hung on plus: the whole part would go. */
  @Test
  void aLayerWhoseMaskIsGoneIsScoured() throws Exception {
    Again.Redo asked = new Again.Redo("nickel", OptionalDouble.empty(), true);
    assertThat(names(Again.redone(job(THROUGH_RESIST), asked, RECIPES)))
        .startsWith("scour off nickel", "rinse", "dry", "resist");
  }

  /** Nothing here takes palladium off: it is scoured, and scouring takes the resist with it. */
  @Test
  void whatNoSolutionTakesOffIsScoured() throws Exception {
    Job plain = job("  - {name: pd, recipe: palladium-brush, thickness: 0.3 um}\n");
    Plan plan = plan(redone(plain, "pd"));
    assertThat(plan.steps())
        .extracting(StepEstimate::name)
        .containsExactly("scour off pd", "rinse", "activate", "pd");
    assertThat(plan.steps().get(3).massG().orElseThrow())
        .as("all of it again")
        .isCloseTo(24 * 0.3e-4 * 12, within(1e-9));
    assertThat(names(redone(job(THROUGH_RESIST), "flash")))
        .startsWith("rinse", "dry", "strip", "scour off flash", "rinse", "dry", "resist", "expose")
        .endsWith("acid dip", "flash", "dark", "strip")
        .doesNotContain("nickel");
  }

  /** A layer that ends by charge has no told thickness: so much comes off, so much goes on. */
  @Test
  void aLayerByChargeIsRedoneToAToldDepthOrWhole() throws Exception {
    Job job = job("  - {name: ni, recipe: nickel-brush-acid, charge: 2 A.h}\n");
    Plan plan = plan(Again.redone(job, new Again.Redo("ni", OptionalDouble.of(2), false), RECIPES));
    assertThat(plan.steps().get(0).recipe()).contains("nickel-etch-brush");
    assertThat(plan.steps().get(4).massG().orElseThrow()).isCloseTo(24 * 2e-4 * 8.9, within(1e-9));
    Plan whole = plan(redone(job, "ni"));
    assertThat(whole.steps().get(0).name()).isEqualTo("scour off ni");
    assertThat(whole.steps().get(3).chargeAh().orElseThrow()).isCloseTo(2, within(1e-12));
  }

  @Test
  void stepsOfOneNameAreToldApartByNumber() throws Exception {
    Job job = job(COPPER + COPPER.replace("60 um", "20 um"));
    assertThatThrownBy(() -> redone(job, "copper"))
        .hasMessageContaining("2 steps are called 'copper'")
        .hasMessageContaining("[1, 4]");
    assertThatThrownBy(() -> Again.continued(job, Map.of("copper", 0.1)))
        .hasMessageContaining("2 steps are called 'copper'");
    assertThat(names(redone(job, "4"))).hasSize(7).startsWith("take off copper").endsWith("dark");
    assertThat(names(redone(job, "1"))).hasSize(10);
    assertThatThrownBy(() -> redone(job, "7")).hasMessageContaining("the job has 6 steps");
  }

  @Test
  void nickelThroughOpeningsIsNotSanded() throws Exception {
    assertThat(names(redone(job(THROUGH_RESIST), "nickel")))
        .containsExactly(
            "take off nickel", "rinse", "activate", "nickel", "flash", "dark", "strip");
  }

  /**
   * What was done before is known: the mask is on, the barrier of 0.3 um is there once and not
   * twice, and the palladium lies between nickel and chromium.
   */
  @Test
  void theOrderOfWhatIsRedoneKnowsWhatWasDone() throws Exception {
    for (String name : List.of("nickel", "flash", "dark")) {
      assertThat(plan(redone(job(THROUGH_RESIST), name)).warnings())
          .as(name)
          .noneMatch(w -> w.contains("resist") || w.contains("chromium") || w.contains("um of"));
    }
    String bath = THROUGH_RESIST.replace("nickel-brush-acid", "nickel-watts");
    assertThat(plan(redone(job(bath), "nickel")).warnings())
        .as("resist covers the rest of the part in the bath")
        .noneMatch(w -> w.contains("neither under resist"));
    Job noBarrier =
        job(
            "  - {name: copper, recipe: copper-acid-decorative, thickness: 60 um}\n"
                + "  - {name: dark, recipe: chromium-brush-dark-trivalent, coverage: 0.4 A.h/dm2}\n");
    assertThat(plan(redone(noBarrier, "dark")).warnings())
        .as("the same mistake again is told again")
        .anyMatch(w -> w.contains("straight on copper"));
  }

  /** An etch that was broken off goes on by its logged charge. */
  @Test
  void anEtchGoesOnToo() throws Exception {
    Job job = job(COPPER + "  - {name: etch, recipe: copper-etch, depth: 10 um}\n");
    double whole = plan(job).steps().get(3).chargeAh().orElseThrow();
    Plan rest = plan(Again.continued(job, Map.of("etch", 0.1)));
    assertThat(rest.steps().get(3).chargeAh().orElseThrow()).isCloseTo(whole - 0.1, within(1e-9));
  }

  @Test
  void whatCannotBeRedoneSaysWhatCan() throws Exception {
    Job job = job(COPPER + "  - {name: etch, recipe: copper-etch, depth: 10 um}\n");
    assertThatThrownBy(() -> redone(job, "rinse")).hasMessageContaining("plates nothing");
    assertThatThrownBy(() -> redone(job, "etch")).hasMessageContaining("takes metal off");
    Again.Redo all = new Again.Redo("copper", OptionalDouble.of(60), false);
    assertThatThrownBy(() -> Again.redone(job, all, RECIPES))
        .hasMessageContaining("something must stay");
    Again.Redo deep = new Again.Redo("dark", OptionalDouble.of(1), false);
    assertThatThrownBy(() -> Again.redone(job, deep, RECIPES))
        .hasMessageContaining("comes off whole in acid");
  }
}
