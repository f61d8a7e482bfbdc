package dev.filmward.stats;

import org.apache.commons.math3.special.Beta;

/**
 * The regularised incomplete beta function I_x(a, b) by Commons Math, taken from the side on which
 * its continued fraction converges, with 1 - x given apart so that it keeps its digits.
 *
 * <p>Source: Abramowitz and Stegun (1964), 26.5.8.
 */
final class IncompleteBeta {
  private static final double ACCURACY = 1e-15;
  private static final int MOST_TERMS = 100_000;

  private IncompleteBeta() {}

  /** Probability that a Beta(a, b) number is at most {@code x = 1 - rest}. */
  static double below(double x, double rest, double a, double b) {
    return x <= (a + 1) / (a + b + 2) ? direct(x, a, b) : 1 - direct(rest, b, a);
  }

  private static double direct(double x, double a, double b) {
    return x > 0 ? Beta.regularizedBeta(x, a, b, ACCURACY, MOST_TERMS) : 0;
  }
}
