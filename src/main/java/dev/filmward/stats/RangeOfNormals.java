package dev.filmward.stats;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.special.Erf;

/**
 * Mean and standard deviation of the range of n independent standard normal numbers.
 *
 * <p>The density of the range w is {@code n (n - 1)} times the integral over all u of {@code phi(u
 * - w/2) phi(u + w/2) (Phi(u + w/2) - Phi(u - w/2))^(n - 2)} (H. A. David and H. N. Nagaraja, Order
 * Statistics, 3rd ed. 2003, section 2.3, with u the middle of the two extremes). The integral over
 * u is by the trapezoidal rule, which converges exponentially for such a function, over w by a
 * Gauss-Legendre rule. What does not depend on n is computed once. Immutable.
 */
final class RangeOfNormals {
  private static final int RANGES = 80;
  private static final double GREATEST_RANGE = 14;
  private static final int MIDDLES = 36;
  private static final double MIDDLE_STEP = 0.2;

  private final double[] range = new double[RANGES];
  private final double[] weight = new double[RANGES];
  private final double[][] extremes = new double[RANGES][MIDDLES];
  private final double[][] between = new double[RANGES][MIDDLES];

  RangeOfNormals() {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(RANGES, 0, GREATEST_RANGE);
    for (int i = 0; i < RANGES; i++) {
      double w = rule.getPoint(i);
      range[i] = w;
      weight[i] = rule.getWeight(i);
      for (int j = 0; j < MIDDLES; j++) {
        double u = j * MIDDLE_STEP;
        double bothSides = j == 0 ? MIDDLE_STEP : 2 * MIDDLE_STEP;
        extremes[i][j] = bothSides * Math.exp(-u * u - w * w / 4) / (2 * Math.PI);
        between[i][j] = 0.5 * Erf.erf((u - w / 2) / Math.sqrt(2), (u + w / 2) / Math.sqrt(2));
      }
    }
  }

  /** Mean and standard deviation of a range. */
  record Range(double mean, double deviation) {}

  Range of(int n) {
    double[] probability = new double[RANGES];
    double mean = 0;
    for (int i = 0; i < RANGES; i++) {
      probability[i] = weight[i] * density(n, i);
      mean += probability[i] * range[i];
    }
    double variance = 0;
    for (int i = 0; i < RANGES; i++) {
      variance += probability[i] * (range[i] - mean) * (range[i] - mean);
    }
    return new Range(mean, Math.sqrt(variance));
  }

  private double density(int n, int i) {
    double sum = 0;
    for (int j = 0; j < MIDDLES; j++) {
      sum += extremes[i][j] * Math.pow(between[i][j], n - 2);
    }
    return (double) n * (n - 1) * sum;
  }
}
