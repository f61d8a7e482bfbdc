package dev.filmward.alarm;

import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.Optional;

/**
 * An alarm's way through time, by the times of the samples.
 *
 * @param first the sample that opened it
 * @param quietSamples samples since the last one that signalled
 * @param historical whether the samples were old news when they came: no horn
 */
public record Course(
    SampleKey first,
    Instant openedAt,
    Instant lastSignalAt,
    Optional<Instant> returnedAt,
    int quietSamples,
    boolean historical) {

  Course signalledAt(Instant takenAt) {
    return new Course(first, openedAt, takenAt, Optional.empty(), 0, historical);
  }

  Course quietAt(Instant takenAt) {
    return new Course(
        first,
        openedAt,
        lastSignalAt,
        returnedAt.or(() -> Optional.of(takenAt)),
        quietSamples + 1,
        historical);
  }
}
