package dev.filmward.alarm;

import dev.filmward.chart.LimitsVersion.Decision;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * A person holds alarms back: shelves them until a stated time, or takes what they watch out of
 * service until somebody puts it back. Immutable.
 *
 * @param id given by the store; 0 before that
 * @param until its end; a shelf has one
 */
public record Hold(
    long id, Kind kind, HoldScope scope, Optional<Instant> until, Decision decision) {
  /** A shift and its handover (common practice, no source). */
  public static final Duration LONGEST_SHELF = Duration.ofHours(12);

  /** How alarms are held back. */
  public enum Kind {
    SHELVED(AlarmState.SHELVED),
    OUT_OF_SERVICE(AlarmState.OUT_OF_SERVICE);

    private final AlarmState state;

    Kind(AlarmState state) {
      this.state = state;
    }

    /** Of the alarms that it holds back. */
    public AlarmState state() {
      return state;
    }

    /** As written in files and addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  public Hold {
    if (decision.reason().isBlank()) {
      throw new IllegalArgumentException("why are alarms held back? Give a reason");
    }
    if (kind == Kind.SHELVED) {
      check(decision.at(), until.orElse(Instant.MAX));
    }
  }

  private static void check(Instant from, Instant until) {
    if (!until.isAfter(from) || until.isAfter(from.plus(LONGEST_SHELF))) {
      throw new IllegalArgumentException(
          "alarms are shelved until a time at most "
              + LONGEST_SHELF.toHours()
              + " hours away; what takes longer is taken out of service");
    }
  }

  public Hold withId(long newId) {
    return new Hold(newId, kind, scope, until, decision);
  }

  /** Whether its time is over. */
  public boolean isOver(Instant now) {
    return until.filter(end -> !end.isAfter(now)).isPresent();
  }
}
