package dev.filmward.capability;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Moments;
import dev.filmward.stats.SampleQuantiles;
import java.io.Serializable;
import java.util.Collections;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Sums up the readings of one characteristic, sample by sample, for a {@link CapabilityStatement}:
 * all points, sample averages and every lane apart. Lanes may be missing (NaN), and differ from
 * sample to sample; a sample without a reading changes nothing.
 *
 * <p>Memory grows with the lanes only, unless readings are kept for normality and percentiles, 8
 * bytes each. The order does not matter; tallies merge. Mutable, for one thread.
 */
public final class CapabilityTally implements Serializable {
  private static final long serialVersionUID = 1L;

  private final Moments points = new Moments();
  private final Moments averages = new Moments();
  private final CompensatedSum squaresWithinSamples = new CompensatedSum();
  private final TreeMap<Integer, Moments> lanes = new TreeMap<>();
  private final @Nullable SampleQuantiles readings;

  private CapabilityTally(@Nullable SampleQuantiles readings) {
    this.readings = readings;
  }

  /** Of moments alone. */
  public static CapabilityTally ofMoments() {
    return new CapabilityTally(null);
  }

  /** Of moments, with the readings kept. */
  public static CapabilityTally keepingReadings() {
    return new CapabilityTally(new SampleQuantiles());
  }

  public void add(Sample sample, Characteristic characteristic) {
    int[] numbers = new int[sample.laneCount()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = sample.lane(i);
    }
    add(numbers, LaneValues.of(sample, characteristic));
  }

  /**
   * Adds a sample.
   *
   * @param laneNumbers as the gauge gave them
   * @param values a reading for each, NaN where nothing was measured
   */
  public void add(int[] laneNumbers, double[] values) {
    if (laneNumbers.length != values.length) {
      throw new IllegalArgumentException(
          laneNumbers.length + " lanes but " + values.length + " readings");
    }
    Moments sample = new Moments();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        sample.add(values[i]);
        addPoint(laneNumbers[i], values[i]);
      }
    }
    if (sample.count() > 0) {
      averages.add(sample.mean());
      squaresWithinSamples.add(sample.sumOfSquares());
    }
  }

  private void addPoint(int lane, double value) {
    points.add(value);
    lane(lane).add(value);
    if (readings != null) {
      readings.add(value);
    }
  }

  /**
   * Adds all that another tally has seen; the other stays as it is. Both keep readings, or none.
   */
  public void merge(CapabilityTally other) {
    if ((readings == null) != (other.readings == null)) {
      throw new IllegalArgumentException("one tally keeps its readings and the other does not");
    }
    points.merge(other.points);
    averages.merge(other.averages);
    squaresWithinSamples.add(other.squaresWithinSamples);
    other.lanes.forEach((lane, moments) -> lane(lane).merge(moments));
    if (readings != null && other.readings != null) {
      readings.merge(other.readings);
    }
  }

  private Moments lane(int number) {
    return lanes.computeIfAbsent(number, none -> new Moments());
  }

  /** All readings. */
  Moments points() {
    return points;
  }

  /** The mean of each sample. */
  Moments averages() {
    return averages;
  }

  /** By lane number. */
  SortedMap<Integer, Moments> lanes() {
    return Collections.unmodifiableSortedMap(lanes);
  }

  public long samples() {
    return averages.count();
  }

  /** Of the samples pooled, from their variances; empty where no sample has two readings. */
  public OptionalDouble sigmaWithin() {
    long degrees = points.count() - averages.count();
    return degrees > 0
        ? OptionalDouble.of(Math.sqrt(squaresWithinSamples.value() / degrees))
        : OptionalDouble.empty();
  }

  public VarianceParts parts() {
    double total = points.sumOfSquares();
    double withinSamples = squaresWithinSamples.value();
    double withinLanes = lanes.values().stream().mapToDouble(Moments::sumOfSquares).sum();
    double betweenSamples = Math.max(0, total - withinSamples);
    double betweenLanes = Math.max(0, Math.min(withinSamples, total - withinLanes));
    return new VarianceParts(
        points.count(),
        averages.count(),
        lanes.size(),
        betweenSamples,
        betweenLanes,
        withinSamples - betweenLanes);
  }

  /** All readings in ascending order; none unless they were kept. */
  public double[] kept() {
    return readings();
  }

  /** In ascending order; none unless they were kept. */
  double[] readings() {
    return readings == null ? new double[0] : readings.ordered();
  }
}
