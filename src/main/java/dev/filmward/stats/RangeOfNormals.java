package dev.filmward.stats;

/**
 * Mean and standard deviation of the range R of n independent standard normal numbers, by the
 * trapezoidal rule on a lattice that serves every n, so that the normal distribution is evaluated a
 * few hundred times in all. For such integrands over the whole line the rule converges
 * exponentially. Immutable.
 *
 * <p>Source: L. H. C. Tippett, On the extreme individuals and the range of samples taken from a
 * normal population, Biometrika 17 (1925) 364: {@code E R} is the integral of {@code 1 - Phi^n - (1
 * - Phi)^n}; the distribution of R is {@code F(w) = n} times the integral over x of {@code phi(x)
 * (Phi(x + w) - Phi(x))^(n - 1)}.
 */
final class RangeOfNormals {
  /** A sum of powers of two, so that squares of lattice points are exact. */
  private static final double STEP = 3.0 / 64;

  private static final double REACH = 176 * STEP;
  private static final int POINTS = (int) Math.round(2 * REACH / STEP) + 1;

  private final double[] below = new double[POINTS];
  private final double[] density = new double[POINTS];

  RangeOfNormals() {
    for (int i = 0; i < POINTS; i++) {
      double x = i * STEP - REACH;
      density[i] = Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
      below[i] = 0.5 + density[i] * oddSeries(x);
    }
  }

  /**
   * (Phi(x) - 1/2) / phi(x) as x + x^3/3 + x^5/15 + ..., whose terms all have the sign of x (G.
   * Marsaglia, Evaluating the normal distribution, Journal of Statistical Software 11 (2004) 4).
   */
  private static double oddSeries(double x) {
    double term = x;
    double sum = 0;
    for (int k = 3; sum + term != sum; k += 2) {
      sum += term;
      term *= x * x / k;
    }
    return sum;
  }

  double mean(int n) {
    CompensatedSum sum = new CompensatedSum();
    for (double p : below) {
      sum.add(1 - Math.pow(p, n) - Math.pow(1 - p, n));
    }
    return STEP * sum.value();
  }

  double standardDeviation(int n) {
    double mean = mean(n);
    return Math.sqrt(meanSquare(n) - mean * mean);
  }

  /**
   * Twice the integral of {@code w (1 - F(w))} over w from 0. At that end the trapezoidal rule is
   * short of {@code h^2 / 12} (Euler and Maclaurin); the next term is of order {@code h^(n + 1)}
   * for odd n and zero for even n, which matters for n = 3 only. There R is half the sum of three
   * differences with correlations of -1/2, which gives {@code E R^2} in closed form.
   */
  private double meanSquare(int n) {
    if (n == 3) {
      return 2 + 3 * Math.sqrt(3) / Math.PI;
    }
    CompensatedSum sum = new CompensatedSum();
    for (int k = 1; k < POINTS; k++) {
      sum.add(k * STEP * (1 - distribution(n, k)));
    }
    return 2 * (STEP * sum.value() + STEP * STEP / 12);
  }

  /** F at k steps. */
  private double distribution(int n, int k) {
    double sum = 0;
    for (int i = 0; i + k < POINTS; i++) {
      sum += density[i] * Math.pow(below[i + k] - below[i], n - 1);
    }
    // beyond the reach of the lattice everything lies below
    for (int i = Math.max(0, POINTS - k); i < POINTS; i++) {
      sum += density[i] * Math.pow(1 - below[i], n - 1);
    }
    return n * STEP * sum;
  }
}
