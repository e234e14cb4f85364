package org.amperskin.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.amperskin.picture.Camera;
import org.amperskin.picture.SampleParts;
import org.amperskin.region.RegionKind;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;
import org.amperskin.viewer.part.RegionEntry;
import org.amperskin.viewer.part.StepCard;
import org.junit.jupiter.api.Test;

class ViewerModelTest {
  /** Stands for the user interface's thread: the test runs what was posted. */
  private final BlockingQueue<Runnable> posted = new LinkedBlockingQueue<>();

  private final CountDownLatch firstStarted = new CountDownLatch(1);
  private final CountDownLatch firstMayGoOn = new CountDownLatch(1);
  private final CountDownLatch firstWasStopped = new CountDownLatch(1);

  private final PartSource source =
      (file, progress) -> {
        String name = file.toString();
        if (name.equals("first")) {
          firstStarted.countDown();
          try {
            firstMayGoOn.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
          try {
            progress.accept(Progress.of("still going", 0.5));
          } finally {
            firstWasStopped.countDown();
          }
        }
        if (name.equals("bad")) {
          throw new ProblemException("It is bad.", "bad, line 3", "Take another.");
        }
        if (name.equals("fault")) {
          throw new IllegalStateException("a fault of 7 kinds");
        }
        return part(name);
      };
  private final ViewerModel model = new ViewerModel(source, posted::add);

  private static LoadedPart part(String title) {
    PaintedSurface bare =
        PaintedSurface.of(
            "bare",
            SampleParts.box(10, 20, 30),
            new int[12],
            List.of(RegionEntry.of(RegionKind.EXPOSED, 2200, true)));
    PaintedSurface masked =
        PaintedSurface.of(
            "masked",
            SampleParts.box(10, 20, 30),
            new int[12],
            List.of(RegionEntry.of(RegionKind.MASKED, 2200, false)));
    return new LoadedPart(
        title, List.of(bare, masked), List.of(), List.of(step(0), step(1)), List.of());
  }

  private static StepCard step(int surface) {
    OptionalDouble none = OptionalDouble.empty();
    return new StepCard(
        "s",
        "copper",
        "tank",
        surface,
        none,
        none,
        none,
        "",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Optional.empty());
  }

  private void runUntil(Phase wanted) throws InterruptedException {
    while (model.phase().get() != wanted) {
      Runnable next = posted.poll(10, TimeUnit.SECONDS);
      assertThat(next).as("a message while waiting for %s", wanted).isNotNull();
      next.run();
    }
  }

  @Test
  void newerFileReplacesTheOlderLoad() throws InterruptedException {
    model.open(Path.of("first"));
    assertThat(firstStarted.await(10, TimeUnit.SECONDS)).isTrue();
    model.open(Path.of("second"));
    runUntil(Phase.SHOWN);
    assertThat(model.part().get().title()).isEqualTo("second");
    firstMayGoOn.countDown();
    assertThat(firstWasStopped.await(10, TimeUnit.SECONDS)).isTrue();
    Runnable late = posted.poll(200, TimeUnit.MILLISECONDS);
    if (late != null) {
      late.run();
    }
    assertThat(model.part().get().title()).isEqualTo("second");
    assertThat(model.phase().get()).isEqualTo(Phase.SHOWN);
  }

  /** Hands out the part as stored, then goes on only when it is let. */
  private final PartSource twoStages =
      new PartSource() {
        @Override
        public LoadedPart load(Path file, Consumer<Progress> progress) {
          throw new IllegalStateException("not asked for in 1 stage");
        }

        @Override
        public LoadedPart load(
            Path file, Consumer<Progress> progress, Consumer<LoadedPart> sooner) {
          sooner.accept(part(file + " as stored"));
          progress.accept(Progress.of("working", 0.25));
          firstStarted.countDown();
          try {
            firstMayGoOn.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
          try {
            progress.accept(Progress.of("working", 0.5));
          } finally {
            firstWasStopped.countDown();
          }
          return part(file + " worked out");
        }
      };

  @Test
  void largePartIsShownWhileItIsWorkedOutAndKeepsItsView() throws InterruptedException {
    ViewerModel two = new ViewerModel(twoStages, posted::add);
    two.open(Path.of("part"));
    assertThat(firstStarted.await(10, TimeUnit.SECONDS)).isTrue();
    while (two.progress().get() == null || !two.progress().get().stage().equals("working")) {
      posted.poll(10, TimeUnit.SECONDS).run();
    }
    assertThat(two.phase().get()).isEqualTo(Phase.SHOWN);
    assertThat(two.part().get().title()).isEqualTo("part as stored");
    two.turn(40, 10);
    double yaw = two.camera().get().yawDegrees();
    firstMayGoOn.countDown();
    while (!two.part().get().title().equals("part worked out")) {
      posted.poll(10, TimeUnit.SECONDS).run();
    }
    assertThat(two.progress().get()).isNull();
    assertThat(two.camera().get().yawDegrees()).isEqualTo(yaw);
  }

  @Test
  void workOnAShownPartStopsWhenAnotherIsOpenedOrItIsCancelled() throws InterruptedException {
    ViewerModel two = new ViewerModel(twoStages, posted::add);
    two.open(Path.of("part"));
    assertThat(firstStarted.await(10, TimeUnit.SECONDS)).isTrue();
    while (two.phase().get() != Phase.SHOWN) {
      posted.poll(10, TimeUnit.SECONDS).run();
    }
    two.cancel();
    // nobody lets it go on: it was interrupted, and its progress refused
    assertThat(firstWasStopped.await(10, TimeUnit.SECONDS)).isTrue();
    assertThat(two.part().get().title()).isEqualTo("part as stored");
    assertThat(two.phase().get()).isEqualTo(Phase.SHOWN);
    assertThat(two.progress().get()).isNull();
    two.open(Path.of("next"));
    while (!two.part().get().title().startsWith("next")) {
      posted.poll(10, TimeUnit.SECONDS).run();
    }
    assertThat(two.part().get().title()).isEqualTo("next as stored");
  }

  @Test
  void cancelGoesBackToWhatWasThere() throws InterruptedException {
    model.open(Path.of("first"));
    model.cancel();
    assertThat(model.phase().get()).isEqualTo(Phase.EMPTY);
    model.open(Path.of("second"));
    runUntil(Phase.SHOWN);
    model.open(Path.of("first"));
    assertThat(model.phase().get()).isEqualTo(Phase.LOADING);
    model.cancel();
    assertThat(model.phase().get()).isEqualTo(Phase.SHOWN);
    assertThat(model.part().get().title()).isEqualTo("second");
    // the thread of the load ends although nobody lets it go on
    assertThat(firstWasStopped.await(10, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void problemKeepsThePartThatWasShown() throws InterruptedException {
    model.open(Path.of("second"));
    runUntil(Phase.SHOWN);
    model.open(Path.of("bad"));
    runUntil(Phase.FAILED);
    assertThat(model.problem().get().where()).isEqualTo("bad, line 3");
    model.back();
    assertThat(model.phase().get()).isEqualTo(Phase.SHOWN);
    assertThat(model.part().get().title()).isEqualTo("second");
  }

  @Test
  void faultOfTheProgramIsToldAndNotSwallowed() throws InterruptedException {
    model.open(Path.of("fault"));
    runUntil(Phase.FAILED);
    assertThat(model.problem().get().what()).contains("a fault of 7 kinds");
  }

  @Test
  void fittedPartStaysFittedWhenTheWindowChanges() throws InterruptedException {
    model.open(Path.of("second"));
    runUntil(Phase.SHOWN);
    Camera before = model.camera().get();
    model.setAspect(0.4);
    Camera narrow = model.camera().get();
    assertThat(narrow.distanceMm()).isGreaterThan(before.distanceMm());
    model.zoom(0.5);
    Camera moved = model.camera().get();
    model.setAspect(1.7);
    assertThat(model.camera().get()).isSameAs(moved);
    assertThat(moved.distanceMm()).isCloseTo(narrow.distanceMm() / 2, within(1e-9));
  }

  @Test
  void stepShowsTheSurfaceItWorksOn() throws InterruptedException {
    model.open(Path.of("second"));
    runUntil(Phase.SHOWN);
    assertThat(model.surface().get().name()).isEqualTo("bare");
    model.toggleRegion(0);
    model.selectStep(1);
    assertThat(model.surface().get().name()).isEqualTo("masked");
    assertThat(model.shownRegion().get()).isEqualTo(ViewerModel.NONE);
    model.open(Path.of("third"));
    runUntil(Phase.LOADING);
    runUntil(Phase.SHOWN);
    assertThat(model.selectedStep().get()).isEqualTo(ViewerModel.NONE);
    assertThat(model.surface().get()).isSameAs(model.part().get().surfaces().get(0));
  }

  @Test
  void stepBeyondTheJobSelectsThePart() throws InterruptedException {
    model.open(Path.of("second"));
    runUntil(Phase.SHOWN);
    model.selectStep(4);
    assertThat(model.selectedStep().get()).isEqualTo(ViewerModel.NONE);
  }

  @Test
  void surfacesArePaintedByWhatIsAskedForWhereTheyCanBe() throws InterruptedException {
    PaintedSurface plain = part("x").surfaces().get(0);
    PaintedSurface gap = PaintedSurface.of("gap", plain.mesh(), new int[12], plain.regions());
    PaintedSurface rich = plain.with(List.of(gap));
    LoadedPart both =
        new LoadedPart(
            "both", List.of(rich, plain), List.of(), List.of(step(0), step(1)), List.of());
    ViewerModel shown = new ViewerModel((file, progress) -> both, posted::add);
    assertThat(shown.paints()).isEmpty();
    shown.open(Path.of("both"));
    while (shown.phase().get() != Phase.SHOWN) {
      posted.poll(10, TimeUnit.SECONDS).run();
    }
    assertThat(shown.paints()).containsExactly(ViewerModel.REGIONS, "gap");
    assertThat(shown.surface().get()).isSameAs(rich);
    shown.nextPaint();
    assertThat(shown.surface().get()).isSameAs(gap);
    // A surface without a gap shows its regions; back on the first, the gap is there again.
    shown.selectStep(1);
    assertThat(shown.surface().get()).isSameAs(plain);
    assertThat(shown.paints()).containsExactly(ViewerModel.REGIONS);
    shown.selectStep(0);
    assertThat(shown.surface().get()).isSameAs(gap);
    shown.nextPaint();
    assertThat(shown.surface().get()).isSameAs(rich);
  }
}
