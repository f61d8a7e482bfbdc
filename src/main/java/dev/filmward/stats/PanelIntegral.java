package dev.filmward.stats;

import java.util.function.DoubleUnaryOperator;

/**
 * Integrates over one panel by the rule of Gauss and Legendre with five points, which is exact for
 * polynomials up to the ninth degree. For a normal density half a standard deviation a panel leaves
 * an error of some 1e-13. Stateless.
 *
 * <p>Source: Abramowitz and Stegun (1964), 25.4.30; the nodes are written as the roots of the
 * Legendre polynomial of fifth degree.
 */
public final class PanelIntegral {
  private static final double ROOT = 2 * Math.sqrt(10.0 / 7);
  private static final double NEAR = Math.sqrt(5 - ROOT) / 3;
  private static final double FAR = Math.sqrt(5 + ROOT) / 3;
  private static final double MIDDLE_WEIGHT = 128.0 / 225;
  private static final double NEAR_WEIGHT = (322 + 13 * Math.sqrt(70)) / 900;
  private static final double FAR_WEIGHT = (322 - 13 * Math.sqrt(70)) / 900;

  private PanelIntegral() {}

  /** Of a function that is smooth from one end to the other. */
  public static double of(DoubleUnaryOperator function, double from, double to) {
    double centre = (from + to) / 2;
    double half = (to - from) / 2;
    double sum = MIDDLE_WEIGHT * function.applyAsDouble(centre);
    sum += NEAR_WEIGHT * pair(function, centre, NEAR * half);
    sum += FAR_WEIGHT * pair(function, centre, FAR * half);
    return half * sum;
  }

  private static double pair(DoubleUnaryOperator function, double centre, double distance) {
    return function.applyAsDouble(centre - distance) + function.applyAsDouble(centre + distance);
  }
}
