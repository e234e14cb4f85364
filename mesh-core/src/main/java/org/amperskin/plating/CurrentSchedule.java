package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.units.Charge;
import org.amperskin.units.Time;

/**
 * A current that goes in steps and then stays.
 *
 * <p>Guaranteed: {@code timeFor} and {@code chargeAt} are inverse to each other; the charge is the
 * integral of the current, so minutes at a lower current are paid for by a longer time.
 *
 * @param points in order of time, the first at 0 s; the last current stays
 */
public record CurrentSchedule(List<RampPoint> points) {
  private static final double[] SOFT_SHARES = {0.25, 0.5, 0.75};

  public CurrentSchedule {
    points = List.copyOf(points);
    if (points.isEmpty() || points.get(0).atS() != 0) {
      throw new IllegalArgumentException("schedule " + points + " does not begin at 0 s");
    }
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i).atS() <= points.get(i - 1).atS()) {
        throw new IllegalArgumentException(
            "schedule goes back in time at " + points.get(i).atS() + " s");
      }
    }
  }

  /** One current from the start. */
  static CurrentSchedule constant(double currentA) {
    return new CurrentSchedule(List.of(new RampPoint(0, currentA)));
  }

  /** A quarter, a half and three quarters of the current for a third of the time each. */
  static CurrentSchedule soft(double currentA, Time during) {
    List<RampPoint> points = new ArrayList<>();
    for (int i = 0; i < SOFT_SHARES.length; i++) {
      points.add(
          new RampPoint(during.seconds() * i / SOFT_SHARES.length, SOFT_SHARES[i] * currentA));
    }
    points.add(new RampPoint(during.seconds(), currentA));
    return new CurrentSchedule(points);
  }

  /** The current that stays. */
  double finalCurrentA() {
    return points.get(points.size() - 1).currentA();
  }

  /** Time until this charge has passed. */
  public Time timeFor(Charge charge) {
    double left = charge.coulombs();
    for (int i = 0; i + 1 < points.size(); i++) {
      RampPoint here = points.get(i);
      double passes = here.currentA() * (points.get(i + 1).atS() - here.atS());
      if (left <= passes) {
        return new Time(here.atS() + left / here.currentA());
      }
      left -= passes;
    }
    return new Time(points.get(points.size() - 1).atS() + left / finalCurrentA());
  }

  /** Charge that has passed by this time. */
  public Charge chargeAt(Time time) {
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      double end = i + 1 < points.size() ? points.get(i + 1).atS() : Double.POSITIVE_INFINITY;
      double span = Math.min(end, time.seconds()) - points.get(i).atS();
      if (span > 0) {
        sum += span * points.get(i).currentA();
      }
    }
    return new Charge(sum);
  }

  /** The points that begin before this time; none for a constant current. */
  List<RampPoint> until(Time end) {
    return points.size() == 1
        ? List.of()
        : points.stream().filter(point -> point.atS() < end.seconds()).toList();
  }
}
