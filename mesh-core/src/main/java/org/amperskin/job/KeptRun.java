package org.amperskin.job;

import java.time.Duration;
import java.time.Instant;
import java.util.OptionalDouble;
import org.amperskin.plating.StepRun;

/**
 * How a step stood when the program that counted it was last seen.
 *
 * @param elapsedS time since its start, pauses left out (s)
 * @param passedAh charge that had passed (A.h)
 * @param readA what the meter was read to show (A), if it was
 * @param wholeAh charge of the whole step as it was planned then (A.h), if it takes current
 * @param going whether it was counting
 * @param seen when that was
 */
public record KeptRun(
    double elapsedS,
    double passedAh,
    OptionalDouble readA,
    OptionalDouble wholeAh,
    boolean going,
    Instant seen) {
  private static final double OTHER = 0.005;

  /** As it stands now. */
  public static KeptRun of(StepRun run, boolean going, Instant now) {
    return new KeptRun(
        run.elapsedS(), run.passedAh(), run.readA(), run.step().chargeAh(), going, now);
  }

  /** Time since (s), not below 0 if a clock was set back. */
  public double gapS(Instant now) {
    return Math.max(0, Duration.between(seen, now).toMillis() / 1000.0);
  }

  /**
   * The run as it was seen: the current was off since.
   *
   * @param fresh the step at its start; a current read on it holds from now on
   */
  public StepRun offSince(StepRun fresh) {
    return read(fresh, seen(fresh));
  }

  /** The run if the current was on all the time since. */
  public StepRun onSince(StepRun fresh, Instant now) {
    return read(fresh, seen(fresh).after(gapS(now)));
  }

  /** Whether the step is planned otherwise now: its charge is not what it was. */
  public boolean planChanged(StepRun fresh) {
    double now = fresh.step().chargeAh().orElse(0);
    return Math.abs(wholeAh.orElse(now) - now) > OTHER * now;
  }

  private StepRun seen(StepRun fresh) {
    return fresh.standing(elapsedS, passedAh, readA);
  }

  private static StepRun read(StepRun fresh, StepRun now) {
    return fresh.readA().isPresent() ? now.reading(fresh.readA().getAsDouble()) : now;
  }
}
