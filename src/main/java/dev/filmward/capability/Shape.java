package dev.filmward.capability;

import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Moments;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Skewness and excess kurtosis of readings, both 0 for a normal distribution, from moments about
 * the mean with n in the denominator (g1 and g2). There must be two that differ ({@link
 * IllegalArgumentException}). Immutable.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.11; for the displacement the
 * first terms of E. A. Cornish and R. A. Fisher, Moments and cumulants in the specification of
 * distributions (1938), as in Abramowitz and Stegun (1964), 26.2.49.
 */
public record Shape(double skewness, double excessKurtosis) {

  static Shape of(double[] readings) {
    Moments moments = new Moments();
    Arrays.stream(readings).forEach(moments::add);
    double n = readings.length;
    double variance = moments.sumOfSquares() / n;
    if (!(variance > 0)) {
      throw new IllegalArgumentException("readings that do not differ have no shape");
    }
    double mean = moments.mean();
    double third = meanOf(readings, x -> Math.pow(x - mean, 3));
    double fourth = meanOf(readings, x -> Math.pow(x - mean, 4));
    return new Shape(third / Math.pow(variance, 1.5), fourth / (variance * variance) - 3);
  }

  /** How far, in sigma, such a shape moves the farther of the two points 3 sigma from the mean. */
  double displacementAtThreeSigma() {
    return Math.abs(skewness) * (3 * 3 - 1) / 6 + Math.abs(excessKurtosis) * (27 - 9) / 24;
  }

  private static double meanOf(double[] readings, DoubleUnaryOperator power) {
    CompensatedSum sum = new CompensatedSum();
    Arrays.stream(readings).map(power).forEach(sum::add);
    return sum.value() / readings.length;
  }
}
