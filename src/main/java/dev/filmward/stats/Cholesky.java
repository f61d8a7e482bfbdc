package dev.filmward.stats;

import java.io.Serializable;

/**
 * The triangular root of a covariance matrix, for quadratic forms. A matrix that is singular to
 * rounding, as of layers together with their total, is refused ({@link IllegalArgumentException}).
 * Immutable.
 *
 * <p>Source: G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. (2013), algorithm 4.2.1.
 */
public final class Cholesky implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double SINGULAR = 1e-12;

  private final double[][] root;

  /** Of a symmetrical matrix, whose lower triangle is looked at. */
  public Cholesky(double[][] matrix) {
    root = new double[matrix.length][];
    for (int i = 0; i < matrix.length; i++) {
      root[i] = new double[i + 1];
      for (int j = 0; j <= i; j++) {
        root[i][j] = i == j ? pivot(matrix, i) : entry(matrix, i, j);
      }
    }
  }

  private double entry(double[][] matrix, int i, int j) {
    return (matrix[i][j] - rowProduct(i, j)) / root[j][j];
  }

  private double pivot(double[][] matrix, int i) {
    double rest = matrix[i][i] - rowProduct(i, i);
    if (!(rest > SINGULAR * matrix[i][i])) {
      throw new IllegalArgumentException(
          "component " + (i + 1) + " does not vary, or only as those before it; leave it out");
    }
    return Math.sqrt(rest);
  }

  private double rowProduct(int i, int j) {
    double sum = 0;
    for (int k = 0; k < j; k++) {
      sum += root[i][k] * root[j][k];
    }
    return sum;
  }

  public int width() {
    return root.length;
  }

  /** {@code x' M^-1 x}. */
  public double quadraticForm(double[] x) {
    double sum = 0;
    for (double part : forward(x)) {
      sum += part * part;
    }
    return sum;
  }

  /** {@code M^-1 x}. */
  public double[] solve(double[] x) {
    double[] y = forward(x);
    for (int i = y.length - 1; i >= 0; i--) {
      for (int k = i + 1; k < y.length; k++) {
        y[i] -= root[k][i] * y[k];
      }
      y[i] /= root[i][i];
    }
    return y;
  }

  private double[] forward(double[] x) {
    double[] y = x.clone();
    for (int i = 0; i < y.length; i++) {
      for (int k = 0; k < i; k++) {
        y[i] -= root[i][k] * y[k];
      }
      y[i] /= root[i][i];
    }
    return y;
  }
}
