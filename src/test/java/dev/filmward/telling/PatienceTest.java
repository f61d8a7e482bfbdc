package dev.filmward.telling;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The gaps between attempts grow, and after three days it is given up. */
class PatienceTest {
  private static final Instant START = Instant.parse("2026-11-20T12:00:00Z");

  @Test
  void theGapsGrowAndEndAfterThreeDays() {
    List<Duration> gaps = new ArrayList<>();
    Instant now = START;
    for (int attempt = 1; ; attempt++) {
      Optional<Instant> next = Patience.next(START, attempt, now);
      if (next.isEmpty()) {
        break;
      }
      gaps.add(Duration.between(now, next.get()));
      now = next.get();
    }
    assertThat(gaps.subList(0, 7))
        .containsExactly(
            Duration.ofSeconds(10),
            Duration.ofSeconds(30),
            Duration.ofMinutes(2),
            Duration.ofMinutes(10),
            Duration.ofHours(1),
            Duration.ofHours(3),
            Duration.ofHours(3));
    // 1 h 12 min 40 s, then 23 times 3 h fit into 72 h
    assertThat(gaps).hasSize(5 + 23);
    assertThat(now).isEqualTo(START.plus(Duration.ofHours(70).plusMinutes(12).plusSeconds(40)));
  }
}
