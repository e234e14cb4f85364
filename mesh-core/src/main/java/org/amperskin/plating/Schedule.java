package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;

/**
 * When the steps of a plan happen, and how much of that time hands are busy.
 *
 * <p>Definition: one part, steps one after another, each starting when the last has ended; within a
 * step hands are busy first, then it waits. Where a step does not tell the two apart, a tank plates
 * by itself and a brush keeps the hand. Guaranteed: the elapsed time is the earliest end of this
 * order. Not guaranteed: nights, meals and drying weather.
 *
 * @param entries the steps that have a time, in working order
 * @param untimed names of steps without one; they add nothing
 */
public record Schedule(List<Entry> entries, List<String> untimed) {
  /** A wait worth doing something else in (s). */
  private static final double LONG_WAIT_S = 1800;

  /**
   * One step.
   *
   * @param number its place in the plan, from 1
   * @param name its name
   * @param startS when it starts (s from the first)
   * @param handsS time hands are busy (s)
   * @param waitS time that passes by itself after that (s)
   */
  public record Entry(int number, String name, double startS, double handsS, double waitS) {
    /** When it ends (s from the first start). */
    public double endS() {
      return startS + handsS + waitS;
    }
  }

  /** Copies the lists. */
  public Schedule {
    entries = List.copyOf(entries);
    untimed = List.copyOf(untimed);
  }

  /** Of steps in working order. */
  public static Schedule of(List<StepEstimate> steps) {
    List<Entry> entries = new ArrayList<>();
    List<String> untimed = new ArrayList<>();
    double at = 0;
    for (int i = 0; i < steps.size(); i++) {
      StepEstimate s = steps.get(i);
      boolean told = s.handsS().isPresent() || s.waitS().isPresent();
      if (s.refused() || !told && s.timeS().isEmpty()) {
        untimed.add(s.name());
        continue;
      }
      boolean alone = s.how() == How.TANK || s.how() == How.ETCH;
      double hands = told ? s.handsS().orElse(0) : alone ? 0 : s.timeS().getAsDouble();
      double wait = told ? s.waitS().orElse(0) : alone ? s.timeS().getAsDouble() : 0;
      entries.add(new Entry(i + 1, s.name(), at, hands, wait));
      at += hands + wait;
    }
    return new Schedule(entries, untimed);
  }

  /** Time hands are busy (s). */
  public double handsS() {
    return entries.stream().mapToDouble(Entry::handsS).sum();
  }

  /** From the first start to the last end (s). */
  public double elapsedS() {
    return entries.isEmpty() ? 0 : entries.get(entries.size() - 1).endS();
  }

  /** The waits long enough to work on something else, another part among it. */
  public List<Entry> freeWhile() {
    return entries.stream().filter(e -> e.waitS() >= LONG_WAIT_S).toList();
  }
}
