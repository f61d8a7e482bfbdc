package dev.filmward.alarm;

import java.time.Instant;
import java.util.Optional;

/**
 * What a person must deal with: an excursion, and what people did about it. Immutable: each step
 * gives a new value.
 *
 * @param id given by the store; 0 before that
 * @param historical whether it was old news when it came: no horn
 * @param shownAt when it last came before people, by the server's clock; empty while it was only
 *     ever held back
 */
public record Alarm(
    long id,
    Excursion excursion,
    boolean historical,
    Optional<Acknowledgement> acknowledgement,
    Optional<Finding> finding,
    AlarmState state,
    Optional<Instant> shownAt) {

  /**
   * Nobody has seen it yet.
   *
   * @param held the state in which it is held back, where it is
   */
  public static Alarm opened(
      Excursion excursion, Arrival arrival, Optional<AlarmState> held, Instant now) {
    boolean neverAsked = held.isEmpty() && !excursion.raised() && !excursion.isActive();
    AlarmState first = neverAsked ? AlarmState.NORMAL : AlarmState.UNACKNOWLEDGED;
    boolean shown = held.isEmpty() && !neverAsked;
    return new Alarm(
            0,
            excursion,
            arrival == Arrival.HISTORICAL,
            Optional.empty(),
            Optional.empty(),
            held.orElse(first),
            shown ? Optional.of(now) : Optional.empty())
        .moved(excursion, held, now);
  }

  /** Whether an alarm was news when it came. */
  public enum Arrival {
    FRESH,
    /** Its samples came late: no horn. */
    HISTORICAL
  }

  public Subject subject() {
    return excursion.subject();
  }

  /** Over, seen, and explained; or over, and never more than held back. */
  public boolean isClosed() {
    boolean answered = finding.filter(Finding::isComplete).isPresent();
    return state == AlarmState.NORMAL && (answered || shownAt.isEmpty());
  }

  /** Whether a person has done anything about it. */
  public boolean isTouched() {
    return acknowledgement.isPresent() || finding.isPresent();
  }

  /**
   * Notes that a person has seen it and takes it on.
   *
   * @throws AlreadyTakenException if somebody did so before
   * @throws IllegalStateException if it is held back
   */
  public Alarm acknowledge(Acknowledgement seen) {
    if (acknowledgement.isPresent() && !state.isHeld()) {
      throw new AlreadyTakenException(acknowledgement.get());
    }
    return with(Optional.of(seen), finding, state.on(AlarmEvent.ACKNOWLEDGE));
  }

  /** Notes what was found; a later finding takes the place of an earlier one. */
  public Alarm explain(Finding found) {
    return with(acknowledgement, Optional.of(found), state);
  }

  /**
   * Asks for cause and action anew, because what was found does not hold.
   *
   * @throws IllegalStateException if it is open, or never asked anybody for them
   */
  public Alarm reopen() {
    if (!isClosed()) {
      throw new IllegalStateException("this alarm is open already");
    }
    if (finding.isEmpty() || shownAt.isEmpty()) {
      throw new IllegalStateException("this alarm was only held back and asked nothing of anybody");
    }
    return with(acknowledgement, Optional.empty(), state);
  }

  public Alarm withId(long newId) {
    return new Alarm(newId, excursion, historical, acknowledgement, finding, state, shownAt);
  }

  /**
   * The same alarm as it is now: after another sample, or after people said what is held back. Once
   * more with the same changes nothing.
   *
   * @param held the state in which it is held back, where it is
   */
  public Alarm moved(Excursion newExcursion, Optional<AlarmState> held, Instant now) {
    AlarmState next = next(newExcursion, held);
    boolean isNews = state.isHeld() || shownAt.isEmpty();
    boolean horn = isNews && next == AlarmState.UNACKNOWLEDGED;
    return new Alarm(
        id,
        newExcursion,
        historical,
        horn ? Optional.empty() : acknowledgement,
        finding,
        next,
        horn ? Optional.of(now) : shownAt);
  }

  private AlarmState next(Excursion newExcursion, Optional<AlarmState> held) {
    AlarmState moved = state.on(said(newExcursion));
    if (held.isPresent()) {
      return held.flatMap(AlarmState::heldBy).map(moved::on).orElse(moved);
    }
    AlarmEvent free = newExcursion.isActive() ? AlarmEvent.FREE_ACTIVE : AlarmEvent.FREE_QUIET;
    return moved.isHeld() ? moved.on(free) : moved;
  }

  private AlarmEvent said(Excursion newExcursion) {
    if (!newExcursion.isActive()) {
      return AlarmEvent.RETURN;
    }
    return acknowledgement.isPresent() ? AlarmEvent.SIGNAL_AGAIN : AlarmEvent.SIGNAL;
  }

  private Alarm with(Optional<Acknowledgement> seen, Optional<Finding> found, AlarmState newState) {
    return new Alarm(id, excursion, historical, seen, found, newState, shownAt);
  }
}
