package dev.filmward.stats;

/**
 * The range of n independent standard normal numbers, to about 12 digits in both tails. A range
 * chart's false alarms are its tails beyond the limits.
 *
 * <p>With the smallest number at x and w as range, {@code F(w) = n} times the integral over x of
 * {@code phi(x) (Phi(x + w) - Phi(x))^(n - 1)}; the upper tail is integrated by itself. By the
 * trapezoidal rule, which for such integrands over the whole line converges exponentially.
 *
 * <p>Source: L. H. C. Tippett, On the extreme individuals and the range of samples taken from a
 * normal population, Biometrika 17 (1925) 364.
 *
 * @param n how many numbers, 2 to 100
 */
public record NormalRange(int n) implements Distribution {
  private static final double STEP = 1.0 / 16;
  private static final double REACH = 9;

  public NormalRange {
    if (!(n >= ChartConstants.SMALLEST_SIZE && n <= ChartConstants.LARGEST_SIZE)) {
      throw new IllegalArgumentException("a range is of 2 to 100 numbers, not " + n);
    }
  }

  @Override
  public double below(double w) {
    if (!(w > 0)) {
      return 0;
    }
    CompensatedSum sum = new CompensatedSum();
    for (double x = -REACH - w; x <= REACH; x += STEP) {
      sum.add(Normal.density(x) * Math.pow(between(x, x + w), n - 1));
    }
    return Math.min(1, n * STEP * sum.value());
  }

  @Override
  public double above(double w) {
    if (!(w > 0)) {
      return 1;
    }
    CompensatedSum sum = new CompensatedSum();
    for (double x = -REACH - w; x <= REACH; x += STEP) {
      double allAbove = Normal.STANDARD.above(x);
      double shareBeyond = Normal.STANDARD.above(x + w) / allAbove;
      double someBeyond = -Math.expm1((n - 1) * Math.log1p(-shareBeyond));
      sum.add(Normal.density(x) * Math.pow(allAbove, n - 1) * someBeyond);
    }
    return Math.min(1, n * STEP * sum.value());
  }

  /** Phi(b) - Phi(a) from the tails on the side where they are small. */
  private static double between(double a, double b) {
    Normal normal = Normal.STANDARD;
    return a + b > 0 ? normal.above(a) - normal.above(b) : normal.below(b) - normal.below(a);
  }

  @Override
  public double quantile(double p) {
    Probability.check(p);
    return p > 0.5
        ? upperQuantile(1 - p)
        : Math.exp(Inversion.solve(logW -> below(Math.exp(logW)), p, 0));
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q > 0.5
        ? quantile(1 - q)
        : Math.exp(Inversion.solve(logW -> above(Math.exp(logW)), q, 1));
  }
}
