package dev.filmward.alarm;

import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.Optional;

/**
 * An excursion's way through time, by the times of the samples.
 *
 * @param first the sample that opened it
 * @param returnedAt the first quiet sample after the last one that signalled
 * @param quietSamples samples since the last one that signalled
 * @param settledAt the sample at which it was over for good
 */
public record Course(
    SampleKey first,
    Instant openedAt,
    Instant lastSignalAt,
    Optional<Instant> returnedAt,
    int quietSamples,
    Optional<Instant> settledAt) {

  /**
   * How many quiet samples end an excursion for good: twice as far as the longest zone test reaches
   * back, since a drift that has only begun signals on and off (common practice, no source).
   */
  public static final int SAME_EXCURSION = 16;

  /**
   * When a sample was quiet again; empty while it goes on, and where it only ended because the line
   * went on to something else.
   */
  public Optional<Instant> wentBackAt() {
    return returnedAt.filter(moment -> quietSamples > 0);
  }

  /** The line went on to something else: nothing more is to come. */
  Course endedAt(Instant moment) {
    return new Course(
        first,
        openedAt,
        lastSignalAt,
        returnedAt.or(() -> Optional.of(moment)),
        quietSamples,
        Optional.of(moment));
  }

  static Course opened(SampleKey first, Instant takenAt) {
    return new Course(first, takenAt, takenAt, Optional.empty(), 0, Optional.empty());
  }

  Course signalledAt(Instant takenAt) {
    return new Course(first, openedAt, takenAt, Optional.empty(), 0, Optional.empty());
  }

  Course quietAt(Instant takenAt) {
    int quiet = quietSamples + 1;
    return new Course(
        first,
        openedAt,
        lastSignalAt,
        returnedAt.or(() -> Optional.of(takenAt)),
        quiet,
        quiet == SAME_EXCURSION ? Optional.of(takenAt) : settledAt);
  }
}
