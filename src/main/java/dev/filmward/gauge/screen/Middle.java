package dev.filmward.gauge.screen;

import java.util.Arrays;

/** The median of some numbers, and a standard deviation from it. Stateless. */
final class Middle {
  /** Of normal numbers, the standard deviation over the median distance from the median. */
  private static final double FROM_MEDIAN_DISTANCE = 1.4826;

  private Middle() {}

  /**
   * @param values at least one; sorted by this
   */
  static double of(double[] values) {
    Arrays.sort(values);
    int half = values.length / 2;
    return values.length % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
  }

  /** As above, for the first numbers of an array. */
  static double of(double[] values, int count) {
    return of(Arrays.copyOf(values, count));
  }

  /**
   * Standard deviation of mostly normal numbers about 0.
   *
   * @param distances from their middle, at least one
   */
  static double deviation(double[] distances) {
    return FROM_MEDIAN_DISTANCE * of(Arrays.stream(distances).map(Math::abs).toArray());
  }
}
