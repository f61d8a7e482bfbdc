package dev.filmward.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Makes whoever fails again and again wait: after some failures for a second, then twice as long
 * each time, up to a longest wait, so that nobody is locked out for good. A success, or a quiet
 * time, begins anew. The delays are common practice; OWASP ASVS 4.0, 2.2.1, allows at most 100
 * failures an hour for one account. Thread-safe.
 */
final class Throttle {
  private static final int MOST_KEPT = 10_000;
  private static final Duration QUIET = Duration.ofHours(1);
  private static final int LONGEST_SHIFT = 20;

  private final Clock clock;
  private final Rule rule;
  private final Map<String, Failures> failures = new LinkedHashMap<>(16, 0.75f, true);

  Throttle(Clock clock, Rule rule) {
    this.clock = clock;
    this.rule = rule;
  }

  /**
   * @param free failures that cost no wait
   */
  record Rule(int free, Duration longestWait) {}

  private record Failures(int inARow, Instant last) {}

  /**
   * Counts a try as a failure until it is known better, unless it comes too early.
   *
   * @return how long to wait before a try is looked at; zero where this one is
   */
  synchronized Duration enter(String key) {
    Instant now = clock.instant();
    Failures before = current(key, now);
    Duration left = Duration.between(now, before.last().plus(delay(before.inARow())));
    if (!left.isNegative() && !left.isZero()) {
      return left;
    }
    failures.put(key, new Failures(before.inARow() + 1, now));
    dropOldest();
    return Duration.ZERO;
  }

  /** Failures in a row, with the one that may be under way. */
  synchronized int inARow(String key) {
    return current(key, clock.instant()).inARow();
  }

  /** The try was none: takes it back. */
  synchronized void takeBack(String key) {
    failures.computeIfPresent(
        key,
        (same, failed) ->
            failed.inARow() > 1 ? new Failures(failed.inARow() - 1, failed.last()) : null);
  }

  /** It succeeded: begins anew. */
  synchronized void forget(String key) {
    failures.remove(key);
  }

  private Failures current(String key, Instant now) {
    Failures before = failures.get(key);
    return before == null || now.isAfter(before.last().plus(QUIET)) ? new Failures(0, now) : before;
  }

  private Duration delay(int inARow) {
    int over = inARow - rule.free();
    if (over <= 0) {
      return Duration.ZERO;
    }
    Duration doubled = Duration.ofSeconds(1L << Math.min(over - 1, LONGEST_SHIFT));
    return doubled.compareTo(rule.longestWait()) < 0 ? doubled : rule.longestWait();
  }

  private void dropOldest() {
    if (failures.size() > MOST_KEPT) {
      Iterator<String> oldest = failures.keySet().iterator();
      oldest.next();
      oldest.remove();
    }
  }
}
