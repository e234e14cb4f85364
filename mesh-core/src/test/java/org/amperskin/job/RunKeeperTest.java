package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepRun;
import org.amperskin.plating.TankStep;
import org.amperskin.plating.Target;
import org.amperskin.units.CurrentDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The count of a step on the disk. */
class RunKeeperTest {
  private static final Instant NOON = Instant.parse("2026-11-27T12:00:00.25Z");

  @TempDir private Path folder;

  private RunKeeper keeper(String job, int number, String name) {
    List<String> names = new ArrayList<>(Collections.nCopies(number, "other"));
    names.set(number - 1, name);
    return new RunKeeper(folder.resolve("home").resolve("runs"), Path.of(job), names, number);
  }

  @Test
  void whatIsKeptComesBack() throws Exception {
    RunKeeper keeper = keeper("my \"odd\" \\ job.yaml", 6, "copper: build # 2");
    assertThat(keeper.kept()).isEmpty();
    KeptRun run =
        new KeptRun(1234.5678, 1.0 / 3, OptionalDouble.of(4.25), OptionalDouble.of(3), true, NOON);
    keeper.keep(run);
    KeptRun back = keeper.kept().orElseThrow();
    assertThat(back.elapsedS()).isEqualTo(run.elapsedS());
    assertThat(back.passedAh()).isCloseTo(run.passedAh(), within(1e-15));
    assertThat(back.readA()).isEqualTo(run.readA());
    assertThat(back.wholeAh()).isEqualTo(run.wholeAh());
    assertThat(back.going()).isTrue();
    assertThat(back.seen()).isEqualTo(NOON);
    keeper.keep(new KeptRun(2000, 0, OptionalDouble.empty(), OptionalDouble.empty(), false, NOON));
    assertThat(keeper.kept().orElseThrow().readA()).isEmpty();
    try (var files = Files.list(keeper.file().getParent())) {
      assertThat(files).as("nothing unfinished beside it").hasSize(1);
    }
    keeper.forget();
    assertThat(keeper.kept()).isEmpty();
  }

  @Test
  void eachStepOfEachJobIsKeptApart() throws Exception {
    KeptRun run = new KeptRun(1, 1, OptionalDouble.empty(), OptionalDouble.empty(), true, NOON);
    keeper("a.yaml", 6, "copper").keep(run);
    assertThat(keeper("a.yaml", 7, "copper").kept()).as("a step was put before it").isPresent();
    List<String> twice = List.of("copper", "rinse", "copper");
    Path runs = folder.resolve("home").resolve("runs");
    assertThat(new RunKeeper(runs, Path.of("a.yaml"), twice, 1).kept()).isPresent();
    assertThat(new RunKeeper(runs, Path.of("a.yaml"), twice, 3).kept()).isEmpty();
    assertThat(keeper("a.yaml", 6, "nickel").kept()).isEmpty();
    assertThat(keeper("b.yaml", 6, "copper").kept()).isEmpty();
    assertThat(keeper("./a.yaml", 6, "copper").kept()).isPresent();
  }

  @Test
  void aDamagedCountIsToldWithItsFileAndNotGuessed() throws Exception {
    RunKeeper keeper = keeper("a.yaml", 6, "copper");
    keeper.keep(new KeptRun(600, 1, OptionalDouble.empty(), OptionalDouble.empty(), true, NOON));
    String whole = Files.readString(keeper.file());
    String[] damaged = {
      "",
      whole.substring(0, whole.length() / 2),
      whole.replace("1.0 A.h", "-1 A.h"),
      whole.replace("1.0 A.h", "1.0 min"),
      whole.replace("2026-11-27T12", "yesterday"),
      whole.replace("going: true", "going: maybe"),
      whole + "more: 1\n"
    };
    for (String text : damaged) {
      Files.writeString(keeper.file(), text);
      assertThatThrownBy(keeper::kept)
          .isInstanceOf(java.io.IOException.class)
          .hasMessageContaining(keeper.file().toString())
          .hasMessageContaining("delete it");
    }
  }

  /** 4 A: 900 s away are 1 A.h if the current was on, and nothing if it was off. */
  @Test
  void theTimeAwayCountsOnlyIfTheCurrentWasOn() {
    StepRun fresh =
        StepRun.of(
                TankStep.of(
                        "copper",
                        RecipeLibrary.standard().find("copper-acid-decorative"),
                        PlatedSurface.bare(20_000),
                        Target.ampereHours(3))
                    .density(CurrentDensity.ofPerDm2(2))
                    .build()
                    .estimate())
            .orElseThrow();
    KeptRun kept = KeptRun.of(fresh.after(900), true, NOON);
    assertThat(kept.planChanged(fresh)).isFalse();
    assertThat(
            new KeptRun(1, 1, OptionalDouble.empty(), OptionalDouble.of(3.1), true, NOON)
                .planChanged(fresh))
        .isTrue();
    Instant later = NOON.plusSeconds(900);
    assertThat(kept.offSince(fresh).passedAh()).isCloseTo(1, within(1e-12));
    assertThat(kept.onSince(fresh, later).passedAh()).isCloseTo(2, within(1e-12));
    assertThat(kept.onSince(fresh, NOON.minusSeconds(60)).passedAh())
        .as("a clock that was set back")
        .isCloseTo(1, within(1e-12));
    assertThat(kept.onSince(fresh.reading(2), later).after(900).passedAh())
        .as("2 A are read now: the time away was at 4 A")
        .isCloseTo(2.5, within(1e-12));
    assertThat(kept.offSince(fresh).leftAh() + kept.passedAh()).isCloseTo(3, within(1e-12));
    assertThatThrownBy(() -> fresh.standing(-1, 0, OptionalDouble.empty()))
        .hasMessageContaining("-1.0 s");
  }
}
