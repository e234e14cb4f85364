package org.amperskin.viewer.model;

import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import org.amperskin.job.JobText;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;

/**
 * Loads one file at a time off the user interface; a newer file replaces an older one.
 *
 * <p>Guaranteed: the listener hears only of the newest load, on the given executor, and nothing
 * after its end or {@link #cancel()}. Called on that executor's thread only.
 */
final class PartLoader {
  private static final long TELL_EVERY_NANOS = 30_000_000;

  private final PartSource source;
  private final Executor ui;
  private final Listener listener;
  private Load current;

  interface Listener {
    void progressed(Progress progress);

    /** There is something to see; the work goes on. */
    void shownSooner(LoadedPart part);

    void loaded(LoadedPart part);

    void failed(ProblemException problem);
  }

  PartLoader(PartSource source, Executor ui, Listener listener) {
    this.source = source;
    this.ui = ui;
    this.listener = listener;
  }

  void load(Path file) {
    start(
        new Load(file) {
          @Override
          LoadedPart part() throws ProblemException {
            return source.load(file(), this::tell, this::show);
          }
        });
  }

  void load(JobText text) {
    start(
        new Load(text.file()) {
          @Override
          LoadedPart part() throws ProblemException {
            return source.load(text, this::tell);
          }
        });
  }

  private void start(Load load) {
    cancel();
    current = load;
    load.start();
  }

  void cancel() {
    if (current != null) {
      current.wanted = false;
      current.interrupt();
      current = null;
    }
  }

  private abstract class Load extends Thread {
    private final Path file;
    private volatile boolean wanted = true;
    private long toldAt = System.nanoTime() - TELL_EVERY_NANOS;
    private String toldStage = "";

    Load(Path file) {
      super("load " + file.getFileName());
      this.file = file;
      setDaemon(true);
    }

    @Override
    public void run() {
      try {
        LoadedPart part = part();
        end(() -> listener.loaded(part));
      } catch (CancellationException e) {
        end(
            () ->
                listener.failed(
                    new ProblemException(
                        "Reading stopped before the end.", file.toString(), "Open it again.", e)));
      } catch (ProblemException e) {
        end(() -> listener.failed(e));
      } catch (OutOfMemoryError e) {
        long mb = Runtime.getRuntime().maxMemory() >> 20;
        end(
            () ->
                listener.failed(
                    new ProblemException(
                        "The part needs more memory than the " + mb + " MB this program may use.",
                        file.toString(),
                        "Close other programs, or start with more memory (java -Xmx).",
                        e)));
      } catch (RuntimeException e) {
        end(
            () ->
                listener.failed(
                    new ProblemException(
                        "The program met a fault of its own: " + e,
                        file.toString(),
                        "Please report it with the file; other files can still be opened.",
                        e)));
      }
    }

    abstract LoadedPart part() throws ProblemException;

    Path file() {
      return file;
    }

    void tell(Progress progress) {
      if (!wanted) {
        throw new CancellationException(file + " is no longer wanted");
      }
      long now = System.nanoTime();
      boolean last = progress.done().equals(OptionalDouble.of(1));
      if (now - toldAt >= TELL_EVERY_NANOS || last || !progress.stage().equals(toldStage)) {
        toldAt = now;
        toldStage = progress.stage();
        ui.execute(
            () -> {
              if (current == this) {
                listener.progressed(progress);
              }
            });
      }
    }

    void show(LoadedPart sooner) {
      ui.execute(
          () -> {
            if (current == this) {
              listener.shownSooner(sooner);
            }
          });
    }

    private void end(Runnable told) {
      ui.execute(
          () -> {
            if (current == this) {
              current = null;
              told.run();
            }
          });
    }
  }
}
