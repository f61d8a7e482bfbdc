package dev.filmward.pipeline;

import dev.filmward.capability.Capability;
import dev.filmward.chart.Baseline;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.SpecLimits;
import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Moments;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Sums subgroups up to mean, spread, limits and capability. Where a subgroup is larger than any
 * whose range says something about the spread, there is no spread within and there are no limits.
 * For one thread.
 */
public final class SeriesFigures {
  private final Baseline baseline = new Baseline();

  /** Of subgroups that are too large for the baseline. */
  private final Moments larger = new Moments();

  private final CompensatedSum squares = new CompensatedSum();

  /** Adds a subgroup whose squares come in {@link #addSquares}. */
  void add(int size, double mean, double range) {
    if (size <= ChartConstants.LARGEST_SIZE) {
      baseline.add(size, mean, range);
    } else {
      larger.addSummary(size, mean, 0);
    }
  }

  public void add(int size, double mean, double range, double sumOfSquares) {
    add(size, mean, range);
    addSquares(sumOfSquares);
  }

  /**
   * Adds the squares of the deviations from their mean, of all subgroups; without them there is no
   * spread overall. Asked only where there is a subgroup.
   */
  void addSquares(double sumOfSquares) {
    squares.add(sumOfSquares);
  }

  public long readings() {
    return baseline.readings() + larger.count();
  }

  /** Each subgroup weighted by its size. */
  public OptionalDouble mean() {
    return readings() == 0 ? OptionalDouble.empty() : OptionalDouble.of(moments().mean());
  }

  public OptionalDouble sigmaWithin() {
    return isCharted() ? baseline.sigmaWithin() : OptionalDouble.empty();
  }

  public OptionalDouble sigmaOverall() {
    return moments().standardDeviation();
  }

  Optional<MeanRangeLimits> limits() {
    return isCharted() ? baseline.limits() : Optional.empty();
  }

  public Capability capability(SpecLimits spec) {
    return readings() == 0
        ? Capability.NONE
        : Capability.of(moments().mean(), sigmaWithin(), sigmaOverall(), spec);
  }

  private boolean isCharted() {
    return larger.count() == 0;
  }

  private Moments moments() {
    Moments all = baseline.weightedMeans();
    all.merge(larger);
    if (all.count() > 0) {
      all.addSquares(squares.value());
    }
    return all;
  }
}
