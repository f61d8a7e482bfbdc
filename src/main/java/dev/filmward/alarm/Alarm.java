package dev.filmward.alarm;

import java.util.Optional;

/**
 * What a person must deal with: an excursion, and what people did about it. Immutable: each step
 * gives a new value.
 *
 * @param id given by the store; 0 before that
 * @param historical whether it was old news when it came: no horn
 */
public record Alarm(
    long id,
    Excursion excursion,
    boolean historical,
    Optional<Acknowledgement> acknowledgement,
    Optional<Finding> finding) {

  /** Nobody has seen it yet. */
  public static Alarm unseen(Excursion excursion, boolean historical) {
    return new Alarm(0, excursion, historical, Optional.empty(), Optional.empty());
  }

  public Subject subject() {
    return excursion.subject();
  }

  public AlarmState state() {
    AlarmState seen =
        acknowledgement.isPresent() ? AlarmState.ACKNOWLEDGED : AlarmState.UNACKNOWLEDGED;
    return excursion.isActive() ? seen.onSignal() : seen.onReturn();
  }

  /** Over, seen, and explained. */
  public boolean isClosed() {
    return state() == AlarmState.NORMAL && finding.filter(Finding::isComplete).isPresent();
  }

  /** Whether a person has done anything about it. */
  public boolean isTouched() {
    return acknowledgement.isPresent() || finding.isPresent();
  }

  /**
   * Notes that a person has seen it and takes it on.
   *
   * @throws AlreadyTakenException if somebody did so before
   */
  public Alarm acknowledge(Acknowledgement seen) {
    if (acknowledgement.isPresent()) {
      throw new AlreadyTakenException(acknowledgement.get());
    }
    return new Alarm(id, excursion, historical, Optional.of(seen), finding);
  }

  /** Notes what was found; a later finding takes the place of an earlier one. */
  public Alarm explain(Finding found) {
    return new Alarm(id, excursion, historical, acknowledgement, Optional.of(found));
  }

  /**
   * Asks for cause and action anew, because what was found does not hold.
   *
   * @throws IllegalStateException if it is open
   */
  public Alarm reopen() {
    if (!isClosed()) {
      throw new IllegalStateException("this alarm is open already");
    }
    return new Alarm(id, excursion, historical, acknowledgement, Optional.empty());
  }

  public Alarm withId(long newId) {
    return new Alarm(newId, excursion, historical, acknowledgement, finding);
  }

  /** The same alarm after another sample. */
  public Alarm with(Excursion newExcursion) {
    return new Alarm(id, newExcursion, historical, acknowledgement, finding);
  }
}
