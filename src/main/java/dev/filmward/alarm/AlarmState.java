package dev.filmward.alarm;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Where an alarm stands between the process and the people. What may follow on what stands in
 * {@link AlarmTransitions}.
 *
 * <p>Source: states of IEC 62682 / ISA-18.2 (from memory), without latching.
 */
public enum AlarmState {
  /** Its excursion is over, or nothing is asked of anybody. */
  NORMAL,
  /** Its excursion goes on and nobody has taken it on: the horn. */
  UNACKNOWLEDGED,
  /** Its excursion goes on and somebody has taken it on. */
  ACKNOWLEDGED,
  /** Its excursion went back by itself before anybody took it on. */
  RETURNED_UNACKNOWLEDGED,
  /** A person put it aside until a stated time. */
  SHELVED,
  /** An engineer took what it watches out of service, with a reason. */
  OUT_OF_SERVICE,
  /** The line is down, starting or changing over. */
  SUPPRESSED;

  /** As written in files and addresses. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The state of that name; {@link IllegalArgumentException} where there is none. */
  public static AlarmState fromWord(String word) {
    return Arrays.stream(values())
        .filter(state -> state.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no alarm state \"" + word + "\""));
  }

  /**
   * What follows.
   *
   * @throws IllegalStateException if that cannot happen in this state
   */
  public AlarmState on(AlarmEvent event) {
    return AlarmTransitions.next(this, event)
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "an alarm that is " + word() + " cannot be " + event.words()));
  }

  /** Whether it waits for somebody to say "seen, mine". */
  public boolean isWaiting() {
    return this == UNACKNOWLEDGED || this == RETURNED_UNACKNOWLEDGED;
  }

  /** Whether it asks something of a person at the line now. */
  public boolean asksForSomebody() {
    return isWaiting() || this == ACKNOWLEDGED;
  }

  /** Whether it is held back from people. */
  public boolean isHeld() {
    return heldBy().isPresent();
  }

  /** What puts an alarm into this state, where it is one of those that hold it back. */
  Optional<AlarmEvent> heldBy() {
    return switch (this) {
      case SHELVED -> Optional.of(AlarmEvent.SHELVE);
      case OUT_OF_SERVICE -> Optional.of(AlarmEvent.TAKE_OUT);
      case SUPPRESSED -> Optional.of(AlarmEvent.SUPPRESS);
      case NORMAL, UNACKNOWLEDGED, ACKNOWLEDGED, RETURNED_UNACKNOWLEDGED -> Optional.empty();
    };
  }
}
