package dev.filmward.drift;

/**
 * A level and a rate fitted to means whose noise has the lag-1 coefficient phi. Immutable.
 *
 * @param level where the regressor is 0, less the average of the means
 * @param rate change of the mean for a regressor of 1
 * @param squares of the whitened residuals
 */
record LineFit(double phi, double level, double rate, double squares, Factors factors) {

  /** Variances and covariance of level and rate, in units of the variance of the innovations. */
  record Factors(double level, double cross, double rate) {}
}
