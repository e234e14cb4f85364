package org.amperskin.viewer.model;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.amperskin.job.JobText;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Projection;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;
import org.amperskin.viewer.part.StepCard;

/**
 * The state of one viewer window. Used on the user interface's thread only.
 *
 * <p>A large part is shown as it is stored while its skin is worked out: its phase is SHOWN then,
 * and its progress goes on. A part that is shown stays while the next file loads, and comes back if
 * that load is cancelled or its problem is put away.
 */
public final class ViewerModel {
  /** Nothing is selected. */
  public static final int NONE = -1;

  /** Surfaces are painted by region. */
  public static final String REGIONS = "regions";

  /** Angle of view that looks all but parallel (degrees). */
  public static final double PARALLEL_VIEW_DEGREES = 1.5;

  private static final int FIT_APART_FROM_FACES = 100_000;
  private static final double START_YAW = 30;
  private static final double START_PITCH = 22;

  /** What the middle of the window is about. */
  public enum Phase {
    /** Nothing was opened yet. */
    EMPTY,
    /** A file is being read. */
    LOADING,
    /** A part is shown. */
    SHOWN,
    /** The last file could not be shown. */
    FAILED
  }

  private final ReadOnlyObjectWrapper<Phase> phase = new ReadOnlyObjectWrapper<>(Phase.EMPTY);
  private final ReadOnlyObjectWrapper<LoadedPart> part = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<PaintedSurface> surface = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<Progress> progress = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<ProblemException> problem = new ReadOnlyObjectWrapper<>();
  private final ObjectProperty<Camera> camera =
      new SimpleObjectProperty<>(
          new Camera(
              0,
              0,
              0,
              100,
              START_YAW,
              START_PITCH,
              Camera.USUAL_VIEW_DEGREES,
              Projection.PERSPECTIVE));
  private final IntegerProperty selectedStep = new SimpleIntegerProperty(NONE);
  private final IntegerProperty shownRegion = new SimpleIntegerProperty(NONE);
  private final StringProperty paint = new SimpleStringProperty(REGIONS);
  private final BooleanProperty dark = new SimpleBooleanProperty();
  private final BooleanProperty unlit = new SimpleBooleanProperty();
  private final BooleanProperty facets = new SimpleBooleanProperty();
  private final BooleanProperty help = new SimpleBooleanProperty();
  private final BooleanProperty schedule = new SimpleBooleanProperty();
  private final ReadOnlyObjectWrapper<RunClock> running = new ReadOnlyObjectWrapper<>();
  private final Map<String, RunClock> runs = new HashMap<>();
  private final Executor ui;
  private final PartLoader loader;
  private final JobEditor editor;
  private double aspect = 1;
  private Camera fitted;
  private int fits;

  /** The part being loaded is in the picture, and may have been turned since. */
  private boolean shownSooner;

  private int pendingFits;

  /**
   * An empty viewer.
   *
   * @param source where parts come from
   * @param ui runs tasks on the user interface's thread
   */
  public ViewerModel(PartSource source, Executor ui) {
    this.ui = ui;
    selectedStep.addListener(o -> showSurface());
    paint.addListener(o -> showSurface());
    loader = new PartLoader(source, ui, new Results());
    editor = new JobEditor(this::rework);
  }

  /** Starts to load a file; a load that is under way is given up. */
  public void open(Path file) {
    help.set(false);
    schedule.set(false);
    leaveRun();
    runs.clear();
    shownSooner = false;
    editor.cancelled();
    progress.set(Progress.of("Opening " + file.getFileName()));
    phase.set(Phase.LOADING);
    loader.load(file);
  }

  /** The step on the run screen, null if that is not shown. */
  public ReadOnlyObjectProperty<RunClock> running() {
    return running.getReadOnlyProperty();
  }

  /** Shows the run screen of the selected step, as it stood if it was begun. */
  public void runStep() {
    int step = selectedStep.get();
    if (part.get() == null || step < 0 || step >= part.get().steps().size()) {
      return;
    }
    StepCard card = part.get().steps().get(step);
    card.run()
        .ifPresent(
            start -> {
              RunClock begun = runs.get(step + card.name());
              boolean keep =
                  begun != null && (begun.going().get() || begun.run().get().share() > 0);
              if (!keep) {
                begun = new RunClock(step + 1, start, Clock.systemUTC());
                runs.put(step + card.name(), begun);
              }
              running.set(begun);
            });
  }

  /** Leaves the run screen; a step that was begun goes on. */
  public void leaveRun() {
    running.set(null);
  }

  private void rework(JobText text) {
    progress.set(Progress.of("Working it out anew"));
    loader.load(text);
  }

  /** Changes to the job that is shown. */
  public JobEditor editor() {
    return editor;
  }

  /** Gives up the load that is under way. */
  public void cancel() {
    loader.cancel();
    editor.cancelled();
    back();
  }

  /** Puts a problem away: back to the part, or to the empty window. */
  public void back() {
    progress.set(null);
    problem.set(null);
    phase.set(part.get() == null ? Phase.EMPTY : Phase.SHOWN);
  }

  /**
   * Moves the camera so that the part fills the picture.
   *
   * <p>A large part is looked through on a thread of its own; the camera follows when that is done,
   * unless it was moved in between.
   */
  public void fit() {
    PaintedSurface shown = surface.get();
    if (shown == null) {
      return;
    }
    Camera from = camera.get();
    double shape = aspect;
    if (shown.mesh().faceCount() < FIT_APART_FROM_FACES) {
      fits++;
      fitted = from.fittedTo(shown.mesh(), shape);
      camera.set(fitted);
      return;
    }
    fitted = from;
    int fit = ++fits;
    pendingFits++;
    Thread worker =
        new Thread(
            () -> {
              Camera found = from.fittedTo(shown.mesh(), shape);
              ui.execute(
                  () -> {
                    pendingFits--;
                    if (fit == fits && camera.get() == from && surface.get() == shown) {
                      fitted = found;
                      camera.set(found);
                    }
                  });
            },
            "fit of " + shown.name());
    worker.setDaemon(true);
    worker.start();
  }

  /** True while a fit is being worked out. */
  public boolean fitting() {
    return pendingFits > 0;
  }

  /** Looks from one of the usual directions and fits. */
  public void lookFrom(double yawDegrees, double pitchDegrees) {
    Camera c = camera.get();
    camera.set(c.turned(yawDegrees - c.yawDegrees(), pitchDegrees - c.pitchDegrees()));
    fit();
  }

  /** Turns the camera round the target (degrees). */
  public void turn(double byYawDegrees, double byPitchDegrees) {
    camera.set(camera.get().turned(byYawDegrees, byPitchDegrees));
  }

  /** Goes nearer (below 1) or farther; stops at 0.001 mm and 10 km. */
  public void zoom(double factor) {
    double next = camera.get().distanceMm() * factor;
    if (next > 1e-3 && next < 1e7) {
      camera.set(camera.get().zoomed(factor));
    }
  }

  /** Moves the part in the picture, in shares of the picture's height. */
  public void pan(double right, double up) {
    double span = camera.get().spanMm();
    camera.set(camera.get().panned(right * span, up * span));
  }

  /** Switches between a natural view and one that is all but parallel. */
  public void toggleParallel() {
    boolean narrow = camera.get().viewDegrees() <= PARALLEL_VIEW_DEGREES;
    camera.set(camera.get().withView(narrow ? Camera.USUAL_VIEW_DEGREES : PARALLEL_VIEW_DEGREES));
  }

  /** Selects a step by its place in the job (0, 1, ...); another place selects the part. */
  public void selectStep(int step) {
    boolean there = part.get() != null && step >= 0 && step < part.get().steps().size();
    selectedStep.set(there ? step : NONE);
  }

  /** Shows the surface of what is selected; regions of another surface are other regions. */
  private void showSurface() {
    LoadedPart now = part.get();
    if (now == null) {
      return;
    }
    PaintedSurface next = base();
    for (PaintedSurface field : next.fields()) {
      next = field.name().equals(paint.get()) ? field : next;
    }
    if (next != surface.get()) {
      shownRegion.set(NONE);
      surface.set(next);
    }
  }

  /** The surface of what is selected, painted by region. */
  private PaintedSurface base() {
    int step = selectedStep.get();
    LoadedPart now = part.get();
    return now.surfaces().get(step == NONE ? 0 : now.steps().get(step).surface());
  }

  /** What the surface can be painted by, regions first; empty before a part. */
  public List<String> paints() {
    List<String> names = new ArrayList<>();
    if (part.get() != null) {
      names.add(REGIONS);
      base().fields().forEach(f -> names.add(f.name()));
    }
    return names;
  }

  /** Paints by the next of {@link #paints}. */
  public void nextPaint() {
    List<String> names = paints();
    if (!names.isEmpty()) {
      paint.set(names.get((names.indexOf(paint.get()) + 1) % names.size()));
    }
  }

  /** What surfaces are painted by where they can be; {@link #REGIONS} where not. */
  public StringProperty paint() {
    return paint;
  }

  /** Brings out one region, or all again if it was brought out already. */
  public void toggleRegion(int region) {
    shownRegion.set(shownRegion.get() == region ? NONE : region);
  }

  /** Told by the view: width over height of the picture. A part that was fitted stays fitted. */
  public void setAspect(double widthOverHeight) {
    if (widthOverHeight > 0 && Double.isFinite(widthOverHeight) && widthOverHeight != aspect) {
      aspect = widthOverHeight;
      if (camera.get() == fitted) {
        fit();
      }
    }
  }

  /** What the middle of the window is about. */
  public ReadOnlyObjectProperty<Phase> phase() {
    return phase.getReadOnlyProperty();
  }

  /** The part, null before the first. */
  public ReadOnlyObjectProperty<LoadedPart> part() {
    return part.getReadOnlyProperty();
  }

  /** The surface shown: that of the selected step, or the part's first; null before a part. */
  public ReadOnlyObjectProperty<PaintedSurface> surface() {
    return surface.getReadOnlyProperty();
  }

  /** How far the load is, null when none is under way. */
  public ReadOnlyObjectProperty<Progress> progress() {
    return progress.getReadOnlyProperty();
  }

  /** Why the last file could not be shown, null if it could. */
  public ReadOnlyObjectProperty<ProblemException> problem() {
    return problem.getReadOnlyProperty();
  }

  /** From where the part is seen. */
  public ObjectProperty<Camera> camera() {
    return camera;
  }

  /** Place of the selected step, {@link #NONE} for the part itself. */
  public IntegerProperty selectedStep() {
    return selectedStep;
  }

  /** The region brought out, {@link #NONE} for all. */
  public IntegerProperty shownRegion() {
    return shownRegion;
  }

  /** Dark instead of light. */
  public BooleanProperty dark() {
    return dark;
  }

  /** Colours as in the legend, without light and shade. */
  public BooleanProperty unlit() {
    return unlit;
  }

  /** Lines along the faces' edges. */
  public BooleanProperty facets() {
    return facets;
  }

  /** Whether the schedule is shown. */
  public BooleanProperty schedule() {
    return schedule;
  }

  /** The list of keys is shown. */
  public BooleanProperty help() {
    return help;
  }

  private final class Results implements PartLoader.Listener {
    @Override
    public void progressed(Progress now) {
      progress.set(now);
    }

    @Override
    public void shownSooner(LoadedPart sooner) {
      show(sooner);
      shownSooner = true;
      phase.set(Phase.SHOWN);
      lookFrom(START_YAW, START_PITCH);
    }

    @Override
    public void loaded(LoadedPart loaded) {
      progress.set(null);
      if (editor.working()) {
        int step = selectedStep.get();
        editor.accepted(loaded);
        part.set(loaded);
        selectStep(step);
        showSurface();
        return;
      }
      editor.opened(loaded);
      show(loaded);
      phase.set(Phase.SHOWN);
      if (!shownSooner) {
        lookFrom(START_YAW, START_PITCH);
      }
    }

    private void show(LoadedPart loaded) {
      problem.set(null);
      shownRegion.set(NONE);
      part.set(loaded);
      if (selectedStep.get() == NONE) {
        showSurface();
      } else {
        selectedStep.set(NONE);
      }
    }

    @Override
    public void failed(ProblemException why) {
      progress.set(null);
      if (editor.working()) {
        editor.refused(why);
        return;
      }
      problem.set(why);
      phase.set(Phase.FAILED);
    }
  }
}
