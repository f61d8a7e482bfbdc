package dev.filmward.composition;

import dev.filmward.stats.Cholesky;
import java.io.Serializable;
import java.util.Arrays;

/**
 * Means and covariances frozen from a baseline, and distances from them. Covariances that are
 * singular, as of layers together with their total, are refused. Immutable.
 *
 * <p>Source: H. Hotelling, Multivariate quality control, in Techniques of Statistical Analysis
 * (1947).
 */
public final class TSquaredReference implements Serializable {
  private static final long serialVersionUID = 1L;

  private final double[] means;
  private final double[][] covariance;
  private final TSquaredDesign design;
  private final Cholesky root;

  /** A reference; the arrays are copied. */
  public TSquaredReference(double[] means, double[][] covariance, TSquaredDesign design) {
    if (means.length != design.width() || covariance.length != design.width()) {
      throw new IllegalArgumentException(
          "means and covariances must be of " + design.width() + " numbers");
    }
    this.means = means.clone();
    this.covariance = Arrays.stream(covariance).map(double[]::clone).toArray(double[][]::new);
    this.design = design;
    this.root = new Cholesky(covariance);
  }

  public TSquaredDesign design() {
    return design;
  }

  public double mean(int i) {
    return means[i];
  }

  public double covariance(int i, int j) {
    return covariance[i][j];
  }

  /** Squared distance of a sample's mean vector, which of samples of one is the vector. */
  public double tSquared(double[] vector) {
    return design.size() * root.quadraticForm(deviation(vector));
  }

  private double[] deviation(double[] vector) {
    if (vector.length != means.length) {
      throw new IllegalArgumentException(
          "a vector of " + means.length + " numbers is needed, not of " + vector.length);
    }
    double[] deviation = new double[means.length];
    for (int i = 0; i < deviation.length; i++) {
      deviation[i] = vector[i] - means[i];
      if (!Double.isFinite(deviation[i])) {
        throw new IllegalArgumentException("a vector is finite, not " + Arrays.toString(vector));
      }
    }
    return deviation;
  }
}
