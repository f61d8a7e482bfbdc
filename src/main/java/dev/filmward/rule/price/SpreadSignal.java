package dev.filmward.rule.price;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.ChiSquare;
import dev.filmward.stats.Distribution;
import dev.filmward.stats.NormalRange;

/**
 * Probability that a subgroup of normal readings is beyond the limits of three standard deviations
 * on a chart of spread; exact. Such a chart warns more often than one of means, since ranges and
 * deviations are skew: one of 217 ranges of five.
 *
 * <p>All methods are pure. The ratio is that of the standard deviation of the readings to the one
 * that the limits were made for, above 0; 1 gives the false alarms.
 */
public final class SpreadSignal {
  private SpreadSignal() {}

  /** Of the range of {@code size} readings, 2 to 100. */
  public static double ofRange(int size, double ratio) {
    checkRatio(ratio);
    Distribution range = new NormalRange(size);
    return range.above(ChartConstants.factorD2(size) / ratio)
        + range.below(ChartConstants.factorD1(size) / ratio);
  }

  /** Of the standard deviation of {@code size} readings, 2 to 100. */
  public static double ofDeviation(int size, double ratio) {
    checkRatio(ratio);
    double upper = ChartConstants.factorB6(size) / ratio;
    double lower = ChartConstants.factorB5(size) / ratio;
    int degrees = size - 1;
    Distribution squares = new ChiSquare(degrees);
    return squares.above(degrees * upper * upper) + squares.below(degrees * lower * lower);
  }

  private static void checkRatio(double ratio) {
    if (!(ratio > 0) || !Double.isFinite(ratio)) {
      throw new IllegalArgumentException("a ratio of deviations is above 0, not " + ratio);
    }
  }
}
