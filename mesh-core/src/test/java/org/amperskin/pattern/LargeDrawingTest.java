package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.junit.jupiter.api.Test;

/** Many elements: a grid of short strokes with round ends, each an element of its own. */
class LargeDrawingTest {
  private static final double MOST_SECONDS = 30;

  @Test
  void hundredThousandStrokesAreReadInSeconds() {
    // 400 x 250 strokes of 0.5 mm, 0.2 mm wide, 1 mm apart, on a white ground as editors put it
    StringBuilder svg = new StringBuilder();
    svg.append(
        "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='250mm' viewBox='0 0 400 250'>"
            + "<style>.s{fill:none;stroke:#111;stroke-width:.2;stroke-linecap:round}</style>"
            + "<rect width='400' height='250' fill='#fff'/>\n");
    for (int k = 0; k < 100_000; k++) {
      svg.append("<path class='s' d='M%d.3 %d.5h.4'/>\n".formatted(k % 400, k / 400));
    }
    svg.append("</svg>");
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadCpuTime();
    Artwork art = Drawings.read(svg.toString());
    double seconds = (threads.getCurrentThreadCpuTime() - before) / 1e9;
    double each = 0.4 * 0.2 + Math.PI * 0.01;
    assertThat(art.ringCount()).isEqualTo(100_000);
    assertThat(art.opaqueAreaMm2()).isCloseTo(100_000 * each, within(1e-4 * 100_000 * each));
    // the thread's own time, so that a busy machine does not count
    assertThat(seconds).isLessThan(MOST_SECONDS);
  }
}
