package dev.filmward.film;

import java.time.Instant;

/**
 * Takes what a file says, one place at a time, in the order of the file.
 *
 * <p>A place is a sample, a reported layer (position from 1) and a lane. Consecutive calls that are
 * of the same sample are given the same {@code key} object, so that a receiver may compare by
 * identity before it compares by value. Called from one thread.
 */
public interface ReadingSink {

  /** A thickness was measured; finite and above zero, in micrometres. */
  void reading(
      SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um);

  /** Several thicknesses of one sample; the same as each by itself, in their order. */
  default void readings(SampleKey key, Instant takenAt, Structure structure, ReadingRun run) {
    for (int i = 0; i < run.size(); i++) {
      reading(key, takenAt, structure, run.position(i), run.lane(i), run.um(i));
    }
  }

  /**
   * The film had a temperature at a lane of a sample of which a reading, or its lack, was handed on
   * just before; degrees Celsius. Whoever does not need it passes it over.
   */
  default void temperature(
      SampleKey key, Instant takenAt, Structure structure, int lane, double c) {
    // most receivers have no use for it
  }

  /** The place is in the file, but nothing was measured there. */
  void missing(SampleKey key, Instant takenAt, Structure structure, int position, int lane);
}
