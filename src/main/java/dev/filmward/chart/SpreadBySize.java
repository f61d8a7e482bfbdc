package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.CompensatedSum;
import java.io.Serializable;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;

/**
 * Sums of a measure of spread (range or standard deviation), apart for each subgroup size of 2 to
 * 100. Mutable, for one thread; they merge.
 */
final class SpreadBySize implements Serializable {
  private static final long serialVersionUID = 1L;

  private final CompensatedSum[] sums = new CompensatedSum[ChartConstants.LARGEST_SIZE + 1];
  private final long[] counts = new long[sums.length];

  SpreadBySize() {
    for (int size = 0; size < sums.length; size++) {
      sums[size] = new CompensatedSum();
    }
  }

  /** Refuses what is no size of a charted subgroup. */
  static void checkSize(int size) {
    if (!(size >= 1 && size <= ChartConstants.LARGEST_SIZE)) {
      throw new IllegalArgumentException(
          "a mean and range chart takes subgroups of 1 to "
              + ChartConstants.LARGEST_SIZE
              + " readings, not "
              + size
              + "; chart fewer lanes, every second one for instance");
    }
  }

  void add(int size, double spread) {
    sums[size].add(spread);
    counts[size]++;
  }

  void merge(SpreadBySize other) {
    for (int size = 0; size < sums.length; size++) {
      sums[size].add(other.sums[size]);
      counts[size] += other.counts[size];
    }
  }

  /** Over all sizes; empty if there is none. */
  OptionalDouble average() {
    CompensatedSum sum = new CompensatedSum();
    long count = 0;
    for (int size = 0; size < sums.length; size++) {
      sum.add(sums[size]);
      count += counts[size];
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum.value() / count);
  }

  /**
   * The unbiased linear combination of least variance as an estimate of sigma; with one size the
   * average over its constant. Empty if there is none.
   *
   * @param mean of the measure for a size, in sigma
   * @param deviation standard deviation of the measure for a size, in sigma
   */
  OptionalDouble sigma(IntToDoubleFunction mean, IntToDoubleFunction deviation) {
    double weights = 0;
    CompensatedSum weighted = new CompensatedSum();
    for (int size = 2; size < sums.length; size++) {
      if (counts[size] > 0) {
        double expected = mean.applyAsDouble(size);
        double variance = Math.pow(deviation.applyAsDouble(size), 2);
        weights += counts[size] * (expected * expected) / variance;
        weighted.addProduct(expected / variance, sums[size]);
      }
    }
    return weights == 0 ? OptionalDouble.empty() : OptionalDouble.of(weighted.value() / weights);
  }
}
