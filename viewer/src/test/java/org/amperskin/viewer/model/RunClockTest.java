package org.amperskin.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepRun;
import org.amperskin.plating.TankStep;
import org.amperskin.plating.Target;
import org.amperskin.testtime.HandClock;
import org.amperskin.units.CurrentDensity;
import org.junit.jupiter.api.Test;

/** A step counted by a clock that is moved by hand: 2 dm2 at 2 A/dm2 are 4 A. */
class RunClockTest {
  private final HandClock hands = new HandClock();
  private final RunClock clock =
      new RunClock(
          1,
          StepRun.of(
                  TankStep.of(
                          "copper",
                          RecipeLibrary.standard().find("copper-acid-decorative"),
                          PlatedSurface.bare(20_000),
                          Target.ampereHours(3))
                      .density(CurrentDensity.ofPerDm2(2))
                      .build()
                      .estimate())
              .orElseThrow(),
          hands);

  private double afterMinutes(long minutes) {
    hands.forward(Duration.ofMinutes(minutes));
    clock.tick();
    return clock.run().get().passedAh();
  }

  @Test
  void itCountsOnlyWhileItGoes() {
    assertThat(afterMinutes(60)).isZero();
    clock.toggle();
    assertThat(afterMinutes(15)).isCloseTo(1, within(1e-9));
    hands.forward(Duration.ofMinutes(15));
    clock.toggle();
    assertThat(clock.run().get().passedAh()).as("up to the pause").isCloseTo(2, within(1e-9));
    assertThat(afterMinutes(600)).isCloseTo(2, within(1e-9));
    clock.toggle();
    assertThat(afterMinutes(30)).as("past its end").isCloseTo(4, within(1e-9));
    assertThat(clock.run().get().done()).isTrue();
    clock.reset();
    assertThat(clock.going().get()).isFalse();
    assertThat(clock.run().get().passedAh()).isZero();
  }

  @Test
  void aReadingCountsFromNowOn() {
    clock.toggle();
    hands.forward(Duration.ofMinutes(15));
    clock.read(2);
    assertThat(afterMinutes(15)).isCloseTo(1.5, within(1e-9));
  }
}
