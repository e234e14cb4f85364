package org.amperskin.floorfault.units;

import java.time.Instant;
import java.util.Random;
import java.util.concurrent.ThreadLocalRandom;

/** Gives another answer each time. */
public final class Unsteady {
  private static long last;

  private Unsteady() {}

  /** Reads three clocks. */
  public static long clock() {
    last = System.nanoTime() + System.currentTimeMillis() + Instant.now().getNano();
    return last;
  }

  /** Rolls three dice; the seeded one is no fault. */
  public static double dice() {
    return new Random(7).nextDouble()
        + new Random().nextDouble()
        + Math.random()
        + ThreadLocalRandom.current().hashCode();
  }
}
