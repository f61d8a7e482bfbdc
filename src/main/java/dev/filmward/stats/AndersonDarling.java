package dev.filmward.stats;

import java.util.Arrays;

/**
 * Test of whether numbers come from a normal distribution whose mean and standard deviation are
 * estimated from them. At least 8 numbers that are not all equal ({@link
 * IllegalArgumentException}).
 *
 * <p>Rounded readings with many ties look less normal than they are. Below 0.01 the probability is
 * an extrapolation that tells little but its order. Immutable.
 *
 * <p>Source: R. B. D'Agostino and M. A. Stephens, Goodness-of-Fit Techniques (1986), section 4.8.5:
 * the modification for a finite sample and, in table 4.9, the probability. The modification of 1974
 * has other critical values; the two are not to be mixed.
 *
 * @param statistic A squared
 * @param modified A squared for the size of the sample, whose critical values are 0.631 (10 %),
 *     0.752 (5 %), 0.873 (2.5 %) and 1.035 (1 %)
 * @param p probability of a greater one if the numbers are normal
 */
public record AndersonDarling(double statistic, double modified, double p) {
  private static final int FEWEST = 8;
  private static final double LEAST_OF_PARABOLA = 5.709 / (2 * 0.0186);

  public static AndersonDarling of(double[] values) {
    Moments moments = new Moments();
    Arrays.stream(values).forEach(moments::add);
    double deviation = moments.standardDeviation().orElse(0);
    if (values.length < FEWEST || !(deviation > 0)) {
      throw new IllegalArgumentException(
          "a test of normality takes " + FEWEST + " numbers or more that are not all equal");
    }
    double mean = moments.mean();
    double[] z = Arrays.stream(values).map(value -> (value - mean) / deviation).sorted().toArray();
    return of(statistic(z), values.length);
  }

  private static AndersonDarling of(double statistic, double n) {
    double modified = statistic * (1 + 0.75 / n + 2.25 / (n * n));
    return new AndersonDarling(statistic, modified, probability(modified));
  }

  private static double statistic(double[] sorted) {
    int n = sorted.length;
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < n; i++) {
      double logs =
          Normal.STANDARD.logBelow(sorted[i]) + Normal.STANDARD.logBelow(-sorted[n - 1 - i]);
      sum.addProduct(2 * i + 1, logs);
    }
    return -n - sum.value() / n;
  }

  /** The four pieces of table 4.9; the last one beyond its turning point would rise again. */
  static double probability(double a) {
    if (a < 0.2) {
      return 1 - Math.exp(-13.436 + a * (101.14 - 223.73 * a));
    }
    if (a < 0.34) {
      return 1 - Math.exp(-8.318 + a * (42.796 - 59.938 * a));
    }
    if (a < 0.6) {
      return Math.exp(0.9177 - a * (4.279 + 1.38 * a));
    }
    double cut = Math.min(a, LEAST_OF_PARABOLA);
    return Math.exp(1.2937 - cut * (5.709 - 0.0186 * cut));
  }
}
