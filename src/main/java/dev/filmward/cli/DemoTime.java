package dev.filmward.cli;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.time.Duration;
import java.time.Instant;

/**
 * Moves the times of a recorded run, so that it ends when the demo begins and passes faster than it
 * did.
 *
 * @param recordedEnd the last moment on the line
 * @param shownEnd when that moment shall have been
 * @param recorded the time between two samples as it was
 * @param shown the time between two samples as it shall be
 */
record DemoTime(Instant recordedEnd, Instant shownEnd, Duration recorded, Duration shown) {

  Instant shown(Instant takenAt) {
    long before = Duration.between(takenAt, recordedEnd).toMillis();
    return shownEnd.minusMillis(before * shown.toMillis() / recorded.toMillis());
  }

  /** Puts the moved times between a file and its reader. */
  ReadingSink before(ReadingSink sink) {
    return new ReadingSink() {
      @Override
      public void reading(
          SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {
        sink.reading(key, shown(takenAt), structure, position, lane, um);
      }

      @Override
      public void temperature(
          SampleKey key, Instant takenAt, Structure structure, int lane, double c) {
        sink.temperature(key, shown(takenAt), structure, lane, c);
      }

      @Override
      public void missing(
          SampleKey key, Instant takenAt, Structure structure, int position, int lane) {
        sink.missing(key, shown(takenAt), structure, position, lane);
      }
    };
  }
}
