package dev.filmward.capability;

/**
 * How many independent readings tell as much as n readings of which each resembles the one before:
 * fewer for the mean than for the variance. Both are taken from the lag-1 autocorrelation as if it
 * were of a first-order autoregression, for n much larger than the time it forgets in.
 *
 * <p>An autocorrelation below 0 would promise more than n for the mean; it is taken as 0. Neither
 * figure is ever above n. Immutable.
 *
 * <p>Source: G. V. Bayley and J. M. Hammersley, The "effective" number of independent observations
 * in an autocorrelated time series, Supplement to the Journal of the Royal Statistical Society 8
 * (1946) 184: (1 - r)/(1 + r) of n for the mean, (1 - r^2)/(1 + r^2) of n for the variance.
 *
 * @param n readings that there are
 * @param forMean what they are worth for the mean
 * @param forVariance what they are worth for the variance
 */
public record EffectiveSize(double n, double forMean, double forVariance) {

  public EffectiveSize {
    if (!(n >= 0) || !(forMean >= 0 && forMean <= n) || !(forVariance >= 0 && forVariance <= n)) {
      throw new IllegalArgumentException(
          "effective sizes are from 0 to n: " + n + ", " + forMean + ", " + forVariance);
    }
  }

  /** Of readings that do not depend on each other. */
  public static EffectiveSize independent(long n) {
    return new EffectiveSize(n, n, n);
  }

  /**
   * Of a series.
   *
   * @param lag1 correlation of each reading with the one before, above -1 and below 1
   */
  public static EffectiveSize of(long n, double lag1) {
    if (!(lag1 > -1 && lag1 < 1)) {
      throw new IllegalArgumentException(
          "an autocorrelation lies between -1 and 1, not at " + lag1);
    }
    double square = lag1 * lag1;
    double r = Math.max(0, lag1);
    return new EffectiveSize(n, n * (1 - r) / (1 + r), n * (1 - square) / (1 + square));
  }
}
