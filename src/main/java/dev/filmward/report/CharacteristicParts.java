package dev.filmward.report;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.pipeline.SpecTimes;
import java.time.Instant;
import java.util.Collection;
import java.util.TreeMap;

/**
 * Sums up the readings of a characteristic over a week, apart by what was asked of them, since
 * readings under two specifications have no index in common. A step, for one thread.
 */
final class CharacteristicParts {
  private final Characteristic characteristic;
  private final SpecTimes asked;
  private final TreeMap<Integer, CharacteristicTally> parts = new TreeMap<>();
  private final Instant until;

  /**
   * @param until end of the week, whose specification it has where nothing was measured
   */
  CharacteristicParts(Characteristic characteristic, SpecTimes asked, Instant until) {
    this.characteristic = characteristic;
    this.asked = asked;
    this.until = until;
  }

  void add(Sample sample) {
    part(asked.indexAt(sample.takenAt())).add(sample);
  }

  private CharacteristicTally part(int index) {
    return parts.computeIfAbsent(index, this::begun);
  }

  private CharacteristicTally begun(int index) {
    return new CharacteristicTally(characteristic, asked.all().get(index));
  }

  Characteristic characteristic() {
    return characteristic;
  }

  /** Those under the last specification under which something was made. */
  CharacteristicTally last() {
    return parts.isEmpty() ? begun(asked.indexAt(until)) : parts.lastEntry().getValue();
  }

  /** How much of the week's samples the last part is, 0 to 1. */
  double shareOfLast() {
    long samples = parts.values().stream().mapToLong(part -> part.tally().samples()).sum();
    return samples == 0 ? 1 : (double) last().tally().samples() / samples;
  }

  /** Those under each specification before it, in the order of time. */
  Collection<CharacteristicTally> earlier() {
    return parts.isEmpty() ? parts.values() : parts.headMap(parts.lastKey()).values();
  }

  /** Whether something was made in this part at a moment. */
  boolean holds(CharacteristicTally part, Instant moment) {
    return asked.all().get(asked.indexAt(moment)).equals(part.asked());
  }
}
