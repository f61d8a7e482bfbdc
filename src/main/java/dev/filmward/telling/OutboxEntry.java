package dev.filmward.telling;

import dev.filmward.alarm.Priority;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A message on its way.
 *
 * @param id 0 before it is kept
 * @param ruleId by which rule somebody is told
 * @param topic what it tells of
 */
public record OutboxEntry(
    long id, long ruleId, Topic topic, Message message, Due due, Progress progress) {
  /** The happening of a message in place of several that were held back. */
  public static final String SUMMARY = "summary";

  /**
   * What a message tells of.
   *
   * @param alarmId empty for a summary
   * @param event the word of a happening, or {@value #SUMMARY}
   * @param about which alarm, whatever its number: the same layers deviating in the same way
   */
  public record Topic(Optional<Long> alarmId, String event, String about, Priority priority) {}

  /**
   * When it goes.
   *
   * @param first when it was to go at first
   * @param next when it is tried next
   */
  public record Due(Instant made, Instant first, Instant next, Hold hold) {}

  /** Whether it waits for quiet hours to end or for the hour to pass. */
  public enum Hold {
    NOT_HELD,
    HELD
  }

  /**
   * What became of it.
   *
   * @param lastError in words; empty where nothing went wrong
   * @param sentTo the address that took it; empty before that
   */
  public record Progress(
      State state, int attempts, String lastError, Optional<Instant> triedAt, String sentTo) {
    public static final Progress WAITING = new Progress(State.WAITING, 0, "", Optional.empty(), "");
  }

  /** Where a message stands. */
  public enum State {
    WAITING,
    SENT,
    GIVEN_UP,
    SUMMED_UP,
    WITHDRAWN;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static State fromWord(String word) {
      return Arrays.stream(values())
          .filter(each -> each.word().equals(word))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no state \"" + word + "\""));
    }
  }

  public boolean isHeld() {
    return due.hold == Hold.HELD;
  }

  /** When to try again after another failure; empty where it is given up. */
  public Optional<Instant> tryAgain(Instant now) {
    return Patience.next(due.first, progress.attempts + 1, now);
  }
}
