package dev.filmward.stats;

import org.apache.commons.math3.special.Gamma;

/**
 * The chi-square distribution, by the incomplete gamma functions of Commons Math: 13 digits up to
 * some hundred degrees of freedom, 11 up to some ten thousand.
 *
 * <p>Source: Abramowitz and Stegun (1964), 26.4.19.
 *
 * @param degrees of freedom, above 0, need not be whole
 */
public record ChiSquare(double degrees) implements Distribution {
  private static final double ACCURACY = 1e-15;
  private static final int MOST_TERMS = 100_000;

  public ChiSquare {
    if (!(degrees > 0) || !Double.isFinite(degrees)) {
      throw new IllegalArgumentException("degrees of freedom are above 0, not " + degrees);
    }
  }

  @Override
  public double below(double x) {
    return x > 0 ? Gamma.regularizedGammaP(degrees / 2, x / 2, ACCURACY, MOST_TERMS) : 0;
  }

  @Override
  public double above(double x) {
    return x > 0 ? Gamma.regularizedGammaQ(degrees / 2, x / 2, ACCURACY, MOST_TERMS) : 1;
  }

  @Override
  public double quantile(double p) {
    Probability.check(p);
    return p > 0.5 ? upperQuantile(1 - p) : solved(Inversion.solve(this::logBelow, p, start()));
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q > 0.5 ? quantile(1 - q) : solved(Inversion.solve(this::logAbove, q, start()));
  }

  private double start() {
    return Math.log(degrees);
  }

  private double logBelow(double logX) {
    return below(Math.exp(logX));
  }

  private double logAbove(double logX) {
    return above(Math.exp(logX));
  }

  private static double solved(double logX) {
    return Math.exp(logX);
  }
}
