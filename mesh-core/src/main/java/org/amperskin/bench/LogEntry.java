package org.amperskin.bench;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * One entry of the bench log.
 *
 * <p>Guaranteed: what is there is positive and finite; a date. Not guaranteed: that it is right; a
 * wrong entry is struck out with a reason, and stays.
 */
public sealed interface LogEntry {
  /** Number, date, remark. */
  Head head();

  /** One word for its kind, as in the database. */
  String kind();

  /** The baths it names. */
  List<String> baths();

  /**
   * What all entries have.
   *
   * @param number in the order of writing; 0 before it is written
   * @param date the day
   * @param note a remark
   * @param struck why it does not count, if it was struck out
   */
  record Head(long number, LocalDate date, Optional<String> note, Optional<String> struck) {
    /** The head of an entry to be written. */
    public static Head of(LocalDate date, Optional<String> note) {
      return new Head(0, date, note, Optional.empty());
    }
  }

  /**
   * A job that was run.
   *
   * @param head number, date, remark
   * @param file the job file
   * @param steps the steps done, with the charge the meter showed
   */
  record Job(Head head, String file, List<Step> steps) implements LogEntry {
    public Job {
      steps = List.copyOf(steps);
    }

    @Override
    public String kind() {
      return "job";
    }

    @Override
    public List<String> baths() {
      return steps.stream().flatMap(s -> s.bath().stream()).toList();
    }
  }

  /**
   * A step of a job that was run.
   *
   * @param name the step
   * @param chargeAh charge passed (A.h)
   * @param bath the bath it was done in, if the log keeps it
   */
  record Step(String name, double chargeAh, Optional<String> bath) {
    public Step {
      positive("charge of step " + name, chargeAh, "A.h");
    }
  }

  /**
   * A part or coupon weighed before and after plating.
   *
   * @param head number, date, remark
   * @param what its name
   * @param beforeG mass before (g)
   * @param afterG mass after (g)
   * @param balanceG the balance's smallest step (g)
   * @param chargeAh charge passed in between (A.h)
   * @param bath the bath
   * @param job number of the job whose charge this is, so that it is not counted twice
   */
  record Weighing(
      Head head,
      String what,
      double beforeG,
      double afterG,
      double balanceG,
      OptionalDouble chargeAh,
      Optional<String> bath,
      OptionalLong job)
      implements LogEntry {
    public Weighing {
      positive("mass before", beforeG, "g");
      positive("mass after", afterG, "g");
      positive("step of the balance", balanceG, "g");
      chargeAh.ifPresent(q -> positive("charge", q, "A.h"));
    }

    /** What it gained (g); negative if it lost. */
    public double gainG() {
      // in decimals, as the balance showed them
      return BigDecimal.valueOf(afterG).subtract(BigDecimal.valueOf(beforeG)).doubleValue();
    }

    @Override
    public String kind() {
      return "weighing";
    }

    @Override
    public List<String> baths() {
      return bath.stream().toList();
    }
  }

  /**
   * A coupon plated to the colour wanted.
   *
   * @param head number, date, remark
   * @param what its name
   * @param coverageAhPerDm2 charge for the colour (A.h/dm2)
   * @param areaDm2 its area (dm2)
   * @param chargeAh charge passed (A.h)
   * @param colour what it looks like
   * @param photo path of a photo
   * @param bath the bath or brush solution
   */
  record Coupon(
      Head head,
      String what,
      double coverageAhPerDm2,
      OptionalDouble areaDm2,
      OptionalDouble chargeAh,
      Optional<String> colour,
      Optional<String> photo,
      Optional<String> bath)
      implements LogEntry {
    public Coupon {
      positive("coverage", coverageAhPerDm2, "A.h/dm2");
      areaDm2.ifPresent(a -> positive("area", a, "dm2"));
      chargeAh.ifPresent(q -> positive("charge", q, "A.h"));
    }

    @Override
    public String kind() {
      return "coupon";
    }

    @Override
    public List<String> baths() {
      return bath.stream().toList();
    }
  }

  /**
   * What was found in a bath or put into it. A volume or analysis holds after the additions of the
   * same entry.
   *
   * @param head number, date, remark
   * @param bath the bath
   * @param volumeL its volume (L)
   * @param metalGPerL its metal by analysis, or as made up (g/L)
   * @param additions what was put in
   * @param doses additives that are used up by charge
   */
  record BathReading(
      Head head,
      String bath,
      OptionalDouble volumeL,
      OptionalDouble metalGPerL,
      List<Addition> additions,
      List<Dose> doses)
      implements LogEntry {
    public BathReading {
      additions = List.copyOf(additions);
      doses = List.copyOf(doses);
      volumeL.ifPresent(v -> positive("volume", v, "L"));
      if (metalGPerL.isPresent() && !(metalGPerL.getAsDouble() >= 0)) {
        throw new IllegalArgumentException(
            "metal (" + metalGPerL.getAsDouble() + " g/L) is below zero");
      }
    }

    @Override
    public String kind() {
      return "bath";
    }

    @Override
    public List<String> baths() {
      return List.of(bath);
    }
  }

  /**
   * Something put into a bath.
   *
   * @param what its name
   * @param amount how much (in the unit)
   * @param unit g or mL
   * @param metalG metal in it (g)
   */
  record Addition(String what, double amount, String unit, double metalG) {
    public Addition {
      positive("addition of " + what, amount, unit);
      if (!unit.equals("g") && !unit.equals("mL")) {
        throw new IllegalArgumentException(
            "addition of " + what + " is told in " + unit + "; g or mL fit");
      }
    }
  }

  /**
   * How fast an additive is used up.
   *
   * @param additive its name
   * @param mlPerAh volume for each unit of charge (mL/A.h)
   */
  record Dose(String additive, double mlPerAh) {
    public Dose {
      positive("dose of " + additive, mlPerAh, "mL/A.h");
    }
  }

  /**
   * Charge passed through a bath beside the jobs and weighings of the log, or what its meter reads.
   *
   * @param head number, date, remark
   * @param bath the bath
   * @param addedAh charge passed (A.h)
   * @param readingAh what the bath's meter reads, all charge so far (A.h)
   */
  record Counter(Head head, String bath, OptionalDouble addedAh, OptionalDouble readingAh)
      implements LogEntry {
    public Counter {
      if (addedAh.isPresent() == readingAh.isPresent()) {
        throw new IllegalArgumentException(
            "a counter entry takes a charge added or a reading, one of them, not "
                + addedAh
                + " and "
                + readingAh);
      }
      addedAh.ifPresent(q -> positive("charge", q, "A.h"));
    }

    @Override
    public String kind() {
      return "counter";
    }

    @Override
    public List<String> baths() {
      return List.of(bath);
    }
  }

  private static void positive(String what, double value, String unit) {
    if (!(value > 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " (" + value + " " + unit + ") is not above zero");
    }
  }
}
