package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a chart keeps of each sample until its limits are known, in time order. For one thread.
 *
 * @param <T> what is kept
 */
final class KeptSamples<T> {
  private final List<Kept<T>> kept = new ArrayList<>();

  /** What is kept of a sample. */
  record Kept<T>(SampleKey key, Instant takenAt, T figures) {}

  void add(Sample sample, T figures) {
    kept.add(new Kept<>(sample.key(), sample.takenAt(), figures));
  }

  List<Kept<T>> inTimeOrder() {
    kept.sort(Comparator.<Kept<T>, Instant>comparing(Kept::takenAt).thenComparing(Kept::key));
    return List.copyOf(kept);
  }
}
