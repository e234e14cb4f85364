package org.amperskin.viewer.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Picture;
import org.amperskin.picture.RegionColour;
import org.amperskin.picture.RenderOptions;
import org.amperskin.picture.Renderer;
import org.amperskin.region.RegionKind;
import org.amperskin.viewer.SampleSource;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.amperskin.viewer.part.PaintedSurface;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

@ExtendWith(ApplicationExtension.class)
class ViewerWindowTest {
  private final SampleSource source = new SampleSource();
  private final AtomicInteger asked = new AtomicInteger();
  private ViewerModel model;
  private ViewerWindow window;
  private Stage stage;

  @Start
  void start(Stage primary) {
    stage = primary;
    place(Drawing.SCENE);
  }

  @AfterEach
  void letGo() {
    source.gate.countDown();
  }

  private void place(Drawing drawing) {
    model = new ViewerModel(source, Platform::runLater);
    window =
        new ViewerWindow(
            model,
            drawing,
            1280,
            800,
            () -> {
              asked.incrementAndGet();
              return Optional.of(Path.of("plate"));
            });
    window.showOn(stage);
  }

  private static <T> T onUi(Callable<T> task) {
    return WaitForAsyncUtils.waitForAsyncFx(20_000, task);
  }

  private static void onUi(Runnable task) {
    onUi(
        () -> {
          task.run();
          return null;
        });
  }

  private void openAndWait(String name) throws TimeoutException {
    onUi(() -> model.open(Path.of(name)));
    WaitForAsyncUtils.waitFor(
        20,
        TimeUnit.SECONDS,
        () -> onUi(() -> model.phase().get() != Phase.LOADING && window.settled()));
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** The part's place in the window, at whole pixels, and a picture of the whole window. */
  private Shot shot(FxRobot robot) {
    return onUi(
        () -> {
          Node part = robot.lookup("#part").query();
          Bounds b = part.localToScene(part.getLayoutBounds());
          return new Shot(
              window.scene().snapshot(null),
              (int) Math.round(b.getMinX()),
              (int) Math.round(b.getMinY()),
              (int) Math.round(b.getWidth()),
              (int) Math.round(b.getHeight()));
        });
  }

  private record Shot(WritableImage image, int left, int top, int width, int height) {
    int argb(int x, int y) {
      return image.getPixelReader().getArgb(left + x, top + y);
    }

    /** Pixels whose nearest colour of the palette or the ground is each palette colour. */
    long[] nearest(int[] palette, int ground) {
      long[] counts = new long[palette.length + 1];
      for (int y = 0; y < height; y++) {
        for (int x = 0; x < width; x++) {
          int argb = argb(x, y);
          int best = palette.length;
          int distance = apart(argb, ground);
          for (int i = 0; i < palette.length; i++) {
            if (apart(argb, palette[i]) < distance) {
              distance = apart(argb, palette[i]);
              best = i;
            }
          }
          counts[best]++;
        }
      }
      return counts;
    }

    static int apart(int a, int b) {
      int sum = 0;
      for (int shift = 0; shift < 24; shift += 8) {
        int d = (a >> shift & 255) - (b >> shift & 255);
        sum += d * d;
      }
      return sum;
    }
  }

  private static int[] palette(PaintedSurface part) {
    return part.regions().stream().mapToInt(r -> r.argb()).toArray();
  }

  @Test
  void threeDimensionsAreReallyThere() {
    assertThat(onUi(() -> Platform.isSupported(ConditionalFeature.SCENE3D))).isTrue();
  }

  @Test
  void exposedShareOfAFlatPlateIsItsShareOfArea(FxRobot robot) throws TimeoutException {
    openAndWait("plate");
    onUi(
        () -> {
          model.unlit().set(true);
          model.toggleParallel();
          model.lookFrom(0, 90);
        });
    checkPlate(shot(robot));
  }

  @Test
  void fallbackPictureShowsTheSameShare(FxRobot robot) throws Exception {
    onUi(() -> place(Drawing.PICTURES));
    openAndWait("plate");
    assertThat(robot.lookup("#note").query().isVisible()).isTrue();
    onUi(
        () -> {
          model.unlit().set(true);
          model.toggleParallel();
          model.lookFrom(0, 90);
        });
    // pictures follow the camera from a thread of their own, late on a busy machine
    WaitForAsyncUtils.waitFor(20, TimeUnit.SECONDS, () -> shareOfPlate(shot(robot)) > 0.3);
    checkPlate(shot(robot));
  }

  private static double shareOfPlate(Shot shot) {
    long[] counts = shot.nearest(palette(SampleSource.plate().surfaces().get(0)), 0xFFF3F4F6);
    return (counts[0] + counts[1]) / ((double) shot.width() * shot.height());
  }

  private void checkPlate(Shot shot) {
    int[] colours = palette(SampleSource.plate().surfaces().get(0));
    long[] counts = shot.nearest(colours, 0xFFF3F4F6);
    double part = counts[0] + counts[1];
    assertThat(part / (shot.width() * shot.height())).as("share of the picture").isGreaterThan(0.3);
    assertThat(counts[0] / part).as("exposed share").isCloseTo(1 / 3.0, within(0.02 / 3));
  }

  @Test
  void regionsLieWhereTheyWereCounted(FxRobot robot) throws TimeoutException {
    // enough faces that edges are not smoothed: a mix of two regions' colours may be a third's
    openAndWait("lattice");
    onUi(() -> model.unlit().set(true));
    PaintedSurface part = model.surface().get();
    int[] colours = palette(part);
    for (double[] turn : new double[][] {{0, 0}, {40, -10}, {150, 30}}) {
      onUi(
          () -> {
            model.turn(turn[0], turn[1]);
            model.fit();
          });
      WaitForAsyncUtils.waitFor(10, TimeUnit.SECONDS, () -> onUi(() -> !model.fitting()));
      Shot shot = shot(robot);
      Camera camera = model.camera().get();
      RenderOptions plain = new RenderOptions(0xFFF3F4F6, false, 1, 0, 1);
      Picture counted =
          Renderer.render(part.painting(colours), camera, shot.width(), shot.height(), plain);
      long[] faces = new long[colours.length];
      long whole = 0;
      for (int face : counted.faces()) {
        if (face != Picture.NO_FACE) {
          faces[part.region(face)]++;
          whole++;
        }
      }
      long[] seen = shot.nearest(colours, 0xFFF3F4F6);
      double seenWhole = shot.width() * shot.height() - seen[colours.length];
      double exposed = faces[0] / (double) whole;
      assertThat(exposed).isGreaterThan(turn[0] == 150 ? -1 : 0.05);
      for (int r = 0; r < colours.length; r++) {
        assertThat(seen[r] / seenWhole)
            .as("region %d after a turn by %s", r, turn[0])
            .isCloseTo(faces[r] / (double) whole, within(0.02 * Math.max(exposed, 0.1)));
      }
      assertThat(inPlace(shot, counted, part, colours)).isGreaterThan(0.995);
    }
  }

  /** Of the pixels well inside one region, the share that carries exactly its colour. */
  private static double inPlace(Shot shot, Picture counted, PaintedSurface part, int[] colours) {
    long inside = 0;
    long right = 0;
    for (int y = 2; y < counted.height() - 2; y++) {
      for (int x = 2; x < counted.width() - 2; x++) {
        int face = counted.face(x, y);
        if (face == Picture.NO_FACE) {
          continue;
        }
        int region = part.region(face);
        boolean alone = true;
        for (int k = 0; k < 25 && alone; k++) {
          int other = counted.face(x + k % 5 - 2, y + k / 5 - 2);
          alone = other != Picture.NO_FACE && part.region(other) == region;
        }
        if (alone) {
          inside++;
          right += shot.argb(x, y) == colours[region] ? 1 : 0;
        }
      }
    }
    assertThat(inside).isGreaterThan(20_000);
    return right / (double) inside;
  }

  @Test
  void nextPartTakesThePlaceOfTheFirst(FxRobot robot) throws TimeoutException {
    openAndWait("dome");
    onUi(() -> model.unlit().set(true));
    int purple = RegionColour.of(RegionKind.STOPPED_OFF).argb();
    assertThat(exactly(shot(robot), purple)).isGreaterThan(1000);
    openAndWait("plate");
    assertThat(exactly(shot(robot), purple)).isZero();
    int orange = RegionColour.of(RegionKind.EXPOSED).argb();
    assertThat(exactly(shot(robot), orange)).isGreaterThan(1000);
  }

  @Test
  void farSidesOfOpenShellsAreLit(FxRobot robot) throws TimeoutException {
    openAndWait("plate");
    for (double pitch : new double[] {90, -90}) {
      onUi(() -> model.lookFrom(0, pitch));
      Shot shot = shot(robot);
      int middle = shot.argb(shot.width() / 2 + 3, shot.height() / 2);
      int orangeOrBlue = Math.max(middle & 255, middle >> 16 & 255);
      assertThat(orangeOrBlue).as("brightness at pitch %s", pitch).isGreaterThan(120);
    }
  }

  @Test
  void emptyWindowSaysWhatToDoAndItsButtonOpens(FxRobot robot) throws TimeoutException {
    assertThat(robot.lookup("#empty").tryQuery()).isPresent();
    assertThat(robot.lookup("#steps").tryQuery()).isEmpty();
    robot.clickOn("#open-first");
    assertThat(asked.get()).isEqualTo(1);
    WaitForAsyncUtils.waitFor(
        20, TimeUnit.SECONDS, () -> onUi(() -> model.phase().get() == Phase.SHOWN));
    assertThat(robot.lookup("#empty").tryQuery()).isEmpty();
    assertThat(robot.lookup("#steps").tryQuery()).isPresent();
  }

  @Test
  void droppedFileOpens() throws TimeoutException {
    assertThat(onUi(() -> window.openDropped(List.of()))).isFalse();
    assertThat(onUi(() -> window.openDropped(List.of(new File("plate"))))).isTrue();
    WaitForAsyncUtils.waitFor(
        20, TimeUnit.SECONDS, () -> onUi(() -> model.phase().get() == Phase.SHOWN));
    assertThat(model.part().get().title()).isEqualTo("Test plate");
  }

  @Test
  void problemIsToldWithWhereAndWhatToDo(FxRobot robot) throws TimeoutException {
    openAndWait("broken");
    Node card = robot.lookup("#problem").query();
    assertThat(texts(card))
        .contains("The file ends in the middle of triangle 12 of 400.")
        .contains("/home/maker/parts/shoulder-plate.stl, byte 684")
        .contains("Copy it again from where it came, or export the part once more as STL.");
    robot.clickOn("#problem-back");
    assertThat(robot.lookup("#problem").tryQuery()).isEmpty();
    assertThat(robot.lookup("#empty").tryQuery()).isPresent();
  }

  @Test
  void keysTurnZoomFitAndSelect(FxRobot robot) throws TimeoutException {
    openAndWait("dome");
    Camera fitted = model.camera().get();
    robot.push(KeyCode.LEFT);
    // a held key repeats, on a slow machine also when it is only tapped
    assertThat(model.camera().get().yawDegrees()).isGreaterThanOrEqualTo(fitted.yawDegrees() + 6);
    assertThat((model.camera().get().yawDegrees() - fitted.yawDegrees()) % 6).isZero();
    robot.push(KeyCode.UP);
    assertThat(model.camera().get().pitchDegrees()).isLessThanOrEqualTo(fitted.pitchDegrees() - 6);
    // what fits depends on where it is seen from, and keys that repeat turn it farther
    robot.push(KeyCode.F);
    double whole = model.camera().get().distanceMm();
    robot.push(KeyCode.PLUS);
    robot.push(KeyCode.PLUS);
    double near = model.camera().get().distanceMm();
    assertThat(near).isLessThan(0.8 * whole);
    robot.push(KeyCode.F);
    assertThat(model.camera().get().distanceMm()).isGreaterThan(1.1 * near);
    robot.push(KeyCode.DIGIT2);
    assertThat(model.selectedStep().get()).isEqualTo(1);
    assertThat(texts(robot.lookup("#figures").query())).anyMatch(t -> t.contains("Palladium"));
    robot.push(KeyCode.COMMA);
    assertThat(model.selectedStep().get()).isLessThan(1);
    robot.push(KeyCode.DIGIT0);
    assertThat(model.selectedStep().get()).isEqualTo(ViewerModel.NONE);
    robot.push(KeyCode.L);
    assertThat(model.dark().get()).isTrue();
    robot.push(KeyCode.F1);
    assertThat(robot.lookup("#help").query().isVisible()).isTrue();
    robot.push(KeyCode.ESCAPE);
    assertThat(robot.lookup("#help").query().isVisible()).isFalse();
    robot.push(KeyCode.CONTROL, KeyCode.O);
    assertThat(asked.get()).isEqualTo(1);
  }

  @Test
  void mouseTurnsShiftsAndZooms(FxRobot robot) throws TimeoutException {
    openAndWait("dome");
    Camera before = model.camera().get();
    robot.moveTo("#part").press(MouseButton.PRIMARY).moveBy(60, 25).release(MouseButton.PRIMARY);
    Camera turned = model.camera().get();
    assertThat(turned.yawDegrees()).isLessThan(before.yawDegrees() - 10);
    assertThat(turned.pitchDegrees()).isGreaterThan(before.pitchDegrees() + 4);
    assertThat(turned.targetX()).isEqualTo(before.targetX());
    robot.moveTo("#part").press(MouseButton.SECONDARY).moveBy(40, 0).release(MouseButton.SECONDARY);
    Camera shifted = model.camera().get();
    assertThat(shifted.yawDegrees()).isEqualTo(turned.yawDegrees());
    assertThat(shifted.targetX()).isNotEqualTo(turned.targetX());
    robot.moveTo("#part").scroll(3);
    assertThat(model.camera().get().distanceMm()).isNotEqualTo(shifted.distanceMm());
  }

  @Test
  void pointerNamesTheRegion(FxRobot robot) throws TimeoutException {
    openAndWait("plate");
    onUi(() -> model.lookFrom(0, 90));
    WaitForAsyncUtils.waitFor(
        10,
        TimeUnit.SECONDS,
        () -> {
          robot.moveTo("#part").moveBy(2, 1).moveBy(-1, 0);
          Labeled hint = robot.lookup(".pointer-hint").queryLabeled();
          return hint.isVisible()
              && hint.getText()
                  .matches("(exposed, open|masked, closed)\n-?[0-9.]+ -?[0-9.]+ -?[0-9.]+ mm");
        });
  }

  @Test
  void regionBroughtOutDimsTheOthers(FxRobot robot) throws TimeoutException {
    openAndWait("plate");
    onUi(
        () -> {
          model.unlit().set(true);
          model.lookFrom(0, 90);
        });
    int blue = RegionColour.of(RegionKind.MASKED).argb();
    int orange = RegionColour.of(RegionKind.EXPOSED).argb();
    assertThat(exactly(shot(robot), blue)).isGreaterThan(10_000);
    robot.clickOn("#region-0");
    Shot shot = shot(robot);
    assertThat(exactly(shot, blue)).isZero();
    assertThat(exactly(shot, orange)).isGreaterThan(10_000);
  }

  private static long exactly(Shot shot, int argb) {
    long n = 0;
    for (int y = 0; y < shot.height(); y++) {
      for (int x = 0; x < shot.width(); x++) {
        n += shot.argb(x, y) == argb ? 1 : 0;
      }
    }
    return n;
  }

  @Test
  void noTextIsCutShortAtTheUsualSize(FxRobot robot) throws TimeoutException {
    assertNothingCut(robot, "empty");
    openAndWait("broken");
    assertNothingCut(robot, "broken");
    openAndWait("dome");
    for (int step = -1; step < 3; step++) {
      int selected = step;
      onUi(() -> model.selectStep(selected));
      assertNothingCut(robot, "step " + step);
    }
    onUi(() -> model.help().set(true));
    assertNothingCut(robot, "help");
  }

  private void assertNothingCut(FxRobot robot, String state) {
    WaitForAsyncUtils.waitForFxEvents();
    List<String> cut =
        onUi(
            () -> {
              window.layOut();
              List<String> found = new ArrayList<>();
              for (Node node : robot.lookup(n -> n instanceof Labeled && shown(n)).queryAll()) {
                Labeled labeled = (Labeled) node;
                for (Node child : labeled.getChildrenUnmodifiable()) {
                  if (child instanceof Text text && !text.getText().equals(labeled.getText())) {
                    found.add(labeled.getText() + " -> " + text.getText());
                  }
                }
              }
              return found;
            });
    assertThat(cut).as(state).isEmpty();
  }

  private static boolean shown(Node node) {
    for (Node n = node; n != null; n = n.getParent()) {
      if (!n.isVisible()) {
        return false;
      }
    }
    return true;
  }

  private static List<String> texts(Node node) {
    return onUi(
        () -> {
          List<String> found = new ArrayList<>();
          for (Node n : node.lookupAll(".label")) {
            found.add(((Labeled) n).getText());
          }
          return found;
        });
  }

  /**
   * The run screen: the setting large, started and left by keys; a step that goes is found again.
   */
  @Test
  void aStepIsRunOnAScreenOfItsOwn(FxRobot robot) throws TimeoutException {
    openAndWait("dome");
    onUi(() -> model.selectStep(2));
    assertThat(robot.lookup("#run-step").tryQuery()).as("no figure, nothing to run").isEmpty();
    onUi(() -> model.selectStep(0));
    robot.push(KeyCode.R);
    assertThat(model.running().get()).isNotNull();
    assertThat(texts(robot.lookup("#run-large").query())).containsExactly("2.42 A");
    robot.push(KeyCode.SPACE);
    assertThat(onUi(() -> model.running().get().going().get())).isTrue();
    robot.push(KeyCode.LEFT);
    Camera before = model.camera().get();
    robot.push(KeyCode.DOWN);
    assertThat(model.camera().get()).as("the part behind stays").isEqualTo(before);
    robot.clickOn("#run-read").write("frog").push(KeyCode.ENTER);
    assertThat(texts(robot.lookup("#run").query())).anyMatch(t -> t.contains("frog"));
    robot.push(KeyCode.ESCAPE);
    assertThat(model.running().get()).isNull();
    onUi(model::runStep);
    assertThat(onUi(() -> model.running().get().going().get())).as("it goes on").isTrue();
    robot.clickOn("#run-close");
    assertThat(model.running().get()).isNull();
  }

  /** A viewer that is opened again knows the step that was under way, and asks. */
  @Test
  void aStepThatWasBrokenOffIsAskedAbout(FxRobot robot) throws TimeoutException {
    openAndWait("dome");
    onUi(() -> model.selectStep(0));
    onUi(model::runStep);
    onUi(() -> model.running().get().reset());
    assertThat(robot.lookup("#run-question").query().isVisible()).isFalse();
    robot.clickOn("#run-go");
    openAndWait("dome"); // forgets what it knows of the step, as a new viewer does
    onUi(() -> model.selectStep(0));
    onUi(model::runStep);
    assertThat(texts(robot.lookup("#run-question").query()))
        .anyMatch(t -> t.startsWith("Last seen") && t.endsWith("was the current on since?"));
    assertThat(robot.lookup("#run-go").query().getParent().isVisible()).isFalse();
    robot.clickOn("#run-on");
    assertThat(onUi(() -> model.running().get().going().get())).isTrue();
    assertThat(robot.lookup("#run-question").query().isVisible()).isFalse();
    onUi(() -> model.running().get().reset());
    onUi(model::leaveRun);
  }

  @Test
  void theScheduleIsShownAndPutAway(FxRobot robot) throws TimeoutException {
    robot.push(KeyCode.T);
    assertThat(model.schedule().get()).as("nothing is open").isFalse();
    openAndWait("dome");
    robot.push(KeyCode.T);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(texts(robot.lookup("#schedule").query()))
        .contains("Bright acid copper", "3 h 00 min")
        .anyMatch(t -> t.contains("ends 3 h 10 min after the start"))
        .anyMatch(t -> t.contains("3 h 00 min in step 1"));
    robot.push(KeyCode.ESCAPE);
    assertThat(model.schedule().get()).isFalse();
    robot.clickOn("#schedule-button").clickOn("#schedule-close");
    assertThat(model.schedule().get()).isFalse();
  }
}
