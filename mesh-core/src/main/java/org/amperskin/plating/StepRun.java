package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Quantity;

/**
 * A step while it is done: what to set now, what has passed, what is left.
 *
 * <p>Charge is counted from the current that was set, or from the one that was read on the meter
 * since it was told; the step is done when its charge has passed, whatever the clock says. Work
 * without current counts hands, then the wait. Guaranteed: charge passed and charge left add to the
 * step's. Not guaranteed: that the supply gives what it shows; the ampere-hour meter goes before
 * this. Immutable.
 */
public final class StepRun {
  private final StepEstimate step;
  private final double elapsedS;
  private final double passedAh;
  private final OptionalDouble readA;

  private StepRun(StepEstimate step, double elapsedS, double passedAh, OptionalDouble readA) {
    this.step = step;
    this.elapsedS = elapsedS;
    this.passedAh = passedAh;
    this.readA = readA;
  }

  /** At its start; empty for a step without a figure or a time. */
  public static Optional<StepRun> of(StepEstimate step) {
    boolean electric = step.chargeAh().isPresent() && step.currentA().isPresent();
    boolean timed = step.handsS().isPresent() || step.waitS().isPresent();
    return step.refused() || !electric && !timed
        ? Optional.empty()
        : Optional.of(new StepRun(step, 0, 0, OptionalDouble.empty()));
  }

  /** The step. */
  public StepEstimate step() {
    return step;
  }

  /** Whether current flows. */
  public boolean electric() {
    return step.currentA().isPresent();
  }

  /** Time since the start (s), pauses left out. */
  public double elapsedS() {
    return elapsedS;
  }

  /** Charge that has passed (A.h), 0 without current. */
  public double passedAh() {
    return passedAh;
  }

  /** Charge that is left (A.h), 0 without current. */
  public double leftAh() {
    return Math.max(0, step.chargeAh().orElse(0) - passedAh);
  }

  /** Charge that has passed beyond the step's (A.h). */
  public double overAh() {
    return Math.max(0, passedAh - step.chargeAh().orElse(Double.POSITIVE_INFINITY));
  }

  /** Current to set now (A), the mean of pulses; empty without current. */
  public OptionalDouble setA() {
    return electric() && !done() ? OptionalDouble.of(plannedA(elapsedS)) : OptionalDouble.empty();
  }

  /** What the meter was read to show since it was last set (A), if it was. */
  public OptionalDouble readA() {
    return readA;
  }

  /** Time left (s), at the current read or else set. */
  public double leftS() {
    if (!electric()) {
      return Math.max(0, wholeS() - elapsedS);
    }
    double left = 3600 * leftAh();
    double at = elapsedS;
    for (RampPoint change : changes(elapsedS)) {
      double passes = flowsA(at) * (change.atS() - at);
      if (passes >= left) {
        return at + left / flowsA(at) - elapsedS;
      }
      left -= passes;
      at = change.atS();
    }
    return at + left / flowsA(at) - elapsedS;
  }

  /** The next change of the current to set, if there is one before the end. */
  public Optional<RampPoint> next() {
    return done() ? Optional.empty() : changes(elapsedS).stream().findFirst();
  }

  /** Whether its charge has passed, or its time. */
  public boolean done() {
    return electric() ? leftAh() <= 1e-12 * step.chargeAh().orElse(1) : elapsedS >= wholeS();
  }

  /** How far it is (0 to 1). */
  public double share() {
    double whole = electric() ? step.chargeAh().orElse(0) : wholeS();
    double passed = electric() ? passedAh : elapsedS;
    return whole == 0 ? 1 : Math.min(1, passed / whole);
  }

  /** Whether hands are busy now. */
  public boolean handsBusy() {
    return !done()
        && (electric() ? step.contactAreaMm2().isPresent() : elapsedS < step.handsS().orElse(0));
  }

  /** Round of the swab, from 1, and of how many; empty without a swab. */
  public Optional<int[]> pass() {
    if (step.passes().isEmpty()) {
      return Optional.empty();
    }
    int all = (int) Math.max(1, Math.ceil(step.passes().getAsDouble()));
    return Optional.of(new int[] {Math.min(all, (int) (share() * all) + 1), all});
  }

  /** What to watch for, most pressing first. */
  public List<String> watch() {
    List<String> watch = new ArrayList<>(step.warnings());
    step.voltageWindowV()
        .ifPresent(
            w ->
                watch.add(
                    "a voltage above "
                        + Quantity.plain(w.high(), 2)
                        + " V: look for a loose clip, "
                        + (step.contactAreaMm2().isPresent()
                            ? "a dry wrap"
                            : step.how() == How.ETCH
                                ? "a part that has passivated"
                                : "an anode that is spent")));
    step.notes().forEach(n -> watch.add(n.text()));
    return List.copyOf(watch);
  }

  /** Some time later (s). */
  public StepRun after(double seconds) {
    if (!(seconds >= 0)) {
      throw new IllegalArgumentException(seconds + " s later is earlier");
    }
    if (!electric()) {
      return new StepRun(step, elapsedS + seconds, 0, readA);
    }
    double end = elapsedS + seconds;
    double at = elapsedS;
    double coulombs = 0;
    OptionalDouble read = readA;
    for (RampPoint change : changes(elapsedS)) {
      if (change.atS() > end) {
        break;
      }
      coulombs += read.orElse(plannedA(at)) * (change.atS() - at);
      at = change.atS();
      read = OptionalDouble.empty(); // what was read belonged to the setting before
    }
    coulombs += read.orElse(plannedA(at)) * (end - at);
    return new StepRun(step, end, passedAh + coulombs / 3600, read);
  }

  /** The same with a current read on the meter (A); it holds until the next change of setting. */
  public StepRun reading(double amperes) {
    Faraday.positive("current read", amperes, "A");
    return new StepRun(step, elapsedS, passedAh, OptionalDouble.of(amperes));
  }

  /**
   * The same at another moment, as it was kept.
   *
   * @param elapsedS time since its start, pauses left out (s)
   * @param passedAh charge that had passed (A.h)
   * @param readA what the meter was read to show (A), if it was
   */
  public StepRun standing(double elapsedS, double passedAh, OptionalDouble readA) {
    if (!(elapsedS >= 0) || !(passedAh >= 0)) {
      throw new IllegalArgumentException(
          elapsedS + " s and " + passedAh + " A.h: a run has gone on for 0 s and 0 A.h or more");
    }
    return new StepRun(step, elapsedS, electric() ? passedAh : 0, readA);
  }

  /** How often a current is that to set now, at least 1 either way; 1 where none is to set. */
  public double timesOff(double amperes) {
    double times = setA().isPresent() ? amperes / setA().getAsDouble() : 1;
    return Math.max(times, 1 / times);
  }

  private double wholeS() {
    return step.handsS().orElse(0) + step.waitS().orElse(0);
  }

  private double flowsA(double atS) {
    return readA.isPresent() && atS <= elapsedS ? readA.getAsDouble() : plannedA(atS);
  }

  private double plannedA(double atS) {
    double now = step.currentA().getAsDouble();
    for (RampPoint point : step.ramp()) {
      if (point.atS() <= atS) {
        now = point.currentA();
      }
    }
    return now;
  }

  private List<RampPoint> changes(double afterS) {
    return step.ramp().stream().filter(p -> p.atS() > afterS).toList();
  }
}
