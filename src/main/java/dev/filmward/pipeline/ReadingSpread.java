package dev.filmward.pipeline;

import dev.filmward.capability.LaneValues;
import dev.filmward.capability.NormalityGate;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Sample;
import dev.filmward.film.SpecLimits;
import dev.filmward.stats.Moments;
import dev.filmward.stats.QuantileRule;
import dev.filmward.stats.SampleQuantiles;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Gathers readings, gives how they are distributed. Keeps the newest {@value #MOST}, 8 bytes each.
 * Each counts as outside by what was asked when it was made. A step, for one thread.
 *
 * <p>The width of bins follows D. Freedman and P. Diaconis, On the histogram as a density estimator
 * (1981): twice the interquartile range over the cube root of n, within 8 to 60 bins.
 */
public final class ReadingSpread {
  static final int MOST = 500_000;

  private static final int FEWEST_FOR_TAILS = 1000;
  private static final int FEWEST_BINS = 8;
  private static final int MOST_BINS = 60;

  private final Characteristic characteristic;
  private final SpecTimes asked;
  private final List<Run> runs = new ArrayList<>();
  private double[] newest = new double[1024];
  private long seen;

  /** Readings of which the same was asked, by how many were seen before the first of them. */
  private record Run(long since, int asking) {}

  public ReadingSpread(Characteristic characteristic, SpecTimes asked) {
    this.characteristic = characteristic;
    this.asked = asked;
  }

  public void add(Sample sample) {
    int asking = asked.indexAt(sample.takenAt());
    if (runs.isEmpty() || runs.get(runs.size() - 1).asking != asking) {
      runs.add(new Run(seen, asking));
    }
    for (double value : LaneValues.of(sample, characteristic)) {
      if (!Double.isNaN(value)) {
        if (seen == newest.length && newest.length < MOST) {
          newest = Arrays.copyOf(newest, Math.min(MOST, 2 * newest.length));
        }
        newest[(int) (seen % newest.length)] = value;
        seen++;
      }
    }
  }

  public Optional<LayerLook.Spread> spread() {
    if (seen == 0) {
      return Optional.empty();
    }
    SampleQuantiles quantiles = new SampleQuantiles();
    Moments moments = new Moments();
    for (int i = 0; i < Math.min(seen, newest.length); i++) {
      quantiles.add(newest[i]);
      moments.add(newest[i]);
    }
    double[] ordered = quantiles.ordered();
    double width = width(quantiles, ordered);
    return Optional.of(
        new LayerLook.Spread(
            ordered.length,
            moments.mean(),
            moments.standardDeviation().orElse(0),
            ordered[0],
            width,
            Arrays.stream(counts(ordered, width)).boxed().toList(),
            outside(),
            tails(quantiles),
            NormalityGate.of(ordered)));
  }

  private static double width(SampleQuantiles quantiles, double[] ordered) {
    double reach = ordered[ordered.length - 1] - ordered[0];
    double quartiles =
        quantiles.at(0.75, QuantileRule.MEDIAN_RANK) - quantiles.at(0.25, QuantileRule.MEDIAN_RANK);
    double rule = 2 * quartiles / Math.cbrt(ordered.length);
    double width = Math.min(reach / FEWEST_BINS, Math.max(reach / MOST_BINS, rule));
    return width > 0 ? width : 0.01;
  }

  /** The greatest reading belongs to the last bin, whose right edge it may be. */
  private static long[] counts(double[] ordered, double width) {
    double reach = ordered[ordered.length - 1] - ordered[0];
    int bins = Math.max(1, (int) Math.ceil(reach / width - 1e-9));
    long[] counts = new long[bins];
    for (double value : ordered) {
      counts[Math.min(bins - 1, (int) ((value - ordered[0]) / width))]++;
    }
    return counts;
  }

  private LayerLook.Outside outside() {
    return new LayerLook.Outside(
        count(SpecLimits::lower, (value, limit) -> value < limit),
        count(SpecLimits::upper, (value, limit) -> value > limit));
  }

  private interface Beyond {
    boolean is(double value, double limit);
  }

  /** Empty where no limit of that side was asked for. */
  private Optional<Long> count(Function<SpecLimits, OptionalDouble> side, Beyond beyond) {
    if (runs.stream().allMatch(run -> limit(run, side).isEmpty())) {
      return Optional.empty();
    }
    long count = 0;
    int at = -1;
    OptionalDouble limit = OptionalDouble.empty();
    for (long i = Math.max(0, seen - newest.length); i < seen; i++) {
      while (at + 1 < runs.size() && runs.get(at + 1).since <= i) {
        limit = limit(runs.get(++at), side);
      }
      boolean isBeyond =
          limit.isPresent() && beyond.is(newest[(int) (i % newest.length)], limit.getAsDouble());
      count += isBeyond ? 1 : 0;
    }
    return Optional.of(count);
  }

  private OptionalDouble limit(Run run, Function<SpecLimits, OptionalDouble> side) {
    return side.apply(asked.all().get(run.asking).individual());
  }

  private static List<Double> tails(SampleQuantiles quantiles) {
    if (quantiles.count() < FEWEST_FOR_TAILS) {
      return List.of();
    }
    return List.of(
        quantiles.at(0.00135, QuantileRule.MEDIAN_RANK),
        quantiles.at(0.5, QuantileRule.MEDIAN_RANK),
        quantiles.at(0.99865, QuantileRule.MEDIAN_RANK));
  }
}
