package dev.filmward.composition;

import dev.filmward.stats.Normal;
import java.util.Optional;

/**
 * How two figures move together, between -1 and 1, and how sure that is. The limits hold for normal
 * samples that do not depend on each other; samples that drift together are more alike than they
 * say. Immutable.
 *
 * <p>Source: K. Pearson, Philosophical Transactions A 187 (1896) 253; limits by R. A. Fisher, On
 * the "probable error" of a coefficient of correlation deduced from a small sample, Metron 1 (1921)
 * 3: {@code tanh(atanh(r) +- z / sqrt(n - 3))}.
 *
 * @param samples at least 4, below which there are no limits
 * @param lower and {@code upper}: limits at 95 % confidence
 */
public record Correlation(long samples, double r, double lower, double upper) {
  /** Fewest samples that have limits. */
  static final long FEWEST = 4;

  private static final double CONFIDENCE_95 = Normal.STANDARD.quantile(0.975);

  /** From sums of squares and products; empty where a figure does not vary or samples are few. */
  static Optional<Correlation> of(long samples, double xx, double xy, double yy) {
    double r = xy / Math.sqrt(xx * yy);
    if (samples < FEWEST || !Double.isFinite(r)) {
      return Optional.empty();
    }
    double bounded = Math.max(-1, Math.min(1, r));
    double z = atanh(bounded);
    double reach = CONFIDENCE_95 / Math.sqrt(samples - 3.0);
    return Optional.of(
        new Correlation(samples, bounded, Math.tanh(z - reach), Math.tanh(z + reach)));
  }

  /** Whether chance alone hardly gives so much. */
  public boolean isSure() {
    return lower > 0 || upper < 0;
  }

  private static double atanh(double r) {
    return (Math.log1p(r) - Math.log1p(-r)) / 2;
  }
}
