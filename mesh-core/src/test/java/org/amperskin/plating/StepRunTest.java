package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Time;
import org.junit.jupiter.api.Test;

/** A step while it is done: ampere-hours counted by hand. */
class StepRunTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();

  /** 2 dm2 at 2 A/dm2: 4 A; 3 A.h take 45 min. */
  private static StepRun copper(double softS) {
    StepEstimate e =
        TankStep.of(
                "copper",
                RECIPES.find("copper-acid-decorative"),
                PlatedSurface.bare(20_000),
                Target.ampereHours(3))
            .density(CurrentDensity.ofPerDm2(2))
            .softStart(new Time(softS))
            .build()
            .estimate();
    return StepRun.of(e).orElseThrow();
  }

  @Test
  void chargeAndTimeAreCounted() {
    StepRun run = copper(0).after(900);
    assertThat(run.setA().orElseThrow()).isCloseTo(4, within(1e-12));
    assertThat(run.passedAh()).isCloseTo(1, within(1e-12));
    assertThat(run.leftAh()).isCloseTo(2, within(1e-12));
    assertThat(run.leftS()).isCloseTo(1800, within(1e-9));
    assertThat(run.share()).isCloseTo(1.0 / 3, within(1e-12));
    assertThat(run.done()).isFalse();
    StepRun end = run.after(1800);
    assertThat(end.done()).isTrue();
    assertThat(end.setA()).isEmpty();
    assertThat(end.after(900).overAh()).isCloseTo(1, within(1e-9));
  }

  /** 300 s of slow start: a quarter, a half, three quarters of 4 A for 100 s each. */
  @Test
  void theSlowStartIsFollowed() {
    StepRun run = copper(300);
    assertThat(run.setA().orElseThrow()).isCloseTo(1, within(1e-12));
    assertThat(run.next().orElseThrow().currentA()).isCloseTo(2, within(1e-12));
    StepRun later = run.after(250);
    assertThat(later.passedAh()).isCloseTo((100 * 1 + 100 * 2 + 50 * 3) / 3600.0, within(1e-12));
    assertThat(later.setA().orElseThrow()).isCloseTo(3, within(1e-12));
    assertThat(run.leftS()).isCloseTo(run.step().timeS().orElseThrow(), within(1e-6));
    assertThat(later.leftS() + 250).isCloseTo(run.step().timeS().orElseThrow(), within(1e-6));
    StepRun bySeconds = run;
    for (int s = 0; s < 400; s++) {
      bySeconds = bySeconds.after(1);
    }
    assertThat(bySeconds.passedAh()).isCloseTo(run.after(400).passedAh(), within(1e-9));
    assertThat(bySeconds.next()).isEmpty();
  }

  /** A meter that shows 3 A instead of 4: the count follows the meter, the end comes later. */
  @Test
  void whatTheMeterShowsIsCounted() {
    StepRun run = copper(0).reading(3).after(1200);
    assertThat(run.passedAh()).isCloseTo(1, within(1e-12));
    assertThat(run.leftS()).isCloseTo(2400, within(1e-9));
    StepRun soft = copper(300).reading(0.5).after(200);
    assertThat(soft.passedAh())
        .as("the reading belongs to the first setting")
        .isCloseTo((100 * 0.5 + 100 * 2) / 3600.0, within(1e-12));
    assertThat(soft.readA()).isEmpty();
  }

  @Test
  void workCountsHandsThenTheWait() {
    StepEstimate resist =
        new WorkStep("resist", "", PlatedSurface.bare(20_000), WorkKind.RESIST).estimate();
    StepRun run = StepRun.of(resist).orElseThrow();
    assertThat(run.electric()).isFalse();
    assertThat(run.handsBusy()).isTrue();
    StepRun waiting = run.after(resist.handsS().orElseThrow() + 1);
    assertThat(waiting.handsBusy()).isFalse();
    assertThat(waiting.leftS()).isCloseTo(resist.waitS().orElseThrow() - 1, within(1e-6));
    assertThat(waiting.after(1e6).done()).isTrue();
  }

  @Test
  void aSwabHasRounds() {
    StepEstimate e =
        BrushStep.of(
                "pd", RECIPES.find("palladium-brush"), PlatedSurface.bare(20_000), Target.um(0.3))
            .build()
            .estimate();
    StepRun run = StepRun.of(e).orElseThrow();
    assertThat(run.pass().orElseThrow()[0]).isEqualTo(1);
    StepRun half = run.after(e.timeS().orElseThrow() / 2);
    int[] pass = half.pass().orElseThrow();
    assertThat((double) pass[0] / pass[1]).isCloseTo(0.5, within(1.0 / pass[1] + 1e-9));
    assertThat(half.handsBusy()).isTrue();
  }

  @Test
  void whatHasNoFigureCannotRun() {
    StepEstimate refused =
        TankStep.of(
                "c",
                RECIPES.find("copper-acid-decorative"),
                PlatedSurface.masked(0, 100),
                Target.um(1))
            .build()
            .estimate();
    assertThat(StepRun.of(refused)).isEmpty();
    StepRun run = copper(0);
    assertThatThrownBy(() -> run.after(-1)).hasMessageContaining("earlier");
    assertThatThrownBy(() -> run.reading(0)).hasMessageContaining("not above zero");
  }
}
