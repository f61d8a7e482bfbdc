package dev.filmward.rule.price;

import dev.filmward.chart.CusumDesign;
import dev.filmward.stats.Normal;

/**
 * Run length of cumulative sums of independent normal points whose mean is off the target by a
 * shift, in standard deviations of a point.
 *
 * <p>The sum is at 0 or between 0 and the limit, where the integral over it is taken by Gauss
 * nodes; 10 digits for limits up to 12. All methods are pure.
 *
 * <p>Source: E. S. Page, Continuous inspection schemes, Biometrika 41 (1954) 100, for the integral
 * equation; J. M. Lucas and R. B. Crosier, Technometrics 24 (1982) 199, for the head start and the
 * two-sided form.
 */
public final class CusumRunLength {
  private static final GaussLegendre GAUSS = new GaussLegendre(64);

  private CusumRunLength() {}

  /** Of the sum of deviations above the target. */
  public static RunLength high(CusumDesign design, double shift) {
    return oneSided(design, shift, design.headStart());
  }

  private static RunLength oneSided(CusumDesign design, double shift, double start) {
    int nodes = GAUSS.points();
    double[][] matrix = new double[nodes + 1][];
    for (int i = 0; i < nodes; i++) {
      matrix[i] = row(design, shift, GAUSS.node(i) * design.limit());
    }
    matrix[nodes] = row(design, shift, 0);
    return new LinearChain(matrix, row(design, shift, start)).runLength();
  }

  /** Where a sum goes from a place: to each node, and in the last entry to 0. */
  private static double[] row(CusumDesign design, double shift, double from) {
    double drift = shift - design.allowance();
    double[] row = new double[GAUSS.points() + 1];
    for (int i = 0; i < GAUSS.points(); i++) {
      double to = GAUSS.node(i) * design.limit();
      row[i] = GAUSS.weight(i) * design.limit() * Normal.density(to - from - drift);
    }
    row[GAUSS.points()] = Normal.STANDARD.below(-from - drift);
    return row;
  }

  /**
   * Average run length up to the first signal of either sum. Exact where both sums cannot be above
   * 0 at once for long, that is with a head start of at most half the limit and an allowance that
   * is not tiny.
   */
  public static double twoSidedMean(CusumDesign design, double shift) {
    double highFromZero = oneSided(design, shift, 0).mean();
    double lowFromZero = oneSided(design, -shift, 0).mean();
    double high = high(design, shift).mean();
    double low = high(design, -shift).mean();
    if (Double.isInfinite(lowFromZero) || Double.isInfinite(highFromZero)) {
      return Math.min(high, low);
    }
    return (high * lowFromZero + highFromZero * (low - lowFromZero)) / (highFromZero + lowFromZero);
  }
}
