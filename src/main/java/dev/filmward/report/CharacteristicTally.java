package dev.filmward.report;

import dev.filmward.capability.CapabilityTally;
import dev.filmward.capability.LaneValues;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SpecLimits;
import dev.filmward.pipeline.ReadingSpread;
import dev.filmward.pipeline.SpecTimes;
import dev.filmward.stats.Moments;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Sums up readings of a characteristic of which the same was asked. Keeps them, 16 bytes each. A
 * step, for one thread.
 */
final class CharacteristicTally {
  private final Characteristic characteristic;
  private final SpecTimes.Spec asked;
  private final SpecLimits spec;
  private final CapabilityTally tally = CapabilityTally.keepingReadings();
  private final ReadingSpread spread;
  private final TreeMap<Integer, Moments> lanes = new TreeMap<>();
  private final Moments points = new Moments();
  private long outside;

  CharacteristicTally(Characteristic characteristic, SpecTimes.Spec asked) {
    this.characteristic = characteristic;
    this.asked = asked;
    spec = asked.individual();
    spread = new ReadingSpread(characteristic, new SpecTimes(List.of(asked)));
  }

  void add(Sample sample) {
    tally.add(sample, characteristic);
    spread.add(sample);
    double[] values = LaneValues.of(sample, characteristic);
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        points.add(values[i]);
        lanes.computeIfAbsent(sample.lane(i), none -> new Moments()).add(values[i]);
        outside += spec.excludes(values[i]) ? 1 : 0;
      }
    }
  }

  Characteristic characteristic() {
    return characteristic;
  }

  SpecTimes.Spec asked() {
    return asked;
  }

  SpecLimits spec() {
    return spec;
  }

  CapabilityTally tally() {
    return tally;
  }

  ReadingSpread spread() {
    return spread;
  }

  SortedMap<Integer, Moments> lanes() {
    return lanes;
  }

  Moments points() {
    return points;
  }

  /** All readings, ascending. */
  double[] ordered() {
    return tally.kept();
  }

  long outside() {
    return outside;
  }
}
