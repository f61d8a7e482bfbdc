package dev.filmward.gauge.share;

import dev.filmward.stats.Moments;
import dev.filmward.subgroup.Subgroup;
import java.util.List;
import java.util.Optional;

/**
 * The variation of a series as it is charted, gauge included, in um2. A component below zero, as
 * estimates may come out, counts as zero. Steady lane differences are within samples. Immutable.
 *
 * @param between of the samples' levels, without what readings add to the means
 * @param within of single readings of one sample
 * @param readings in a sample, 1 or more; the harmonic mean where samples differ
 */
public record ChartedVariation(double between, double within, double readings) {

  public ChartedVariation {
    if (!Double.isFinite(between) || !(within >= 0) || !Double.isFinite(within)) {
      throw new IllegalArgumentException(
          "variances are numbers and not below zero within samples: " + between + ", " + within);
    }
    if (!(readings >= 1)) {
      throw new IllegalArgumentException("a sample has one reading or more, not " + readings);
    }
    between = Math.max(0, between);
  }

  /**
   * Of samples that were charted: within is pooled, between is the variance of the means less what
   * readings add to it, {@code within} times the mean of {@code 1 / n} (method of unweighted means:
   * S. R. Searle, G. Casella and C. E. McCulloch, Variance Components (1992), from memory). Empty
   * with fewer than two samples, or without two readings in any.
   */
  public static Optional<ChartedVariation> of(List<Subgroup> samples) {
    Moments means = new Moments();
    double squares = 0;
    double degrees = 0;
    double perReading = 0;
    for (Subgroup sample : samples) {
      means.add(sample.mean());
      squares += sample.sumOfSquares();
      degrees += sample.size() - 1;
      perReading += 1.0 / sample.size();
    }
    if (samples.size() < 2 || degrees == 0) {
      return Optional.empty();
    }
    double within = squares / degrees;
    double adds = perReading / samples.size();
    return Optional.of(
        new ChartedVariation(
            means.sumOfSquares() / (means.count() - 1) - within * adds, within, 1 / adds));
  }

  /** Variance of single readings. */
  public double ofReadings() {
    return between + within;
  }

  /** Variance of the means of samples. */
  public double ofMeans() {
    return between + within / readings;
  }
}
