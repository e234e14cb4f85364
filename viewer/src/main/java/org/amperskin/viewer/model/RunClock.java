package org.amperskin.viewer.model;

import java.io.IOException;
import java.time.Clock;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.amperskin.job.KeptRun;
import org.amperskin.job.RunKeeper;
import org.amperskin.plating.StepRun;
import org.amperskin.report.RunText;
import org.amperskin.viewer.part.RunStart;

/**
 * A step that is being done, counted by the clock of the wall.
 *
 * <p>Used on the user interface's thread only. It counts as long as it goes, shown or not, and past
 * its end: the tank does too. Its count is kept on the disk at each change and every few seconds
 * while it is looked at; since the time is kept with it, nothing is lost in between.
 */
public final class RunClock {
  private static final double KEPT_EACH_S = 5;

  private final int number;
  private final StepRun fresh;
  private final RunKeeper keeper;
  private final Clock clock;
  private final ReadOnlyObjectWrapper<StepRun> run;
  private final ReadOnlyObjectWrapper<KeptRun> kept = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper going = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper fault = new ReadOnlyStringWrapper("");
  private long last;
  private double unkeptS;

  /**
   * A step that has not begun, or was broken off.
   *
   * @param number its place in the job, from 1
   * @param clock tells the time
   */
  public RunClock(int number, RunStart start, Clock clock) {
    this.number = number;
    this.fresh = start.fresh();
    this.keeper = start.keeper();
    this.clock = clock;
    this.run = new ReadOnlyObjectWrapper<>(fresh);
    try {
      kept.set(keeper.kept().orElse(null));
    } catch (IOException damaged) {
      fault.set(damaged.getMessage());
    }
    if (kept.get() != null) {
      run.set(kept.get().offSince(fresh));
    }
  }

  /** Place of the step in the job, from 1. */
  public int number() {
    return number;
  }

  /** The step as it stands. */
  public ReadOnlyObjectProperty<StepRun> run() {
    return run.getReadOnlyProperty();
  }

  /** Whether the clock goes. */
  public ReadOnlyBooleanProperty going() {
    return going.getReadOnlyProperty();
  }

  /** How it was last seen, if it was broken off and nobody said yet how to go on; else null. */
  public ReadOnlyObjectProperty<KeptRun> kept() {
    return kept.getReadOnlyProperty();
  }

  /** Why its count is not kept; empty if it is. */
  public ReadOnlyStringProperty fault() {
    return fault.getReadOnlyProperty();
  }

  /** Time since it was last seen (s), 0 if it was not broken off. */
  public double gapS() {
    return kept.get() == null ? 0 : kept.get().gapS(clock.instant());
  }

  /** Charge that passed since it was last seen if the current was on (A.h). */
  public double gapAh() {
    return kept.get() == null
        ? 0
        : kept.get().onSince(fresh, clock.instant()).passedAh() - kept.get().passedAh();
  }

  /** The current was on since: counts that time too, and goes. */
  public void onSince() {
    run.set(kept.get().onSince(fresh, clock.instant()));
    answered();
    toggle();
  }

  /** The current was off since: stands as it was seen. */
  public void offSince() {
    run.set(kept.get().offSince(fresh));
    answered();
  }

  private void answered() {
    kept.set(null);
    keep();
  }

  /** Starts, pauses, goes on. */
  public void toggle() {
    tick();
    last = clock.millis();
    going.set(!going.get());
    keep();
  }

  /** Counts up to now. */
  public void tick() {
    if (going.get()) {
      long now = clock.millis();
      double seconds = Math.max(0, now - last) / 1000.0;
      run.set(run.get().after(seconds));
      last = now;
      unkeptS += seconds;
      if (unkeptS >= KEPT_EACH_S) {
        keep();
      }
    }
  }

  /** Counts from now on what the meter shows (A). */
  public void read(double amperes) {
    tick();
    run.set(run.get().reading(amperes));
    keep();
  }

  /** Back to the start; what was kept is forgotten. */
  public void reset() {
    going.set(false);
    kept.set(null);
    run.set(fresh);
    keep();
  }

  private void keep() {
    unkeptS = 0;
    try {
      boolean over = run.get().done() || run.get().share() == 0;
      if (over && !going.get()) {
        keeper.forget();
      } else {
        keeper.keep(KeptRun.of(run.get(), going.get(), clock.instant()));
      }
      fault.set("");
    } catch (IOException refused) {
      fault.set(RunText.notKept(keeper.file().getParent(), refused));
    }
  }
}
