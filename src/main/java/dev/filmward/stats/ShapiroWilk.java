package dev.filmward.stats;

import java.util.Arrays;

/**
 * Test of whether 3 to 5000 numbers come from a normal distribution. They must not all be equal
 * ({@link IllegalArgumentException}). Immutable.
 *
 * <p>Source: P. Royston, Remark AS R94: a remark on algorithm AS 181, the W-test for normality,
 * Applied Statistics 44 (1995) 547, for uncensored samples.
 *
 * @param w statistic, at most 1
 * @param p probability of a smaller one if the numbers are normal
 */
public record ShapiroWilk(double w, double p) {
  private static final int FEWEST = 3;
  private static final int MOST = 5000;

  private static final double[] LAST = {0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056};
  private static final double[] NEXT = {0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633};
  private static final double[] SMALL_MEAN = {0.544, -0.39978, 0.025054, -6.714e-4};
  private static final double[] SMALL_LOG_DEVIATION = {1.3822, -0.77857, 0.062767, -0.0020322};
  private static final double[] MEAN = {-1.5861, -0.31082, -0.083751, 0.0038915};
  private static final double[] LOG_DEVIATION = {-0.4803, -0.082676, 0.0030302};
  private static final double[] SMALL_GAMMA = {-2.273, 0.459};
  private static final int LARGEST_SMALL = 11;

  public static ShapiroWilk of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    if (n < FEWEST || n > MOST || !(sorted[0] < sorted[n - 1])) {
      throw new IllegalArgumentException(
          "the test takes " + FEWEST + " to " + MOST + " numbers that are not all equal");
    }
    double w = statistic(sorted, weights(n));
    return new ShapiroWilk(w, n == FEWEST ? ofThree(w) : probability(w, n));
  }

  private static double statistic(double[] sorted, double[] weights) {
    int n = sorted.length;
    Moments moments = new Moments();
    Arrays.stream(sorted).forEach(moments::add);
    CompensatedSum contrast = new CompensatedSum();
    for (int i = 0; i < weights.length; i++) {
      contrast.addProduct(weights[i], sorted[n - 1 - i] - sorted[i]);
    }
    return Math.min(1, contrast.value() * contrast.value() / moments.sumOfSquares());
  }

  /** Of the greatest less the smallest number, of the second greatest less the second, .... */
  private static double[] weights(int n) {
    if (n == FEWEST) {
      return new double[] {Math.sqrt(0.5)};
    }
    double[] scores = new double[n / 2];
    for (int i = 0; i < scores.length; i++) {
      scores[i] = Normal.STANDARD.upperQuantile((i + 1 - 0.375) / (n + 0.25));
    }
    double squares = 2 * Arrays.stream(scores).map(score -> score * score).sum();
    double u = 1 / Math.sqrt(n);
    double[] weights = scores.clone();
    weights[0] = polynomial(LAST, u) + scores[0] / Math.sqrt(squares);
    int exact = 1;
    if (n > 5) {
      weights[1] = polynomial(NEXT, u) + scores[1] / Math.sqrt(squares);
      exact = 2;
    }
    double restOfSquares = squares;
    double restOfOne = 1;
    for (int i = 0; i < exact; i++) {
      restOfSquares -= 2 * scores[i] * scores[i];
      restOfOne -= 2 * weights[i] * weights[i];
    }
    for (int i = exact; i < weights.length; i++) {
      weights[i] = scores[i] / Math.sqrt(restOfSquares / restOfOne);
    }
    return weights;
  }

  private static double probability(double w, int n) {
    double logRest = Math.log1p(-w);
    if (n > LARGEST_SMALL) {
      double log = Math.log(n);
      double deviation = Math.exp(polynomial(LOG_DEVIATION, log));
      return Normal.STANDARD.above((logRest - polynomial(MEAN, log)) / deviation);
    }
    double gamma = polynomial(SMALL_GAMMA, n);
    if (logRest >= gamma) {
      return 0;
    }
    double deviation = Math.exp(polynomial(SMALL_LOG_DEVIATION, n));
    return Normal.STANDARD.above(
        (-Math.log(gamma - logRest) - polynomial(SMALL_MEAN, n)) / deviation);
  }

  /** Exact for three numbers. */
  private static double ofThree(double w) {
    return Math.max(0, 6 / Math.PI * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75))));
  }

  private static double polynomial(double[] coefficients, double x) {
    double value = 0;
    for (int i = coefficients.length - 1; i >= 0; i--) {
      value = value * x + coefficients[i];
    }
    return value;
  }
}
