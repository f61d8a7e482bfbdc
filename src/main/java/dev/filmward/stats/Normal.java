package dev.filmward.stats;

/**
 * The standard normal distribution, to about 15 digits in both tails, down to the smallest double.
 *
 * <p>Near the centre by the series of odd powers, whose terms do not alternate; from 1.5 on by the
 * continued fraction of Laplace for the ratio of tail to density. NaN gives NaN. All methods are
 * pure.
 *
 * <p>Source: G. Marsaglia, Evaluating the normal distribution, Journal of Statistical Software 11
 * (2004) 4; M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 26.2.14 for
 * the fraction and 26.2.23 for the first guess of a quantile, refined by Halley's method.
 */
public final class Normal implements Distribution {
  /** The only one there is. */
  public static final Normal STANDARD = new Normal();

  private static final double ROOT_OF_TWO_PI = Math.sqrt(2 * Math.PI);
  private static final double SERIES_REACH = 1.5;

  private Normal() {}

  public static double density(double z) {
    double square = z * z;
    double rest = Double.isInfinite(square) ? 0 : Math.fma(z, z, -square);
    return Math.exp(-square / 2) * (1 - rest / 2) / ROOT_OF_TWO_PI;
  }

  @Override
  public double below(double z) {
    return above(-z);
  }

  @Override
  public double above(double z) {
    if (z > SERIES_REACH) {
      return density(z) * tailRatio(z);
    }
    return z < -SERIES_REACH ? 1 - above(-z) : 0.5 - density(z) * oddSeries(z);
  }

  /** Natural logarithm of {@link #below}, also where that is too small for a double. */
  public double logBelow(double z) {
    if (z > SERIES_REACH) {
      return Math.log1p(-above(z));
    }
    return z < -SERIES_REACH
        ? -z * z / 2 + Math.log(tailRatio(-z) / ROOT_OF_TWO_PI)
        : Math.log(below(z));
  }

  @Override
  public double quantile(double p) {
    Probability.check(p);
    return p <= 0.5 ? -upperTailQuantile(p) : upperTailQuantile(1 - p);
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q <= 0.5 ? upperTailQuantile(q) : -upperTailQuantile(1 - q);
  }

  private double upperTailQuantile(double q) {
    double t = Math.sqrt(-2 * Math.log(q));
    double z =
        t
            - (2.515517 + t * (0.802853 + t * 0.010328))
                / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
    for (int i = 0; i < 3; i++) {
      double newton = (above(z) - q) / density(z);
      z += newton / (1 + z * newton / 2);
    }
    return z;
  }

  /** (Phi(z) - 1/2) / density as z + z^3/3 + z^5/15 + .... */
  private static double oddSeries(double z) {
    double term = z;
    double sum = 0;
    for (int k = 3; Math.abs(term) > Math.ulp(sum) / 4; k += 2) {
      sum += term;
      term *= z * z / k;
    }
    return sum;
  }

  /** Tail over density: 1/(z + 1/(z + 2/(z + 3/(z + ...)))), from the far end. */
  private static double tailRatio(double z) {
    double fraction = z;
    for (int k = (int) (20 + 400 / (z * z)); k >= 1; k--) {
      fraction = z + k / fraction;
    }
    return 1 / fraction;
  }
}
