package dev.filmward.drift;

import dev.filmward.stats.Normal;

/**
 * How far the likelihood of a wrong place of a step rises above that of the right one. The
 * logarithm of their ratio is a random walk to either side of the right place, with negative drift;
 * its greatest value has the distribution given here. The first sample after the step counts in
 * full, later ones by {@code 1 - phi} (what the noise's lag-1 coefficient leaves), and a place's
 * own last sample is undone when it is passed.
 *
 * <p>Source: D. V. Hinkley, Inference about the change-point in a sequence of random variables,
 * Biometrika 57 (1970) 1, for independent noise; the autoregressive case by writing out the
 * whitened differences. Immutable.
 */
final class StepPlaceLaw {
  private static final double FIRST_SAMPLE_REACH = 7;
  private static final double FIRST_SAMPLE_SPACING = 0.05;

  private final double size;
  private final double phi;
  private final Survival after;
  private final Survival before;

  /**
   * The law for a step.
   *
   * @param size of the step in standard deviations of the innovations
   */
  StepPlaceLaw(double size, double phi) {
    this.size = size;
    this.phi = phi;
    double step = size * (1 - phi);
    before = survival(step, step / 6, Math.copySign(size, -1));
    double undone = size * phi;
    double spacing = Math.min(step / 6, Math.abs(undone) / 3);
    after = phi == 0 ? before : survival(step, spacing, undone);
  }

  private static Survival survival(double step, double spacing, double undone) {
    return Survival.of(new LatticeSteps(step, step * step / 2, spacing), cut(undone));
  }

  /** Survives while {@code undone x <= distance + undone^2 / 2}. */
  private static Survival.Cut cut(double undone) {
    return new Survival.Cut() {
      @Override
      public double lower(double distance) {
        return undone < 0 ? edge(distance) : Double.NEGATIVE_INFINITY;
      }

      @Override
      public double upper(double distance) {
        return undone > 0 ? edge(distance) : Double.POSITIVE_INFINITY;
      }

      private double edge(double distance) {
        return (distance + undone * undone / 2) / undone;
      }
    };
  }

  /** Probability that no wrong place is better than the right one by more than {@code excess}. */
  double below(double excess) {
    double sum = 0;
    for (double z = -FIRST_SAMPLE_REACH; z <= FIRST_SAMPLE_REACH; z += FIRST_SAMPLE_SPACING) {
      double undone = size * phi;
      sum +=
          Normal.density(z)
              * after(excess + size * z + size * size / 2)
              * before.at(excess + undone * z + undone * undone / 2);
    }
    return sum * FIRST_SAMPLE_SPACING;
  }

  private double after(double distance) {
    return phi == 0 && distance < 0 ? 0 : after.at(distance);
  }

  /** The excess that is kept with a probability; 0 where even that is kept more often. */
  double quantile(double probability) {
    double low = 0;
    double high = StepPlaceLimits.GREATEST;
    if (below(low) >= probability) {
      return 0;
    }
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (below(middle) < probability) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
