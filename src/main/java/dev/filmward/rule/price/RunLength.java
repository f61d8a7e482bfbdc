package dev.filmward.rule.price;

import java.util.Arrays;
import java.util.function.DoubleSupplier;

/**
 * Distribution of the number of points up to and with the first signal, from a fresh start.
 *
 * <p>Kept as the probabilities of no signal within n points. Beyond some n each is a constant part
 * of the one before, as for every chart with a memory that fades; that tail is summed in closed
 * form. Immutable.
 *
 * <p>Source: C. W. Champ and W. H. Woodall, Exact results for Shewhart control charts with
 * supplementary runs rules, Technometrics 29 (1987) 393, for the chain; D. Brook and D. A. Evans,
 * An approach to the probability distribution of cusum run length, Biometrika 59 (1972) 539, for
 * the geometric tail.
 */
public final class RunLength {
  private static final int FEWEST_STEPS = 64;
  private static final int MOST_STEPS = 10_000;
  private static final int STEADY_STEPS = 16;
  private static final double STEADY = 4e-15;
  private static final double NOTHING = 1e-20;

  private final double[] survival;
  private final double ratio;

  private RunLength(double[] survival, double ratio) {
    this.survival = survival;
    this.ratio = ratio;
  }

  /** Of tests that never signal. */
  public static RunLength endless() {
    return new RunLength(new double[] {1}, 1);
  }

  /** Of independent points that signal with the probability p each, above 0 and at most 1. */
  public static RunLength geometric(double p) {
    if (!(p > 0 && p <= 1)) {
      throw new IllegalArgumentException("a point signals with a probability in (0, 1], not " + p);
    }
    return new RunLength(new double[] {1}, 1 - p);
  }

  /**
   * From the probabilities of no signal within one point, within two, and so on. If they do not
   * fall as far as a double can tell, the average is infinite.
   */
  static RunLength ofSurvival(DoubleSupplier next) {
    double[] survival = new double[FEWEST_STEPS + 1];
    survival[0] = 1;
    int last = 0;
    int steady = 0;
    double ratio = 1;
    while (survival[last] > NOTHING && last < leastSteps(survival[last], steady)) {
      survival = last + 1 == survival.length ? Arrays.copyOf(survival, 2 * last + 2) : survival;
      survival[last + 1] = next.getAsDouble();
      double newRatio = survival[last + 1] / survival[last];
      steady = Math.abs(newRatio - ratio) <= STEADY ? steady + 1 : 0;
      ratio = newRatio;
      last++;
    }
    if (survival[last] > NOTHING) {
      ratio = Math.pow(survival[last] / survival[last - STEADY_STEPS], 1.0 / STEADY_STEPS);
    }
    return new RunLength(Arrays.copyOf(survival, last + 1), Math.min(1, ratio));
  }

  /** Tests without a signal so far may have a long memory; then more steps tell. */
  private static int leastSteps(double survival, int steady) {
    if (survival >= 1 - STEADY || steady < STEADY_STEPS) {
      return MOST_STEPS;
    }
    return FEWEST_STEPS;
  }

  /** Average run length; infinite if there is no end in sight. */
  public double mean() {
    if (ratio == 1) {
      return Double.POSITIVE_INFINITY;
    }
    double sum = 0;
    for (double each : survival) {
      sum += each;
    }
    return sum + lastKept() * ratio / (1 - ratio);
  }

  /** Infinite if there is no end in sight. */
  public double standardDeviation() {
    if (ratio == 1) {
      return Double.POSITIVE_INFINITY;
    }
    double squares = 0;
    for (int n = 0; n < survival.length; n++) {
      squares += (2 * n + 1) * survival[n];
    }
    double rest = ratio / (1 - ratio);
    int n = survival.length - 1;
    squares += lastKept() * (rest * (2 * n + 1) + 2 * rest / (1 - ratio));
    double mean = mean();
    return Math.sqrt(squares - mean * mean);
  }

  /** Probability of a signal within n points. */
  public double signalledWithin(int n) {
    return 1 - survivalOf(n);
  }

  /**
   * The least number of points within which there is a signal with the probability p; the largest
   * of all longs if there is no end in sight.
   */
  public long pointsFor(double p) {
    if (!(p > 0 && p < 1)) {
      throw new IllegalArgumentException("a probability in (0, 1) is needed, not " + p);
    }
    int n = 0;
    while (n < survival.length && 1 - survival[n] < p) {
      n++;
    }
    if (n < survival.length) {
      return n;
    }
    if (ratio == 1) {
      return Long.MAX_VALUE;
    }
    double more = Math.log((1 - p) / lastKept()) / Math.log(ratio);
    return survival.length - 1 + (long) Math.ceil(more);
  }

  /** Up to the first signal of this chart or of another, independent of it. */
  public RunLength orOf(RunLength other) {
    double[] both = new double[Math.max(survival.length, other.survival.length)];
    for (int n = 0; n < both.length; n++) {
      both[n] = survivalOf(n) * other.survivalOf(n);
    }
    return new RunLength(both, ratio * other.ratio);
  }

  /** Up to the first signal of several independent charts that are like this one. */
  public RunLength ofFirstAmong(int charts) {
    if (charts < 1) {
      throw new IllegalArgumentException("there is at least one chart, not " + charts);
    }
    double[] all = survival.clone();
    for (int n = 0; n < all.length; n++) {
      all[n] = Math.pow(all[n], charts);
    }
    return new RunLength(all, Math.pow(ratio, charts));
  }

  private double survivalOf(int n) {
    return n < survival.length
        ? survival[n]
        : lastKept() * Math.pow(ratio, n - (survival.length - 1));
  }

  private double lastKept() {
    return survival[survival.length - 1];
  }
}
