package dev.filmward.rule.price;

import java.util.Arrays;

/**
 * Lets the probabilities of living through n points, one for each place a chart can be at, live
 * through one more point, again and again. Mutable, for one run.
 */
final class LinearChain {
  private final double[][] matrix;
  private final double[] start;
  private double[] survival;

  /**
   * A chain.
   *
   * @param matrix for each place how much the survival at each place counts after one more point
   * @param start the same for the place where the chart starts
   */
  LinearChain(double[][] matrix, double[] start) {
    this.matrix = matrix;
    this.start = start;
    survival = new double[start.length];
    Arrays.fill(survival, 1);
  }

  RunLength runLength() {
    return RunLength.ofSurvival(this::next);
  }

  private double next() {
    double atStart = product(start);
    double[] longer = new double[survival.length];
    for (int i = 0; i < longer.length; i++) {
      longer[i] = product(matrix[i]);
    }
    survival = longer;
    return atStart;
  }

  private double product(double[] row) {
    double sum = 0;
    for (int i = 0; i < row.length; i++) {
      sum += row[i] * survival[i];
    }
    return sum;
  }
}
