package dev.filmward.alarm;

import java.time.Instant;
import java.util.Optional;

/**
 * What a person must deal with. Immutable: each step gives a new value.
 *
 * @param id given by the store; 0 before that
 * @param outOfSpec whether a reading of a member was outside its specification while it signalled
 */
public record Alarm(
    long id,
    Subject subject,
    AlarmState state,
    Priority priority,
    boolean outOfSpec,
    Course course,
    Optional<Acknowledgement> acknowledgement,
    Optional<Finding> finding) {

  /** Over, seen, and explained. */
  public boolean isClosed() {
    return state == AlarmState.NORMAL && finding.isPresent();
  }

  /**
   * Notes that a person has seen it and takes it on.
   *
   * @throws IllegalStateException if somebody did so before
   */
  public Alarm acknowledge(String by, Instant at) {
    Acknowledgement seen = new Acknowledgement(by, at);
    return new Alarm(
        id,
        subject,
        state.onAcknowledge(),
        priority,
        outOfSpec,
        course,
        Optional.of(seen),
        finding);
  }

  /** Notes what was found; a later finding takes the place of an earlier one. */
  public Alarm explain(Finding found) {
    return new Alarm(
        id, subject, state, priority, outOfSpec, course, acknowledgement, Optional.of(found));
  }

  public Alarm withId(long newId) {
    return new Alarm(newId, subject, state, priority, outOfSpec, course, acknowledgement, finding);
  }

  Alarm signal(Subject widened, Urgency urgency, Instant takenAt) {
    return new Alarm(
        id,
        widened,
        state.onSignal(),
        urgency.priority().compareTo(priority) > 0 ? urgency.priority() : priority,
        outOfSpec || urgency.outOfSpec(),
        course.signalledAt(takenAt),
        acknowledgement,
        finding);
  }

  /** As when every sample after its last signal had been quiet: the excursion has ended. */
  public Alarm over(Instant at) {
    Alarm ended = this;
    while (ended.course.quietSamples() < Excursions.SAME_EXCURSION) {
      ended = ended.quiet(at);
    }
    return ended;
  }

  Alarm quiet(Instant takenAt) {
    return new Alarm(
        id,
        subject,
        state.onReturn(),
        priority,
        outOfSpec,
        course.quietAt(takenAt),
        acknowledgement,
        finding);
  }
}
