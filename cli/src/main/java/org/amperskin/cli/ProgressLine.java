package org.amperskin.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.amperskin.geom.Progress;

/**
 * Shows progress on standard error, once work has taken over a second, and only where a person
 * looks.
 */
final class ProgressLine implements Progress, AutoCloseable {
  private static final long FIRST_AFTER = 1_000_000_000L;
  private static final long EVERY = 200_000_000L;

  private final PrintWriter err;
  private final boolean shown;
  private final long start = System.nanoTime();
  private long last = start;
  private boolean open;

  ProgressLine(PrintWriter err) {
    this.err = err;
    this.shown = System.console() != null || System.getenv("AMPERSKIN_PROGRESS") != null;
  }

  @Override
  public synchronized void at(String what, double fraction) {
    long now = System.nanoTime();
    if (!shown || now - start < FIRST_AFTER || now - last < EVERY) {
      return;
    }
    last = now;
    open = true;
    String share =
        Double.isNaN(fraction) ? "" : String.format(Locale.ROOT, " %3.0f %%", 100 * fraction);
    err.print("\r" + what + share + "        ");
    err.flush();
  }

  @Override
  public synchronized void close() {
    if (open) {
      err.print("\r" + " ".repeat(40) + "\r");
      err.flush();
      open = false;
    }
  }
}
