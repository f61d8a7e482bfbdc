package dev.filmward.simulate;

import dev.filmward.film.SampleKey;
import java.time.Duration;
import java.time.Instant;

/**
 * Which line makes the film, when its first sample is taken, how long it is to the next, and how
 * rolls are named. Immutable.
 */
record Schedule(String line, Instant start, Duration interval, Rolls rolls) {

  Instant takenAt(int sample) {
    return start.plus(interval.multipliedBy(sample));
  }

  SampleKey key(String structure, int sample) {
    return new SampleKey(line, structure, rolls.roll(sample), Rolls.sample(sample));
  }
}
