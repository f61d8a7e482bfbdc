package dev.filmward.stats;

/**
 * The beta distribution on 0 to 1.
 *
 * <p>Source: Abramowitz and Stegun (1964), 26.5; quantiles are sought on the scale of the log-odds.
 *
 * @param a first shape, above 0
 * @param b second shape, above 0
 */
public record BetaNumbers(double a, double b) implements Distribution {

  public BetaNumbers {
    if (!(a > 0) || !(b > 0) || !Double.isFinite(a) || !Double.isFinite(b)) {
      throw new IllegalArgumentException("shapes are above 0, not " + a + " and " + b);
    }
  }

  @Override
  public double below(double x) {
    if (x >= 1) {
      return 1;
    }
    return x > 0 ? IncompleteBeta.below(x, 1 - x, a, b) : 0;
  }

  @Override
  public double above(double x) {
    if (x >= 1) {
      return 0;
    }
    return x > 0 ? IncompleteBeta.below(1 - x, x, b, a) : 1;
  }

  @Override
  public double quantile(double p) {
    Probability.check(p);
    return p > 0.5
        ? upperQuantile(1 - p)
        : share(Inversion.solve(u -> IncompleteBeta.below(share(u), share(-u), a, b), p, 0));
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q > 0.5
        ? quantile(1 - q)
        : share(Inversion.solve(u -> IncompleteBeta.below(share(-u), share(u), b, a), q, 0));
  }

  private static double share(double logOdds) {
    return 1 / (1 + Math.exp(-logOdds));
  }
}
