package dev.filmward.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that goes on only when a test says so. */
public final class MovedClock extends Clock {
  private volatile Instant now;

  public MovedClock(Instant now) {
    this.now = now;
  }

  public void pass(Duration time) {
    now = now.plus(time);
  }

  public void moveTo(Instant moment) {
    now = moment;
  }

  @Override
  public Instant instant() {
    return now;
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException("this clock has one zone");
  }
}
