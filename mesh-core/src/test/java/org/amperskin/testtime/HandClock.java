package org.amperskin.testtime;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that is moved by hand. */
public final class HandClock extends Clock {
  private Instant now = Instant.EPOCH;

  /** Moves it on. */
  public void forward(Duration by) {
    now = now.plus(by);
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException("a clock moved by hand has no other zone");
  }

  @Override
  public Instant instant() {
    return now;
  }
}
