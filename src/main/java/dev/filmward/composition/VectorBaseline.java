package dev.filmward.composition;

import dev.filmward.stats.CrossMoments;
import java.io.Serializable;

/**
 * Sums up vectors, one for each sample in time order, that a T squared chart of single vectors is
 * computed from. Mutable, for one thread, constant memory; a baseline merges with the one that
 * follows it in time.
 */
public final class VectorBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final CrossMoments vectors;
  private final CrossMoments steps;
  private double[] first = {};
  private double[] last = {};

  public VectorBaseline(int width) {
    vectors = new CrossMoments(width);
    steps = new CrossMoments(width);
  }

  public void add(double[] vector) {
    vectors.add(vector);
    if (vectors.count() == 1) {
      first = vector.clone();
    } else {
      steps.add(difference(vector, last));
    }
    last = vector.clone();
  }

  /** Adds all vectors of a later baseline; the later one stays as it is. */
  public void merge(VectorBaseline later) {
    if (later.samples() == 0) {
      return;
    }
    if (samples() == 0) {
      first = later.first;
    } else {
      steps.add(difference(later.first, last));
    }
    vectors.merge(later.vectors);
    steps.merge(later.steps);
    last = later.last;
  }

  public long samples() {
    return vectors.count();
  }

  /**
   * Frozen means and covariances.
   *
   * @throws IllegalStateException for fewer than two vectors
   * @throws IllegalArgumentException if a number does not vary, or only as those before it
   */
  public TSquaredReference reference(CovarianceEstimate estimate) {
    return new TSquaredReference(
        means(), covariance(estimate), new TSquaredDesign(vectors.width(), samples(), 1, estimate));
  }

  double[] means() {
    return vectors.means();
  }

  double[][] covariance(CovarianceEstimate estimate) {
    if (samples() < 2) {
      throw new IllegalStateException("no covariances of " + samples() + " vectors");
    }
    return estimate == CovarianceEstimate.SAMPLE ? vectors.covariance() : ofSteps();
  }

  /** Half the mean product of the steps, about 0 and not about their mean. */
  private double[][] ofSteps() {
    double[][] matrix = steps.sumsOfProducts();
    double[] means = steps.means();
    double count = steps.count();
    for (int i = 0; i < means.length; i++) {
      for (int j = 0; j < means.length; j++) {
        matrix[i][j] = (matrix[i][j] / count + means[i] * means[j]) / 2;
      }
    }
    return matrix;
  }

  private static double[] difference(double[] vector, double[] before) {
    double[] difference = new double[vector.length];
    for (int i = 0; i < difference.length; i++) {
      difference[i] = vector[i] - before[i];
    }
    return difference;
  }
}
