package dev.filmward.drift;

import dev.filmward.stats.FisherF;
import dev.filmward.stats.StudentT;
import java.util.Optional;

/**
 * Whether two spans of sample means have different levels, and different spreads within their
 * samples, each with a 95 % confidence interval. The unit is that of the means. Immutable.
 *
 * <p>Levels: B. L. Welch, The generalization of "Student's" problem when several different
 * population variances are involved, Biometrika 34 (1947) 28, with the number of means that each
 * span is worth after its lag-1 autocorrelation in place of their number ({@link Side}). Spreads:
 * the ratio of two variances by the distribution of F, ISO 2854.
 *
 * @param level of the second less that of the first
 * @param p probability of a difference of levels as great if there is none
 * @param spread standard deviation within samples of the second over that of the first; empty where
 *     one of them has none
 */
public record TwoSpans(Estimate level, double p, Optional<Estimate> spread) {
  private static final double TAIL = 0.025;

  /**
   * What one span amounts to.
   *
   * @param worth number of independent means that tell as much of the level, at least 2
   * @param mean of the means
   * @param variance of the means
   * @param withinDegrees degrees of freedom of the variance within samples, 0 where there is none
   * @param withinVariance of readings about the mean of their sample
   */
  public record Side(
      double worth, double mean, double variance, double withinDegrees, double withinVariance) {
    public Side {
      if (!(worth >= 2) || !(variance >= 0) || !(withinDegrees >= 0) || !(withinVariance >= 0)) {
        throw new IllegalArgumentException(
            "a span is worth at least two means, with variances that are not negative");
      }
    }

    private boolean hasSpread() {
      return withinDegrees > 0 && withinVariance > 0;
    }
  }

  /** Compares a second span with a first one. */
  public static TwoSpans of(Side first, Side second) {
    double a = first.variance / first.worth;
    double b = second.variance / second.worth;
    double difference = second.mean - first.mean;
    double error = Math.sqrt(a + b);
    if (!(error > 0)) {
      return new TwoSpans(
          Estimate.symmetric(difference, 0), difference == 0 ? 1 : 0, spread(first, second));
    }
    double degrees = (a + b) * (a + b) / (a * a / (first.worth - 1) + b * b / (second.worth - 1));
    StudentT law = new StudentT(degrees);
    return new TwoSpans(
        Estimate.symmetric(difference, law.upperQuantile(TAIL) * error),
        2 * law.above(Math.abs(difference) / error),
        spread(first, second));
  }

  /** Whether the levels differ more than chance explains, at 5 %. */
  public boolean levelsDiffer() {
    return level.isNotZero();
  }

  private static Optional<Estimate> spread(Side first, Side second) {
    if (!first.hasSpread() || !second.hasSpread()) {
      return Optional.empty();
    }
    double ratio = second.withinVariance / first.withinVariance;
    FisherF law = new FisherF(second.withinDegrees, first.withinDegrees);
    return Optional.of(
        new Estimate(
            Math.sqrt(ratio),
            Math.sqrt(ratio / law.upperQuantile(TAIL)),
            Math.sqrt(ratio / law.quantile(TAIL))));
  }
}
