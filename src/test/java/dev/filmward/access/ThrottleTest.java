package dev.filmward.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ThrottleTest {
  private final MovedClock clock = new MovedClock(Instant.parse("2026-11-20T12:00:00Z"));
  private final Throttle throttle =
      new Throttle(clock, new Throttle.Rule(3, Duration.ofMinutes(1)));

  @Test
  void afterThreeFailuresEachWaitIsTwiceTheOneBeforeUpToTheLongest() {
    for (int free = 0; free < 3; free++) {
      assertThat(throttle.enter("Kim")).isZero();
    }
    for (int seconds : new int[] {0, 1, 2, 4, 8, 16, 32, 60, 60, 60}) {
      assertThat(waitOf("Kim")).isEqualTo(Duration.ofSeconds(seconds));
    }
  }

  /** Waits as long as it must, then fails again. */
  private Duration waitOf(String key) {
    Duration wait = throttle.enter(key);
    if (!wait.isZero()) {
      clock.pass(wait);
      assertThat(throttle.enter(key)).isZero();
    }
    return wait;
  }

  @Test
  void aTryThatComesTooEarlyDoesNotMakeTheWaitLonger() {
    for (int i = 0; i < 4; i++) {
      throttle.enter("Kim");
    }
    assertThat(throttle.enter("Kim")).isEqualTo(Duration.ofSeconds(1));
    assertThat(throttle.enter("Kim")).isEqualTo(Duration.ofSeconds(1));
    assertThat(throttle.inARow("Kim")).isEqualTo(4);
  }

  /** OWASP ASVS 4.0, 2.2.1: no more than 100 failures an hour for one account. */
  @Test
  void inAnHourFewerThanAHundredTriesAreLookedAt() {
    Instant end = clock.instant().plus(Duration.ofHours(1));
    int lookedAt = 0;
    while (clock.instant().isBefore(end)) {
      if (throttle.enter("Kim").isZero()) {
        lookedAt++;
      }
      clock.pass(Duration.ofSeconds(1));
    }
    assertThat(lookedAt).isBetween(60, 99);
  }

  @Test
  void othersASuccessAndAQuietHourAreFree() {
    for (int i = 0; i < 5; i++) {
      throttle.enter("Kim");
      throttle.enter("Lee");
    }
    assertThat(throttle.enter("Jo")).isZero();
    throttle.forget("Kim");
    assertThat(throttle.enter("Kim")).isZero();
    assertThat(throttle.enter("Lee")).isPositive();
    clock.pass(Duration.ofMinutes(61));
    assertThat(throttle.enter("Lee")).isZero();
    assertThat(throttle.inARow("Lee")).isEqualTo(1);
  }
}
