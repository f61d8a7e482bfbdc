package dev.filmward.alarm;

import java.time.Instant;

/**
 * One time that a group of layers was unlike itself, as the samples tell it: the process half of an
 * alarm. Immutable: each sample gives a new value.
 *
 * @param priority the highest that any of its samples had
 * @param outOfSpec whether a reading of a member was outside its specification while it signalled
 */
public record Excursion(Subject subject, Priority priority, boolean outOfSpec, Course course) {

  /** Whether its last sample signalled. */
  public boolean isActive() {
    return course.returnedAt().isEmpty();
  }

  /** As it is when the line has gone on to something else. */
  public Excursion endedAt(Instant moment) {
    return new Excursion(subject, priority, outOfSpec, course.endedAt(moment));
  }

  /** Whether a signal now would belong to it. */
  boolean isLive() {
    return course.settledAt().isEmpty();
  }

  Excursion signal(Subject widened, Urgency urgency, Instant takenAt) {
    return new Excursion(
        widened,
        urgency.priority().compareTo(priority) > 0 ? urgency.priority() : priority,
        outOfSpec || urgency.outOfSpec(),
        course.signalledAt(takenAt));
  }

  Excursion quiet(Instant takenAt) {
    return new Excursion(subject, priority, outOfSpec, course.quietAt(takenAt));
  }
}
