package dev.filmward.diagnosis;

import java.util.Arrays;

/**
 * Several series at once with first-order autoregressive noise taken out of them, and their
 * regression on a level and one more regressor. For one thread.
 *
 * <p>Source: S. J. Prais and C. B. Winsten, Trend estimators and serial correlation (1954).
 */
final class Whitened {
  private final double phi;
  private final double[][] values;
  private final double[] ones;
  private final double oneOne;
  private final double[] oneValues;
  private final double[][] plainTails;
  private final double[] minutes;
  private final double[][] timedTails;
  private final double[][] moments;

  /**
   * @param series by sample and dimension
   * @param minutes of the samples
   */
  Whitened(double[][] series, double[] minutes, double phi) {
    this.phi = phi;
    this.minutes = minutes;
    int n = series.length;
    int dimensions = series[0].length;
    values = new double[n][dimensions];
    double[] all = new double[n];
    Arrays.fill(all, 1);
    ones = whiten(all);
    for (int d = 0; d < dimensions; d++) {
      for (int t = 0; t < n; t++) {
        values[t][d] =
            t == 0
                ? series[0][d] * Math.sqrt(1 - phi * phi)
                : series[t][d] - phi * series[t - 1][d];
      }
    }
    oneValues = new double[dimensions];
    double sum = 0;
    for (int t = 0; t < n; t++) {
      sum += ones[t] * ones[t];
      for (int d = 0; d < dimensions; d++) {
        oneValues[d] += ones[t] * values[t][d];
      }
    }
    oneOne = sum;
    plainTails = new double[n + 1][dimensions];
    timedTails = new double[n + 1][dimensions];
    moments = new double[n + 1][2];
    sumTails();
  }

  int size() {
    return values.length;
  }

  private double[] whiten(double[] x) {
    double[] white = new double[x.length];
    white[0] = x[0] * Math.sqrt(1 - phi * phi);
    for (int t = 1; t < x.length; t++) {
      white[t] = x[t] - phi * x[t - 1];
    }
    return white;
  }

  /**
   * Coefficients of the regressor, one for each dimension, and how much the data say about them:
   * their covariance is that of the noise over the information.
   */
  Fit fit(Course course) {
    return switch (course.kind()) {
      case STEP -> fitStep(course.from());
      case DRIFT -> fitDrift(course.from());
      default -> fit(course.regressor(minutes));
    };
  }

  /** As {@link #fit(Course)}, of any regressor. */
  Fit fit(double[] regressor) {
    double[] x = whiten(regressor);
    double xx = 0;
    double xOne = 0;
    double[] coefficients = new double[oneValues.length];
    for (int t = 0; t < x.length; t++) {
      if (x[t] != 0) {
        xx += x[t] * x[t];
        xOne += x[t] * ones[t];
        for (int d = 0; d < coefficients.length; d++) {
          coefficients[d] += x[t] * values[t][d];
        }
      }
    }
    double information = xx - xOne * xOne / oneOne;
    for (int d = 0; d < coefficients.length; d++) {
      coefficients[d] = (coefficients[d] - xOne * oneValues[d] / oneOne) / information;
    }
    return new Fit(coefficients, information);
  }

  /** As {@link #fit} of a step from a sample, not the first, on. */
  Fit fitStep(int from) {
    double rest = 1 - phi;
    int n = values.length;
    double xx = 1 + (n - 1 - from) * rest * rest;
    double xOne = ones[from] + (n - 1 - from) * rest * rest;
    double[] coefficients = new double[oneValues.length];
    for (int d = 0; d < coefficients.length; d++) {
      coefficients[d] = values[from][d] + rest * plainTails[from + 1][d];
    }
    return solved(coefficients, xx, xOne);
  }

  /** As {@link #fit} of a line that begins at a sample, not the first or last, and ends at 1. */
  Fit fitDrift(int from) {
    int n = values.length;
    double rest = 1 - phi;
    double start = rest * minutes[from];
    double end = minutes[n - 1] - minutes[from];
    int count = n - 1 - from;
    double sum = moments[from + 1][0];
    double xx = moments[from + 1][1] - 2 * start * sum + count * start * start;
    double xOne = rest * (sum - count * start);
    double[] coefficients = new double[oneValues.length];
    for (int d = 0; d < coefficients.length; d++) {
      coefficients[d] = (timedTails[from + 1][d] - start * plainTails[from + 1][d]) / end;
    }
    return solved(coefficients, xx / (end * end), xOne / end);
  }

  private Fit solved(double[] products, double xx, double xOne) {
    double information = xx - xOne * xOne / oneOne;
    for (int d = 0; d < products.length; d++) {
      products[d] = (products[d] - xOne * oneValues[d] / oneOne) / information;
    }
    return new Fit(products, information);
  }

  /** Sums from every sample to the end, of values, of whitened minutes, and of their products. */
  private void sumTails() {
    for (int t = values.length - 1; t > 0; t--) {
      double u = minutes[t] - phi * minutes[t - 1];
      moments[t][0] = moments[t + 1][0] + u;
      moments[t][1] = moments[t + 1][1] + u * u;
      for (int d = 0; d < oneValues.length; d++) {
        plainTails[t][d] = plainTails[t + 1][d] + values[t][d];
        timedTails[t][d] = timedTails[t + 1][d] + u * values[t][d];
      }
    }
  }

  /** Coefficients, and the information about each. */
  static final class Fit {
    private final double[] coefficients;
    private final double information;

    private Fit(double[] coefficients, double information) {
      this.coefficients = coefficients;
      this.information = information;
    }

    double[] coefficients() {
      return coefficients;
    }

    double information() {
      return information;
    }
  }
}
