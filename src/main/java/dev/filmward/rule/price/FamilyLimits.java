package dev.filmward.rule.price;

import dev.filmward.chart.EwmaDesign;
import dev.filmward.stats.Normal;
import java.util.function.DoubleUnaryOperator;

/**
 * Limits for a family of charts that are looked at together, so wide that the first false alarm of
 * any of them comes after a given number of points on average. The charts are taken to be
 * independent; with layers that move together false alarms are a little rarer. All methods are
 * pure.
 *
 * <p>Source: the survival of independent charts is the product of theirs.
 */
public final class FamilyLimits {
  /** Average run length of a single chart with limits of three standard deviations. */
  public static final double OF_THREE_SIGMA = 1 / (2 * Normal.STANDARD.above(3));

  private static final double LEAST_REACH = 0.5;
  private static final double GREATEST_REACH = 8;

  private FamilyLimits() {}

  /** For charts of single points, in standard deviations. */
  public static double ofPoints(int charts, double meanRunLength) {
    check(charts, meanRunLength);
    double anyOfThem = 1 / meanRunLength;
    double each = -Math.expm1(Math.log1p(-anyOfThem) / charts);
    return Normal.STANDARD.upperQuantile(each / 2);
  }

  /** For moving averages with asymptotic limits. */
  public static EwmaDesign ofEwma(double lambda, int charts, double meanRunLength) {
    check(charts, meanRunLength);
    double reach =
        bisect(
            candidate -> EwmaRunLength.of(ewma(lambda, candidate), 0).ofFirstAmong(charts).mean(),
            meanRunLength);
    return ewma(lambda, reach);
  }

  private static EwmaDesign ewma(double lambda, double reach) {
    return new EwmaDesign(lambda, reach, EwmaDesign.Limits.ASYMPTOTIC);
  }

  private static double bisect(DoubleUnaryOperator rising, double wanted) {
    double low = LEAST_REACH;
    double high = GREATEST_REACH;
    while (high - low > 1e-9) {
      double middle = (low + high) / 2;
      if (rising.applyAsDouble(middle) < wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static void check(int charts, double meanRunLength) {
    if (charts < 1 || !(meanRunLength > 1) || !Double.isFinite(meanRunLength)) {
      throw new IllegalArgumentException(
          "no limits for " + charts + " charts and a run length of " + meanRunLength);
    }
  }
}
