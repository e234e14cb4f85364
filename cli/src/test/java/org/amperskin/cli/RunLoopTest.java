package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.amperskin.job.KeptRun;
import org.amperskin.job.RunKeeper;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepRun;
import org.amperskin.plating.TankStep;
import org.amperskin.plating.Target;
import org.amperskin.testtime.HandClock;
import org.amperskin.units.CurrentDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The run screen by a clock of our own: what is typed, and what is counted. */
class RunLoopTest {
  /** Breaks the program off without a word. */
  private static final String KILL = "kill";

  /** Lines that come after so many minutes each. */
  private static final class Script extends LinkedBlockingQueue<String> {
    private static final long serialVersionUID = 1;

    private final transient HandClock clock;
    private final transient Deque<String> lines;

    Script(HandClock clock, String... lines) {
      this.clock = clock;
      this.lines = new ArrayDeque<>(List.of(lines));
    }

    @Override
    public String poll(long time, TimeUnit unit) throws InterruptedException {
      clock.forward(Duration.ofMinutes(15));
      String line = lines.poll();
      if (KILL.equals(line)) {
        throw new InterruptedException("killed");
      }
      return line;
    }
  }

  @TempDir private Path folder;

  private final HandClock clock = new HandClock();
  private final StringWriter shown = new StringWriter();

  private StepRun run(String... lines) throws Exception {
    return new RunLoop(
            "job", 1, copper(), keeper(), clock, new Script(clock, lines), new PrintWriter(shown))
        .untilEnded();
  }

  private RunKeeper keeper() {
    return new RunKeeper(folder.resolve("runs"), Path.of("job.yaml"), List.of("copper"), 1);
  }

  /** 2 dm2 at 2 A/dm2: 4 A, so 1 A.h in 15 min. */
  private static StepRun copper() {
    return StepRun.of(
            TankStep.of(
                    "copper",
                    RecipeLibrary.standard().find("copper-acid-decorative"),
                    PlatedSurface.bare(20_000),
                    Target.ampereHours(3))
                .density(CurrentDensity.ofPerDm2(2))
                .build()
                .estimate())
        .orElseThrow();
  }

  private void killed(String... lines) {
    List<String> all = new ArrayList<>(List.of(lines));
    all.add(KILL);
    assertThatThrownBy(() -> run(all.toArray(String[]::new))).hasMessage("killed");
  }

  /** 15 min are kept of the half hour; an hour goes by; then it goes on as it is told. */
  @Test
  void aKilledRunIsAskedAboutAndGoesOn() throws Exception {
    killed("", "");
    KeptRun kept = keeper().kept().orElseThrow();
    assertThat(kept.passedAh()).isCloseTo(2, within(1e-9));
    assertThat(kept.going()).isTrue();
    clock.forward(Duration.ofMinutes(15));
    StepRun off = run("", "off", "", "q");
    assertThat(shown.toString()).contains("was the current on since?", "count ", "A.h more");
    assertThat(off.passedAh()).as("15 min after the answer").isCloseTo(2 + 1 + 1, within(1e-9));
  }

  @Test
  void timeThatTheCurrentWasOnIsCountedWhenToldSo() throws Exception {
    killed("");
    StepRun on = run("on", "q");
    assertThat(on.passedAh()).as("15 min, 30 min away, 15 min").isCloseTo(1 + 2 + 1, within(1e-9));
    assertThat(keeper().kept()).as("it is past its 3 A.h: nothing is left to keep").isEmpty();
  }

  /** 5 A.h where 3 A.h are wanted: a run past its end is kept until it is left. */
  @Test
  void aRunPastItsEndIsKeptUntilItIsLeft() throws Exception {
    killed("", "", "", "", "");
    assertThat(keeper().kept().orElseThrow().passedAh()).isCloseTo(5, within(1e-9));
    assertThat(run("off", "q").overAh()).isCloseTo(3, within(1e-9));
    assertThat(keeper().kept()).isEmpty();
  }

  @Test
  void aPausedRunIsKeptPaused() throws Exception {
    StepRun left = run("p", "q");
    assertThat(left.passedAh()).isCloseTo(1, within(1e-9));
    assertThat(keeper().kept().orElseThrow().going()).isFalse();
    StepRun again = run("frog", "q");
    assertThat(shown.toString()).contains("ago, paused", "'frog' is not on, off, new or q");
    assertThat(again.passedAh()).as("not counted while it is asked").isCloseTo(1, within(1e-9));
    assertThat(keeper().kept()).as("still there").isPresent();
    assertThat(run("new", "q").passedAh()).isCloseTo(1, within(1e-9));
  }

  @Test
  void aFolderThatCannotBeWrittenIsToldAndTheRunGoesOn() throws Exception {
    Files.writeString(folder.resolve("runs"), "a file where a folder should be");
    StepRun ended = run("", "q");
    assertThat(ended.passedAh()).isCloseTo(2, within(1e-9));
    assertThat(shown.toString()).contains("The count cannot be kept");
  }

  @Test
  void aPauseStopsTheCount() throws Exception {
    StepRun ended = run("", "p", "", "p", "q");
    assertThat(ended.passedAh()).isCloseTo(3, within(1e-9));
    assertThat(shown.toString()).contains("PAUSED", "1.000 of 3.000 A.h passed, 2.000 A.h left");
  }

  @Test
  void aReadingIsTakenAndNonsenseIsTold() throws Exception {
    StepRun ended = run("2", "frog", "q");
    assertThat(ended.passedAh()).isCloseTo(1 + 0.5 + 0.5, within(1e-9));
    assertThat(shown.toString()).contains("'frog' is not p, q or a current", "read 2.00 A");
  }

  /** 10 A where 4 A are to be set: counted, and asked about. */
  @Test
  void aReadingFarOffIsCountedAndAskedAbout() throws Exception {
    StepRun ended = run("10", "q");
    assertThat(ended.passedAh()).isCloseTo(1 + 2.5, within(1e-9));
    assertThat(shown.toString()).contains("10.0 A is 2.5 times off", "if it was a slip");
  }

  @Test
  void whatIsGivenUpIsTold() throws Exception {
    killed("");
    run("new", "q");
    assertThat(shown.toString()).contains("1.000 A.h of before are given up");
  }

  @Test
  void theEndRingsOnceAndGoesOnCounting() throws Exception {
    StepRun ended = run("", "", "", "", "q");
    assertThat(ended.overAh()).isCloseTo(2, within(1e-9));
    assertThat(shown.toString().chars().filter(c -> c == 7).count()).isEqualTo(1);
    assertThat(shown.toString()).contains("switch off", "2.000 A.h too many".substring(6));
  }

  @Test
  void momentsAreShownAtEightyColumns() {
    for (String at : List.of("0 s", "15 min", "9 h")) {
      for (String step : List.of("copper build", "16", "resist", "palladium barrier")) {
        Cli.Result moment = Cli.run("run", "test-meshes/demo/visor.yaml", step, "--at", at);
        assertThat(moment.code()).isZero();
        assertThat(moment.out().lines()).allMatch(l -> l.length() <= 80);
      }
    }
    Cli.Result read =
        Cli.run("run", "test-meshes/demo/visor.yaml", "6", "--at", "1 h", "--read", "6A");
    assertThat(read.out()).contains("A.h passed");
  }

  @Test
  void faultsAreUsage() {
    String job = "test-meshes/demo/visor.yaml";
    assertThat(Cli.run("run", job, "coper build", "--at", "0s").err())
        .contains("did you mean 'copper build'");
    assertThat(Cli.run("run", job, "99", "--at", "0s").err()).contains("the job has 20 steps");
    assertThat(Cli.run("run", job, "resist", "--at", "0s", "--read", "2A").err())
        .contains("has no current");
    assertThat(Cli.run("run", "test-meshes/demo/visor.stl", "1", "--at", "0s").code()).isEqualTo(2);
    assertThat(Cli.run("run", job, "6", "--at", "-3 min").code()).isEqualTo(2);
  }
}
