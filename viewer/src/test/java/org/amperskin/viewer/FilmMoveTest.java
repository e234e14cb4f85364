package org.amperskin.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.amperskin.viewer.model.JobEditor;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.amperskin.viewer.part.RegionEntry;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films moved, undone and saved through the model, with real jobs. */
class FilmMoveTest {
  private static final String JOB =
      """
      # a plate of the workshop
      part: {file: %s, unit: mm}
      film:
        square:               # the only film
          artwork: %s
          toward: -z
          up: +y
          scale: 50 %%         # of the drawing
          centre: 10 10 20 mm # on the top
          surround: clear
      step:
        - {recipe: palladium-brush, thickness: 0.2 um, region: square, swab: {contact: 1 cm2}}
      """;

  /** Stands for the user interface's thread: the test runs what was posted. */
  private final BlockingQueue<Runnable> posted = new LinkedBlockingQueue<>();

  private final ViewerModel model = new ViewerModel(new JobSource(), posted::add);
  private final JobEditor editor = model.editor();

  @TempDir private Path folder;
  private Path file;
  private String text;

  @BeforeEach
  void open() throws Exception {
    Path examples = Path.of("..", "test-meshes", "examples").toAbsolutePath();
    file = folder.resolve("plate.yaml");
    text = JOB.formatted(examples.resolve("cube20.stl"), examples.resolve("square20.svg"));
    Files.writeString(file, text);
    model.open(file);
    settle();
    assertThat(model.phase().get()).isEqualTo(Phase.SHOWN);
  }

  private void settle() throws InterruptedException {
    do {
      Runnable next = posted.poll(30, TimeUnit.SECONDS);
      assertThat(next).as("something to do within 30 s").isNotNull();
      next.run();
    } while (model.progress().get() != null);
  }

  private double exposedMm2() {
    return model.surface().get().regions().stream()
        .filter(RegionEntry::open)
        .mapToDouble(RegionEntry::areaMm2)
        .sum();
  }

  @Test
  void aMovedFilmIsCountedAnewUndoneRedoneAndSaved() throws Exception {
    assertThat(exposedMm2()).isCloseTo(300, within(1e-6));
    model.selectStep(0);
    // 10 x 10 mm, moved so far to the right that a third of it leaves the top of 20 x 20 mm
    editor.set("square", "centre", "18.3333333333 10 20 mm");
    settle();
    assertThat(exposedMm2()).isCloseTo(400 - 100 * 2 / 3.0, within(1e-6));
    assertThat(model.selectedStep().get()).isZero();
    assertThat(editor.unsaved().get()).isTrue();
    editor.undo();
    settle();
    assertThat(exposedMm2()).isCloseTo(300, within(1e-6));
    assertThat(editor.unsaved().get()).isFalse();
    editor.redo();
    settle();
    assertThat(exposedMm2()).isCloseTo(400 - 100 * 2 / 3.0, within(1e-6));
    assertThat(editor.save()).isTrue();
    assertThat(editor.unsaved().get()).isFalse();
    assertThat(Files.readString(file))
        .isEqualTo(text.replace("10 10 20 mm", "18.3333333333 10 20 mm"));
  }

  @Test
  void keysMoveTheFilmAlongItselfAlsoFasterThanItIsWorkedOut() throws Exception {
    editor.nudge(1, 0);
    editor.nudge(1, 0);
    editor.nudge(0, -0.1);
    settle();
    assertThat(editor.films().get(0).handles().get(0).text()).isEqualTo("12 9.9 20 mm");
    editor.turn(-1);
    settle();
    assertThat(editor.films().get(0).handles().get(1).text()).isEqualTo("-1 deg");
    editor.undo();
    settle();
    editor.undo();
    settle();
    assertThat(editor.films().get(0).handles().get(0).text()).isEqualTo("10 10 20 mm");
    assertThat(editor.unsaved().get()).isFalse();
  }

  @Test
  void aValueWithoutItsUnitIsToldAndChangesNothing() throws Exception {
    editor.set("square", "centre", "18 10 20");
    settle();
    JobEditor.Fault fault = editor.fault().get();
    assertThat(fault.film()).isEqualTo("square");
    assertThat(fault.key()).isEqualTo("centre");
    assertThat(fault.text()).isEqualTo("18 10 20");
    assertThat(fault.why()).contains("mm");
    assertThat(model.phase().get()).isEqualTo(Phase.SHOWN);
    assertThat(exposedMm2()).isCloseTo(300, within(1e-6));
    assertThat(editor.unsaved().get()).isFalse();
    editor.undo();
    assertThat(posted).isEmpty();
    editor.set("square", "turn", "a: b");
    assertThat(editor.fault().get().why()).contains("'a: b' is not one plain value");
  }

  @Test
  void anUndoGivenUpCanBeAskedForAgain() throws Exception {
    editor.set("square", "turn", "45 deg");
    settle();
    editor.undo();
    model.cancel();
    assertThat(editor.unsaved().get()).isTrue();
    editor.redo();
    assertThat(model.progress().get()).as("nothing was taken back yet").isNull();
    editor.undo();
    settle();
    assertThat(editor.unsaved().get()).isFalse();
    editor.redo();
    settle();
    assertThat(editor.films().get(0).handles().get(1).text()).isEqualTo("45 deg");
  }

  @Test
  void aFileChangedByAnotherIsNotOverwritten() throws Exception {
    editor.set("square", "turn", "45 deg");
    settle();
    Files.writeString(file, text + "# by another hand\n");
    assertThat(editor.save()).isFalse();
    assertThat(editor.fault().get().why()).contains("changed by another program");
    assertThat(Files.readString(file)).endsWith("# by another hand\n");
    assertThat(editor.unsaved().get()).isTrue();
  }

  @Test
  void aFilmStaysWhereNoSkinLiesBehindIt() {
    editor.nudge(40, 0);
    assertThat(editor.fault().get().why()).contains("no skin lies behind");
    assertThat(posted).isEmpty();
  }
}
