package dev.filmward.alarm;

import java.time.Instant;
import java.util.Optional;

/**
 * One time that a group of layers was unlike itself, as the samples tell it: the process half of an
 * alarm. Immutable: each sample gives a new value.
 *
 * @param priority the highest that any of its samples had
 * @param outOfSpec whether a reading of a member was outside its specification while it signalled
 * @param mode what the line was doing at its last sample
 * @param raised whether it signalled at a sample at which the line was running
 * @param outOfSpecAt when the mean is expected to meet a specification limit, by its last sample
 */
public record Excursion(
    Subject subject,
    Priority priority,
    boolean outOfSpec,
    Course course,
    LineMode mode,
    boolean raised,
    Optional<Instant> outOfSpecAt) {

  /** Whether it has not returned to normal. */
  public boolean isActive() {
    return course.returnedAt().isEmpty();
  }

  /** As it is when the line has gone on to something else. */
  public Excursion endedAt(Instant moment) {
    return new Excursion(
        subject, priority, outOfSpec, course.endedAt(moment), mode, raised, Optional.empty());
  }

  /** Whether a signal at that sample would belong to it. */
  boolean isLiveAt(SampleVerdict sample) {
    return course.settledAt().isEmpty()
        && sample.line().madeElseAt().filter(course.lastSignalAt()::isBefore).isEmpty();
  }

  Excursion signal(Subject widened, Urgency urgency, SampleVerdict sample) {
    return new Excursion(
        widened,
        urgency.priority().compareTo(priority) > 0 ? urgency.priority() : priority,
        outOfSpec || urgency.outOfSpec(),
        course.signalledAt(sample.takenAt()),
        sample.mode(),
        raised || !sample.mode().suppresses(),
        urgency.timeToSpec().map(sample.takenAt()::plus));
  }

  Excursion quiet(SampleVerdict sample) {
    return new Excursion(
        subject,
        priority,
        outOfSpec,
        course.quietAt(sample.takenAt()),
        sample.mode(),
        raised,
        Optional.empty());
  }
}
