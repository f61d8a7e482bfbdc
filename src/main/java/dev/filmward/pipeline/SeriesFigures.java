package dev.filmward.pipeline;

import dev.filmward.capability.Capability;
import dev.filmward.chart.Baseline;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.SpecLimits;
import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.Moments;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sums subgroups up to mean, spread, limits and capability. Where a subgroup is larger than any
 * whose range says something about the spread, there is no spread within and there are no limits.
 * For one thread.
 */
final class SeriesFigures {
  private final Moments moments = new Moments();
  private final Baseline baseline = new Baseline();
  private int greatestSize;

  void add(int size, double mean, double range, double sumOfSquares) {
    moments.addSummary(size, mean, sumOfSquares);
    greatestSize = Math.max(greatestSize, size);
    if (size <= ChartConstants.LARGEST_SIZE) {
      baseline.add(size, mean, range);
    }
  }

  long readings() {
    return moments.count();
  }

  /** Each subgroup weighted by its size. */
  OptionalDouble mean() {
    return readings() == 0 ? OptionalDouble.empty() : OptionalDouble.of(moments.mean());
  }

  OptionalDouble sigmaWithin() {
    return isCharted() ? baseline.sigmaWithin() : OptionalDouble.empty();
  }

  OptionalDouble sigmaOverall() {
    return moments.standardDeviation();
  }

  Optional<MeanRangeLimits> limits() {
    return isCharted() ? baseline.limits() : Optional.empty();
  }

  Capability capability(SpecLimits spec) {
    return readings() == 0
        ? Capability.NONE
        : Capability.of(moments.mean(), sigmaWithin(), sigmaOverall(), spec);
  }

  private boolean isCharted() {
    return greatestSize <= ChartConstants.LARGEST_SIZE;
  }
}
