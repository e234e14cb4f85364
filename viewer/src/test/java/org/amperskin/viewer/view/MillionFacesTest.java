package org.amperskin.viewer.view;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.amperskin.viewer.SampleSource;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/**
 * A million faces come up soon and the window stays awake meanwhile.
 *
 * <p>Processor time is asserted tightly, since it is ours; the time on the clock also holds what
 * other programs on the machine take, so its bounds are wide, and those for the window's sleep are
 * measured against the same window with nothing in it.
 */
@ExtendWith(ApplicationExtension.class)
class MillionFacesTest {
  private static final double SHOWN_WITHIN_CPU_S = 5;
  private static final double SHOWN_WITHIN_CLOCK_S = 30;
  private static final double UI_WORK_AT_MOST_S = 0.15;
  private static final double SLEEP_AT_MOST_S = 0.5;

  private ViewerModel model;
  private ViewerWindow window;

  @Start
  void start(Stage stage) {
    model = new ViewerModel(new SampleSource(), Platform::runLater);
    window = new ViewerWindow(model, Drawing.BEST, 1280, 800, null);
    window.showOn(stage);
  }

  @Test
  void millionFacesShowSoonAndTheWindowStaysAwake() throws Exception {
    WaitForAsyncUtils.waitFor(
        60, TimeUnit.SECONDS, () -> WaitForAsyncUtils.waitForAsyncFx(60_000, window::speedKnown));
    Heartbeat empty = new Heartbeat();
    for (int i = 0; i < 20; i++) {
      // a change of theme lays out and paints the whole window anew
      WaitForAsyncUtils.waitForAsyncFx(20_000, () -> model.dark().set(!model.dark().get()));
      WaitForAsyncUtils.sleep(50, TimeUnit.MILLISECONDS);
    }
    empty.end();
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    Heartbeat loading = new Heartbeat();
    long clock = System.nanoTime();
    long cpu = system.getProcessCpuTime();
    Platform.runLater(() -> model.open(Path.of("million")));
    WaitForAsyncUtils.waitFor(
        60, TimeUnit.SECONDS, () -> model.phase().get() == Phase.SHOWN && window.drawn().get());
    double shownS = (System.nanoTime() - clock) / 1e9;
    double cpuS = (system.getProcessCpuTime() - cpu) / 1e9;
    WaitForAsyncUtils.sleep(1, TimeUnit.SECONDS);
    loading.end();
    System.out.printf(
        "a million faces: shown after %.2f s (processor %.2f s); longest sleep of the window %.3f s"
            + " (empty: %.3f s), longest work of its thread %.3f s, %d beats%n",
        shownS, cpuS, loading.sleepS, empty.sleepS, loading.workS, loading.beats);
    assertThat(cpuS).as("processor time until shown (s)").isLessThan(SHOWN_WITHIN_CPU_S);
    assertThat(shownS).as("time until shown (s)").isLessThan(SHOWN_WITHIN_CLOCK_S);
    assertThat(loading.beats).isGreaterThan(10);
    assertThat(loading.workS).as("work in one go (s)").isLessThan(UI_WORK_AT_MOST_S);
    assertThat(loading.sleepS)
        .as("sleep of the window (s)")
        .isLessThan(Math.max(SLEEP_AT_MOST_S, 4 * empty.sleepS));
  }

  /** Asks the window's thread for a sign of life all the time, and keeps the longest wait. */
  private static final class Heartbeat extends Thread {
    private volatile boolean on = true;
    private double sleepS;
    private double workS;
    private int beats;

    Heartbeat() {
      super("heartbeat");
      start();
    }

    @Override
    public void run() {
      long workBefore = work();
      while (on) {
        long asked = System.nanoTime();
        long workNow = work();
        sleepS = Math.max(sleepS, (System.nanoTime() - asked) / 1e9);
        workS = Math.max(workS, (workNow - workBefore) / 1e9);
        workBefore = workNow;
        beats++;
        WaitForAsyncUtils.sleep(5, TimeUnit.MILLISECONDS);
      }
    }

    /** Processor time that the window's thread has used (ns). */
    private static long work() {
      return WaitForAsyncUtils.waitForAsyncFx(
          60_000, () -> ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime());
    }

    void end() throws InterruptedException {
      on = false;
      join();
    }
  }
}
