package dev.filmward.stats;

import java.util.function.DoubleUnaryOperator;

/**
 * The non-central t distribution of {@code (Z + delta) / S}, where Z is standard normal and S the
 * standard deviation of a normal sample over that of its population. From it come exact limits for
 * capability indices and tolerance factors. 12 digits, in both tails, for any delta.
 *
 * <p>The tail is the mean of {@code Phi(t S - delta)} over S, summed by the trapezoidal rule over
 * {@code ln S}, which for such integrands converges exponentially; the sum of the weights
 * normalises it. Series in delta (AS 243, and Benton and Krishnamoorthy 2003) lose digits or
 * underflow for the large delta of a good Cpk of a large sample.
 *
 * <p>Source: N. L. Johnson, S. Kotz and N. Balakrishnan, Continuous Univariate Distributions 2, 2nd
 * ed. (1995), chapter 31, for the integral; L. N. Trefethen and J. A. C. Weideman, The
 * exponentially convergent trapezoidal rule, SIAM Review 56 (2014) 385.
 *
 * @param degrees of freedom, above 0
 * @param delta non-centrality
 */
public record NoncentralT(double degrees, double delta) implements Distribution {
  private static final double NEGLIGIBLE = 1e-18;

  public NoncentralT {
    if (!(degrees > 0) || !Double.isFinite(degrees) || !Double.isFinite(delta)) {
      throw new IllegalArgumentException(
          "degrees of freedom are above 0 and delta is finite, not " + degrees + ", " + delta);
    }
  }

  /**
   * The delta for which a value greater than {@code t} has the probability {@code q}: with the
   * observed t and q of 0.05, the exact lower 95 % confidence limit of delta.
   */
  public static double deltaWithAbove(double t, double degrees, double q) {
    Probability.check(q);
    return Inversion.solve(delta -> new NoncentralT(degrees, delta).above(t), q, t);
  }

  @Override
  public double below(double t) {
    return meanOverS(s -> Normal.STANDARD.below(t * s - delta));
  }

  @Override
  public double above(double t) {
    return meanOverS(s -> Normal.STANDARD.above(t * s - delta));
  }

  @Override
  public double quantile(double p) {
    Probability.check(p);
    return p > 0.5 ? upperQuantile(1 - p) : Math.sinh(Inversion.solve(this::belowSinh, p, start()));
  }

  @Override
  public double upperQuantile(double q) {
    Probability.check(q);
    return q > 0.5 ? quantile(1 - q) : Math.sinh(Inversion.solve(this::aboveSinh, q, start()));
  }

  private double belowSinh(double u) {
    return below(Math.sinh(u));
  }

  private double aboveSinh(double u) {
    return above(Math.sinh(u));
  }

  private double start() {
    return Math.signum(delta) * Math.log(Math.abs(delta) + Math.hypot(delta, 1));
  }

  private double meanOverS(DoubleUnaryOperator tail) {
    double step = Math.min(0.09, 0.4 / Math.sqrt(2 * degrees + delta * delta));
    WeightedMean mean = new WeightedMean(tail.applyAsDouble(1));
    sumUp(mean, tail, step);
    sumUp(mean, tail, -step);
    return mean.sum / mean.weights;
  }

  /** From S = 1 outwards until neither weights nor terms add anything. */
  private void sumUp(WeightedMean mean, DoubleUnaryOperator tail, double step) {
    double last = mean.first;
    for (int i = 1; ; i++) {
      double logS = i * step;
      double weight = Math.exp(degrees * (logS - Math.expm1(2 * logS) / 2));
      double term = weight == 0 ? 0 : weight * tail.applyAsDouble(Math.exp(logS));
      mean.sum += term;
      mean.weights += weight;
      boolean falling = term <= last;
      if (weight <= NEGLIGIBLE * mean.weights && falling && term <= NEGLIGIBLE * mean.sum) {
        return;
      }
      last = term;
    }
  }

  private static final class WeightedMean {
    final double first;
    double sum;
    double weights = 1;

    WeightedMean(double first) {
      this.first = first;
      this.sum = first;
    }
  }
}
