package dev.filmward.stats;

/**
 * The F distribution of a ratio of two mean squares: a/(a + b) of beta, with a and b half the
 * degrees of freedom; 12 digits up to some ten thousand degrees.
 *
 * <p>Source: Abramowitz and Stegun (1964), 26.6.2.
 *
 * @param numerator degrees of freedom, above 0
 * @param denominator degrees of freedom, above 0
 */
public record FisherF(double numerator, double denominator) implements Distribution {

  public FisherF {
    if (!(numerator > 0)
        || !(denominator > 0)
        || !Double.isFinite(numerator)
        || !Double.isFinite(denominator)) {
      throw new IllegalArgumentException(
          "degrees of freedom are above 0, not " + numerator + " and " + denominator);
    }
  }

  @Override
  public double below(double f) {
    if (!(f > 0)) {
      return 0;
    }
    return f == Double.POSITIVE_INFINITY
        ? 1
        : IncompleteBeta.below(upperShare(f), lowerShare(f), numerator / 2, denominator / 2);
  }

  @Override
  public double above(double f) {
    if (!(f > 0)) {
      return 1;
    }
    return f == Double.POSITIVE_INFINITY
        ? 0
        : IncompleteBeta.below(lowerShare(f), upperShare(f), denominator / 2, numerator / 2);
  }

  @Override
  public double quantile(double p) {
    Probability.check(p);
    return p > 0.5
        ? upperQuantile(1 - p)
        : Math.exp(Inversion.solve(logF -> below(Math.exp(logF)), p, 0));
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q > 0.5
        ? quantile(1 - q)
        : Math.exp(Inversion.solve(logF -> above(Math.exp(logF)), q, 0));
  }

  private double upperShare(double f) {
    return numerator * f / (denominator + numerator * f);
  }

  private double lowerShare(double f) {
    return denominator / (denominator + numerator * f);
  }
}
