package dev.filmward.drift;

import dev.filmward.stats.StudentT;

/**
 * How sure the spread of a slowly moving average is when the noise's lag-1 coefficient phi was
 * estimated with it. That variance is {@code s^2 / (1 - phi)^2}; its relative variance is about
 * {@code 2/n + 4 (1 + phi) / (n (1 - phi))}, which fixes degrees of freedom.
 *
 * <p>Source: F. E. Satterthwaite, An approximate distribution of estimates of variance components,
 * Biometrics Bulletin 2 (1946) 110, with the variance {@code (1 - phi^2) / n} of phi after Box,
 * Jenkins and Reinsel, Time Series Analysis (1994), section 7.2.
 */
final class LongRun {
  private static final double FEWEST_DEGREES = 3;

  private LongRun() {}

  static double degrees(int points, int parameters, double phi) {
    double degrees = (points - parameters) / (1 + 2 * (1 + phi) / (1 - phi));
    return Math.max(FEWEST_DEGREES, degrees);
  }

  /** Of Student's t, for an interval of 95 %. */
  static double quantile(int points, int parameters, double phi) {
    return new StudentT(degrees(points, parameters, phi)).upperQuantile(0.025);
  }
}
