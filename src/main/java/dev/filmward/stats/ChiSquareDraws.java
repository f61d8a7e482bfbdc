package dev.filmward.stats;

import java.util.SplittableRandom;

/**
 * Draws numbers from chi-square distributions, always the same ones from the same seed. Mutable,
 * for one thread. Only {@link StrictMath}, so that every machine gives the same.
 *
 * <p>Source: G. Marsaglia and W. W. Tsang, A simple method for generating gamma variables, ACM
 * Transactions on Mathematical Software 26 (2000) 363; normal numbers by the polar method of G.
 * Marsaglia and T. A. Bray, SIAM Review 6 (1964) 260.
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
        : 2 * gamma(shape + 1) * StrictMath.pow(1 - random.nextDouble(), 1 / shape);
  }

  private double gamma(double shape) {
    double d = shape - THIRD;
    double c = 1 / Math.sqrt(9 * d);
    for (; ; ) {
      double x = normal();
      double root = 1 + c * x;
      if (root > 0) {
        double cube = root * root * root;
        double logU = StrictMath.log(1 - random.nextDouble());
        if (logU < x * x / 2 + d - d * cube + d * StrictMath.log(cube)) {
          return d * cube;
        }
      }
    }
  }

  private double normal() {
    for (; ; ) {
      double u = 2 * random.nextDouble() - 1;
      double v = 2 * random.nextDouble() - 1;
      double square = u * u + v * v;
      if (square > 0 && square < 1) {
        return u * Math.sqrt(-2 * StrictMath.log(square) / square);
      }
    }
  }
}
