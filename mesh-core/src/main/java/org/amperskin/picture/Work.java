package org.amperskin.picture;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;

/** Runs numbered pieces of work on a few threads and waits for all of them. */
final class Work {
  private Work() {}

  static void split(int pieces, int threads, IntConsumer piece) {
    if (threads == 1 || pieces == 1) {
      for (int i = 0; i < pieces; i++) {
        piece.accept(i);
      }
      return;
    }
    AtomicInteger next = new AtomicInteger();
    AtomicReference<Throwable> fault = new AtomicReference<>();
    Runnable loop =
        () -> {
          try {
            for (int i = next.getAndIncrement(); i < pieces; i = next.getAndIncrement()) {
              piece.accept(i);
            }
          } catch (RuntimeException | Error e) {
            fault.compareAndSet(null, e);
          }
        };
    Thread[] helpers = new Thread[Math.min(threads, pieces) - 1];
    for (int t = 0; t < helpers.length; t++) {
      helpers[t] = new Thread(loop, "picture-" + t);
      helpers[t].setDaemon(true);
      helpers[t].start();
    }
    loop.run();
    boolean interrupted = false;
    for (Thread helper : helpers) {
      while (helper.isAlive()) {
        try {
          helper.join();
        } catch (InterruptedException e) {
          interrupted = true;
        }
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    Throwable thrown = fault.get();
    if (thrown instanceof Error e) {
      throw e;
    }
    if (thrown != null) {
      throw (RuntimeException) thrown;
    }
  }
}
