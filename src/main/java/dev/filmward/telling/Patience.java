package dev.filmward.telling;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** When to try again; the gaps grow, and after three days it is given up. Common practice. */
public final class Patience {
  private static final List<Duration> GAPS =
      List.of(
          Duration.ofSeconds(10),
          Duration.ofSeconds(30),
          Duration.ofMinutes(2),
          Duration.ofMinutes(10),
          Duration.ofHours(1));
  private static final Duration LATER = Duration.ofHours(3);
  private static final Duration END = Duration.ofDays(3);

  private Patience() {}

  /**
   * When to try a message again that could not be sent.
   *
   * @param firstDue when it was to be sent at first
   * @param attempts so far, 1 or more
   * @return empty where it is given up
   */
  public static Optional<Instant> next(Instant firstDue, int attempts, Instant now) {
    Duration gap = attempts <= GAPS.size() ? GAPS.get(attempts - 1) : LATER;
    Instant next = now.plus(gap);
    return next.isAfter(firstDue.plus(END)) ? Optional.empty() : Optional.of(next);
  }
}
