package dev.filmward.stats;

import java.util.SplittableRandom;

/**
 * Draws numbers from chi-square distributions, always the same ones from the same seed. Mutable,
 * for one thread.
 *
 * <p>Source: G. Marsaglia and W. W. Tsang, A simple method for generating gamma variables, ACM
 * Transactions on Mathematical Software 26 (2000) 363.
 */
public final class ChiSquareDraws {
  private static final double THIRD = 1.0 / 3;

  private final SplittableRandom random;

  public ChiSquareDraws(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /**
   * The next number.
   *
   * @param degrees of freedom, at least 1
   */
  public double next(long degrees) {
    if (degrees < 1) {
      throw new IllegalArgumentException("degrees of freedom are at least 1, not " + degrees);
    }
    double shape = degrees / 2.0;
    return shape >= 1
        ? 2 * gamma(shape)
        : 2 * gamma(shape + 1) * Math.pow(1 - random.nextDouble(), 1 / shape);
  }

  private double gamma(double shape) {
    double d = shape - THIRD;
    double c = 1 / Math.sqrt(9 * d);
    for (; ; ) {
      double x = random.nextGaussian();
      double root = 1 + c * x;
      if (root > 0) {
        double cube = root * root * root;
        double logU = Math.log(1 - random.nextDouble());
        if (logU < x * x / 2 + d - d * cube + d * Math.log(cube)) {
          return d * cube;
        }
      }
    }
  }
}
