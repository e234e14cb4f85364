package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import org.amperskin.plating.Schedule;
import org.junit.jupiter.api.Test;

/** The schedule as people read it. */
class ScheduleTextTest {
  private static final Schedule TWO =
      new Schedule(
          List.of(
              new Schedule.Entry(
                  1, "resist with a name that is longer than its column", 0, 900, 86_400),
              new Schedule.Entry(2, "oil", 87_300, 20, 0)),
          List.of("etch"));

  @Test
  void timesOfDayGoPastMidnight() {
    String text = ScheduleText.of(TWO, OptionalInt.of(23 * 60 + 50));
    assertThat(text).contains("23:50", "day 3 00:05", "24 h", "1 min", "24 h in step 1", "etch");
    assertThat(text.lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(80));
  }

  @Test
  void withoutAClockItCountsFromTheStart() {
    assertThat(ScheduleText.of(TWO, OptionalInt.empty()))
        .contains("after", "0 min", "24 h 15 min")
        .doesNotContain("day");
    assertThat(ScheduleText.of(new Schedule(List.of(), List.of()), OptionalInt.empty())).isEmpty();
  }
}
