package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** When steps happen. */
class ScheduleTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final PlatedSurface AREA = PlatedSurface.bare(10_000);

  private static Step work(WorkKind kind) {
    return new WorkStep(kind.key(), "", AREA, kind);
  }

  private static Plan plan(Step... steps) {
    return Plan.of(List.of(steps), Workpiece.unknown());
  }

  @Test
  void stepsFollowOneAnotherAndAddUp() {
    Step tank =
        TankStep.of("cu", RECIPES.find("copper-acid-high-throw"), AREA, Target.um(20)).build();
    Step brush = BrushStep.of("pd", RECIPES.find("palladium-brush"), AREA, Target.um(0.3)).build();
    Plan plan = plan(work(WorkKind.SEAL), tank, work(WorkKind.RINSE), brush, work(WorkKind.DRY));
    Schedule schedule = plan.schedule();
    assertThat(schedule.entries()).hasSize(5);
    assertThat(schedule.untimed()).isEmpty();
    double at = 0;
    for (Schedule.Entry e : schedule.entries()) {
      assertThat(e.startS()).isCloseTo(at, within(1e-9));
      at = e.endS();
    }
    assertThat(schedule.elapsedS()).isCloseTo(at, within(1e-9));
    double tankS = plan.steps().get(1).timeS().getAsDouble();
    double brushS = plan.steps().get(3).timeS().getAsDouble();
    // a tank plates by itself, a brush keeps the hand
    assertThat(schedule.entries().get(1).waitS()).isEqualTo(tankS);
    assertThat(schedule.entries().get(1).handsS()).isZero();
    assertThat(schedule.entries().get(3).handsS()).isEqualTo(brushS);
    double hands = brushS + plan.steps().stream().mapToDouble(s -> s.handsS().orElse(0)).sum();
    assertThat(schedule.handsS()).isCloseTo(hands, within(1e-9));
    assertThat(schedule.freeWhile())
        .extracting(Schedule.Entry::number)
        .contains(1)
        .doesNotContain(3);
  }

  @Test
  void stepsWithoutAFigureAreNamedAndAddNothing() {
    Step refused =
        BrushStep.of("dark", RECIPES.find("chromium-brush-dark-trivalent"), AREA, Target.um(1))
            .build();
    Schedule schedule = plan(work(WorkKind.RINSE), refused, work(WorkKind.ETCH)).schedule();
    assertThat(schedule.untimed()).containsExactly("dark", "etch");
    assertThat(schedule.entries()).extracting(Schedule.Entry::number).containsExactly(1);
  }
}
