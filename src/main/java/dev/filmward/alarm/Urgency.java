package dev.filmward.alarm;

import java.time.Duration;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How much a sample's verdict on one characteristic weighs.
 *
 * @param timeToSpec until film is out of specification, where that is foreseen
 */
record Urgency(Priority priority, boolean outOfSpec, Optional<Duration> timeToSpec) {
  static final Urgency LEAST = new Urgency(Priority.LOW, false, Optional.empty());

  Urgency and(Urgency other) {
    return new Urgency(
        priority.compareTo(other.priority) >= 0 ? priority : other.priority,
        outOfSpec || other.outOfSpec,
        Stream.of(timeToSpec, other.timeToSpec).flatMap(Optional::stream).min(Duration::compareTo));
  }
}
