package dev.filmward.telling;

import dev.filmward.alarm.Priority;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * After how long an alarm that nobody has taken is told to others as well, by priority, counted
 * from when the server raised it. The times are common practice, no source.
 *
 * @param after priorities without a time are not escalated
 * @param again how long after it was escalated it is again; empty for once only
 */
public record Escalation(Map<Priority, Duration> after, Optional<Duration> again) {
  private static final Duration SHORTEST = Duration.ofMinutes(1);
  private static final Duration LONGEST = Duration.ofDays(7);

  public static final Escalation USUAL =
      new Escalation(
          Map.of(Priority.HIGH, Duration.ofMinutes(10), Priority.MEDIUM, Duration.ofMinutes(30)),
          Optional.of(Duration.ofHours(1)));

  public Escalation {
    after.values().forEach(Escalation::check);
    again.ifPresent(Escalation::check);
    Map<Priority, Duration> copy = new EnumMap<>(Priority.class);
    copy.putAll(after);
    after = Map.copyOf(copy);
  }

  private static void check(Duration time) {
    if (time.compareTo(SHORTEST) < 0 || time.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("times of escalation are 1 minute to 7 days");
    }
  }

  /** Whether an alarm that nobody has taken is to be escalated now. */
  public boolean isDue(Raised raised, Priority priority, Instant now) {
    Optional<Duration> time = Optional.ofNullable(after.get(priority));
    return raised
        .escalatedAt()
        .map(last -> time.isPresent() && again.isPresent() && !now.isBefore(last.plus(again.get())))
        .orElseGet(() -> time.isPresent() && !now.isBefore(raised.at().plus(time.get())));
  }

  /**
   * When the server raised an alarm, and when it last escalated it.
   *
   * @param at the server's clock, not the time of the sample
   */
  public record Raised(long alarmId, Instant at, Optional<Instant> escalatedAt) {}
}
