package dev.filmward.telling;

import dev.filmward.alarm.Priority;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * When a person is left alone, and how much is enough.
 *
 * @param night what the quiet hours hold back
 * @param mostAnHour messages within any hour; what is more waits and becomes one summary. 0: no
 *     bound
 * @param sameAgainAfter the same of the same alarm is not told again within this
 */
public record QuietRules(
    Optional<QuietHours> hours, Night night, int mostAnHour, Duration sameAgainAfter) {
  private static final Duration HOUR = Duration.ofHours(1);
  private static final Duration LONGEST = Duration.ofDays(7);
  private static final int MOST = 1000;

  public static final QuietRules NONE =
      new QuietRules(Optional.empty(), Night.HIGH_GOES_THROUGH, 0, Duration.ZERO);

  /** What quiet hours hold back. */
  public enum Night {
    EVERYTHING_WAITS,
    HIGH_GOES_THROUGH
  }

  public QuietRules {
    if (mostAnHour < 0 || mostAnHour > MOST) {
      throw new IllegalArgumentException("messages an hour are 1 to 1000, or 0 for no bound");
    }
    if (sameAgainAfter.isNegative() || sameAgainAfter.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("the same again after 0 minutes to 7 days");
    }
  }

  /** What this person was told within the last hour, and what is being held back. */
  public record Lately(int messages, Optional<Instant> oldest, Optional<Instant> heldUntil) {
    public static final Lately NOTHING = new Lately(0, Optional.empty(), Optional.empty());
  }

  /** Until when a message is held back; empty where it may go at once. */
  public Optional<Instant> heldUntil(Instant now, ZoneId zone, Priority priority, Lately lately) {
    boolean passes = priority == Priority.HIGH && night == Night.HIGH_GOES_THROUGH;
    Optional<Instant> quiet =
        passes ? Optional.empty() : hours.flatMap(each -> each.endAfter(now, zone));
    if (quiet.isPresent()) {
      return quiet;
    }
    if (mostAnHour == 0 || lately.messages() < mostAnHour) {
      return Optional.empty();
    }
    return lately
        .heldUntil()
        .filter(until -> until.isAfter(now) && !until.isAfter(now.plus(HOUR)))
        .or(() -> Optional.of(lately.oldest().orElse(now).plus(HOUR)));
  }
}
