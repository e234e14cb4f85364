package org.amperskin.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.amperskin.job.RunKeeper;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepRun;
import org.amperskin.plating.TankStep;
import org.amperskin.plating.Target;
import org.amperskin.testtime.HandClock;
import org.amperskin.units.CurrentDensity;
import org.amperskin.viewer.part.RunStart;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A step counted by a clock that is moved by hand: 2 dm2 at 2 A/dm2 are 4 A. */
class RunClockTest {
  private final HandClock hands = new HandClock();

  @TempDir private Path folder;

  private RunClock clock;

  @BeforeEach
  void start() {
    clock = opened();
  }

  private RunKeeper keeper() {
    return new RunKeeper(folder.resolve("runs"), Path.of("job.yaml"), List.of("copper"), 1);
  }

  /** As a viewer does that is opened anew. */
  private RunClock opened() {
    return new RunClock(
        1,
        new RunStart(
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
            keeper()),
        hands);
  }

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

  /** 1 A.h, then the viewer is killed; 15 min later another one asks. */
  @Test
  void whatWasCountedOutlivesTheViewer() throws Exception {
    clock.toggle();
    assertThat(afterMinutes(15)).isCloseTo(1, within(1e-9));
    hands.forward(Duration.ofMinutes(15));
    clock = opened();
    assertThat(clock.kept().get().going()).isTrue();
    assertThat(clock.gapS()).isCloseTo(900, within(1e-9));
    assertThat(clock.gapAh()).isCloseTo(1, within(1e-9));
    assertThat(afterMinutes(5)).as("not counted while it is asked").isCloseTo(1, within(1e-9));
    clock.onSince();
    assertThat(clock.kept().get()).isNull();
    assertThat(clock.run().get().passedAh()).isCloseTo(2 + 1 / 3.0, within(1e-9));
    assertThat(afterMinutes(3)).as("it goes on").isCloseTo(2 + 8 / 15.0, within(1e-9));
    clock.toggle();
    clock = opened();
    assertThat(clock.kept().get().going()).as("paused").isFalse();
    clock.offSince();
    assertThat(afterMinutes(60)).as("stands").isCloseTo(2 + 8 / 15.0, within(1e-9));
    clock.reset();
    assertThat(keeper().kept()).as("back at the start there is nothing to keep").isEmpty();
    assertThat(opened().kept().get()).isNull();
  }

  @Test
  void aRunPastItsEndIsKeptUntilItIsStopped() throws Exception {
    clock.toggle();
    assertThat(afterMinutes(75)).isCloseTo(5, within(1e-9));
    assertThat(opened().run().get().overAh()).isCloseTo(2, within(1e-9));
    clock.toggle();
    assertThat(keeper().kept()).isEmpty();
  }

  @Test
  void aDamagedCountIsToldAndItBeginsAtTheStart() throws Exception {
    clock.toggle();
    afterMinutes(15);
    Files.writeString(keeper().file(), "elapsed: soon");
    clock = opened();
    assertThat(clock.fault().get()).contains("damaged", keeper().file().toString());
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
