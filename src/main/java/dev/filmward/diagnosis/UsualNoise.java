package dev.filmward.diagnosis;

import dev.filmward.stats.Cholesky;

/**
 * How the layers vary from sample to sample while nothing happens: how alike neighbouring samples
 * are, in all layers taken together, and the covariance of what is new in each. Immutable.
 *
 * <p>The coefficient is the one whose first four powers sum to the correlations of these lags, so
 * that noise on top of a slow movement does not hide it (after Box, Jenkins and Reinsel, Time
 * Series Analysis (1994), section 2.1, for correlations).
 */
final class UsualNoise {
  private static final int LAGS = 4;
  private static final double MOST_ALIKE = 0.95;

  final double phi;
  final double[][] covariance;
  private final Cholesky root;

  private UsualNoise(double phi, double[][] covariance) {
    this.phi = phi;
    this.covariance = covariance;
    this.root = new Cholesky(covariance);
  }

  /** Of residuals by sample and layer, about their mean. */
  static UsualNoise of(double[][] residuals) {
    int n = residuals.length;
    int layers = residuals[0].length;
    double[] mean = new double[layers];
    for (double[] row : residuals) {
      for (int i = 0; i < layers; i++) {
        mean[i] += row[i] / n;
      }
    }
    double alike = 0;
    for (int i = 0; i < layers; i++) {
      alike += correlations(residuals, mean[i], i) / layers;
    }
    double phi = coefficient(alike);
    double[][] covariance = new double[layers][layers];
    for (int t = 1; t < n; t++) {
      for (int i = 0; i < layers; i++) {
        for (int k = 0; k <= i; k++) {
          covariance[i][k] +=
              news(residuals, t, i, phi, mean[i]) * news(residuals, t, k, phi, mean[k]) / (n - 2);
        }
      }
    }
    for (int i = 0; i < layers; i++) {
      covariance[i][i] = covariance[i][i] * (1 + 1e-9) + 1e-12;
      for (int k = 0; k < i; k++) {
        covariance[k][i] = covariance[i][k];
      }
    }
    return new UsualNoise(phi, covariance);
  }

  /** From the differences of neighbours, so that a change of the mean does not matter. */
  static UsualNoise ofDifferences(double[][] values) {
    int layers = values[0].length;
    double[][] covariance = new double[layers][layers];
    for (int t = 1; t < values.length; t++) {
      for (int i = 0; i < layers; i++) {
        for (int k = 0; k < layers; k++) {
          covariance[i][k] +=
              (values[t][i] - values[t - 1][i])
                  * (values[t][k] - values[t - 1][k])
                  / (2 * (values.length - 1));
        }
      }
    }
    for (int i = 0; i < layers; i++) {
      covariance[i][i] = covariance[i][i] * (1 + 1e-9) + 1e-12;
    }
    return new UsualNoise(0, covariance);
  }

  private static double news(double[][] values, int t, int i, double phi, double mean) {
    return values[t][i] - mean - phi * (values[t - 1][i] - mean);
  }

  /** Sum of the correlations of the first lags, less what a fitted mean takes off them. */
  private static double correlations(double[][] values, double mean, int i) {
    int n = values.length;
    double squares = 0;
    double products = 0;
    for (int t = 0; t < n; t++) {
      double here = values[t][i] - mean;
      squares += here * here;
      for (int lag = 1; lag <= Math.min(LAGS, t); lag++) {
        products += here * (values[t - lag][i] - mean);
      }
    }
    return squares == 0 ? 0 : products / squares + (double) LAGS / n;
  }

  private static double coefficient(double sum) {
    double low = 0;
    double high = MOST_ALIKE;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double powers = 0;
      double power = 1;
      for (int lag = 1; lag <= LAGS; lag++) {
        power *= middle;
        powers += power;
      }
      if (powers < sum) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The inverse covariance times a vector. */
  double[] weighed(double[] vector) {
    return root.solve(vector);
  }
}
