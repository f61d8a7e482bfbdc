package dev.filmward.stats;

/**
 * Where in the ordered sample a quantile lies. All rules draw straight lines between neighbours.
 *
 * <p>Source: R. J. Hyndman and Y. Fan, Sample quantiles in statistical packages, The American
 * Statistician 50 (1996) 361, whose numbers are 6, 7 and 8.
 */
public enum QuantileRule {
  /** Place p (n + 1): the expected share below the i-th of n is i / (n + 1). */
  MEAN_RANK,
  /** Place 1 + p (n - 1): the smallest is the quantile of 0 and the greatest that of 1. */
  BETWEEN_ENDS,
  /** Place 1/3 + p (n + 1/3): nearly unbiased for the median, whatever the distribution. */
  MEDIAN_RANK;

  double place(double p, long n) {
    return switch (this) {
      case MEAN_RANK -> p * (n + 1);
      case BETWEEN_ENDS -> 1 + p * (n - 1);
      case MEDIAN_RANK -> 1 / 3.0 + p * (n + 1 / 3.0);
    };
  }
}
