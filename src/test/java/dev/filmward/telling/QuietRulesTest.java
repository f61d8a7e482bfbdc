package dev.filmward.telling;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.alarm.Priority;
import dev.filmward.telling.QuietRules.Lately;
import dev.filmward.telling.QuietRules.Night;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is held back, and until when. */
class QuietRulesTest {
  private static final ZoneId UTC = ZoneOffset.UTC;
  private static final Instant NIGHT = Instant.parse("2026-11-20T23:00:00Z");
  private static final Instant SIX = Instant.parse("2026-11-21T06:00:00Z");
  private static final Optional<QuietHours> HOURS =
      Optional.of(new QuietHours(LocalTime.of(22, 0), LocalTime.of(6, 0)));

  @Test
  void atNightEverythingWaitsButForHighPriorityWhereThatIsChosen() {
    QuietRules choosy = new QuietRules(HOURS, Night.HIGH_GOES_THROUGH, 0, Duration.ZERO);
    QuietRules strict = new QuietRules(HOURS, Night.EVERYTHING_WAITS, 0, Duration.ZERO);
    assertThat(choosy.heldUntil(NIGHT, UTC, Priority.MEDIUM, Lately.NOTHING)).contains(SIX);
    assertThat(choosy.heldUntil(NIGHT, UTC, Priority.HIGH, Lately.NOTHING)).isEmpty();
    assertThat(strict.heldUntil(NIGHT, UTC, Priority.HIGH, Lately.NOTHING)).contains(SIX);
    assertThat(strict.heldUntil(SIX, UTC, Priority.LOW, Lately.NOTHING)).isEmpty();
  }

  @Test
  void whatIsMoreThanEnoughWaitsUntilTheOldestIsAnHourOld() {
    QuietRules three = new QuietRules(Optional.empty(), Night.HIGH_GOES_THROUGH, 3, Duration.ZERO);
    Instant oldest = SIX.minus(Duration.ofMinutes(40));
    assertThat(three.heldUntil(SIX, UTC, Priority.HIGH, lately(2, oldest))).isEmpty();
    assertThat(three.heldUntil(SIX, UTC, Priority.HIGH, lately(3, oldest)))
        .contains(SIX.plus(Duration.ofMinutes(20)));
  }

  @Test
  void whatIsHeldBackLaterGoesIntoTheSameSummary() {
    QuietRules one = new QuietRules(Optional.empty(), Night.HIGH_GOES_THROUGH, 1, Duration.ZERO);
    Instant until = SIX.plus(Duration.ofMinutes(5));
    Lately holding = new Lately(1, Optional.of(SIX), Optional.of(until));
    assertThat(one.heldUntil(SIX, UTC, Priority.LOW, holding)).contains(until);
  }

  private static Lately lately(int messages, Instant oldest) {
    return new Lately(messages, Optional.of(oldest), Optional.empty());
  }
}
