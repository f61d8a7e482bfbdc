package dev.filmward.stats;

/**
 * A continuous distribution with both tails: the far one is computed by itself, never as 1 less the
 * near one, so that small probabilities keep their digits.
 *
 * <p>Probabilities given to quantiles lie strictly between 0 and 1 ({@link
 * IllegalArgumentException}). Implementations are immutable.
 */
public interface Distribution {

  /** Probability of a value of at most x. */
  double below(double x);

  /** Probability of a value greater than x. */
  double above(double x);

  /** The value that has the probability p at or below it. */
  double quantile(double p);

  /** The value that has the probability q above it. */
  double upperQuantile(double q);
}
