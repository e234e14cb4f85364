package org.amperskin.viewer.model;

import java.time.Clock;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.amperskin.plating.StepRun;

/**
 * A step that is being done, counted by the clock of the wall.
 *
 * <p>Used on the user interface's thread only. It counts as long as it goes, shown or not, and past
 * its end: the tank does too.
 */
public final class RunClock {
  private final int number;
  private final StepRun fresh;
  private final Clock clock;
  private final ReadOnlyObjectWrapper<StepRun> run;
  private final ReadOnlyBooleanWrapper going = new ReadOnlyBooleanWrapper();
  private long last;

  /**
   * A step that has not begun.
   *
   * @param number its place in the job, from 1
   * @param fresh the step at its start
   * @param clock tells the time
   */
  public RunClock(int number, StepRun fresh, Clock clock) {
    this.number = number;
    this.fresh = fresh;
    this.clock = clock;
    this.run = new ReadOnlyObjectWrapper<>(fresh);
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

  /** Starts, pauses, goes on. */
  public void toggle() {
    tick();
    last = clock.millis();
    going.set(!going.get());
  }

  /** Counts up to now. */
  public void tick() {
    if (going.get()) {
      long now = clock.millis();
      run.set(run.get().after(Math.max(0, now - last) / 1000.0));
      last = now;
    }
  }

  /** Counts from now on what the meter shows (A). */
  public void read(double amperes) {
    tick();
    run.set(run.get().reading(amperes));
  }

  /** Back to the start. */
  public void reset() {
    going.set(false);
    run.set(fresh);
  }
}
