package dev.filmward.capability;

import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Moments;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The power lambda that makes readings above zero as normal as a power can: {@code (x^lambda - 1) /
 * lambda}, or the logarithm at 0, by greatest likelihood between -10 and 10. Readings are divided
 * by their geometric mean, which changes neither the power nor its likelihood. Immutable.
 *
 * <p>Source: G. E. P. Box and D. R. Cox, An analysis of transformations, Journal of the Royal
 * Statistical Society B 26 (1964) 211; the maximum by golden sections.
 *
 * @param geometricMean of the readings
 * @param logLikelihood the greatest, without the constant of the normal density
 */
record BoxCox(double lambda, double geometricMean, double logLikelihood) {
  private static final double GREATEST = 10;
  private static final double GREATEST_EXPONENT = 300;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  static BoxCox fit(double[] readings) {
    double[] logs = Arrays.stream(readings).map(Math::log).toArray();
    CompensatedSum sum = new CompensatedSum();
    Arrays.stream(logs).forEach(sum::add);
    double mean = sum.value() / logs.length;
    double[] centred = Arrays.stream(logs).map(log -> log - mean).toArray();
    double lambda = best(centred);
    return new BoxCox(lambda, Math.exp(mean), likelihood(centred, lambda) - logs.length * mean);
  }

  private static double best(double[] logs) {
    double widest = Arrays.stream(logs).map(Math::abs).max().orElse(0);
    double high = Math.min(GREATEST, GREATEST_EXPONENT / widest);
    double low = -high;
    while (high - low > 1e-9) {
      double left = high - GOLDEN * (high - low);
      double right = low + GOLDEN * (high - low);
      if (likelihood(logs, left) < likelihood(logs, right)) {
        low = left;
      } else {
        high = right;
      }
    }
    return (low + high) / 2;
  }

  private static double likelihood(double[] logs, double lambda) {
    Moments moments = new Moments();
    Arrays.stream(logs).map(log -> power(log, lambda)).forEach(moments::add);
    return -logs.length / 2.0 * Math.log(moments.sumOfSquares() / logs.length);
  }

  double transformed(double reading) {
    return power(Math.log(reading / geometricMean), lambda);
  }

  /** Empty for what no reading can be transformed to. */
  OptionalDouble reading(double transformed) {
    double base = 1 + lambda * transformed;
    double log = lambda == 0 ? transformed : Math.log1p(lambda * transformed) / lambda;
    return base > 0 ? OptionalDouble.of(geometricMean * Math.exp(log)) : OptionalDouble.empty();
  }

  private static double power(double log, double lambda) {
    return lambda == 0 ? log : Math.expm1(lambda * log) / lambda;
  }
}
