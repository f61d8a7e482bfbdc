package dev.filmward.stats;

/**
 * A straight line through points by weighted least squares, and how sure it is. Weights count
 * against each other only: the spread about the line is estimated from the points. Immutable.
 *
 * <p>Source: N. R. Draper and H. Smith, Applied Regression Analysis, 3rd ed. (1998), sections 1.3
 * to 1.4 and 9.2.
 *
 * @param slope y for one x
 * @param meanX weighted mean of x
 * @param meanY weighted mean of y, which the line goes through
 * @param weight sum of all weights
 * @param squaresX weighted squares of x about their mean, above 0
 * @param squaresY weighted squares of y about their mean
 * @param residualVariance weighted squares about the line, over the degrees of freedom
 * @param degrees of freedom, at least 1
 */
public record WeightedLine(
    double slope,
    double meanX,
    double meanY,
    double weight,
    double squaresX,
    double squaresY,
    double residualVariance,
    long degrees) {

  public WeightedLine {
    if (!(squaresX > 0) || !(weight > 0) || !(residualVariance >= 0) || degrees < 1) {
      throw new IllegalArgumentException(
          "no line: it takes three points, at two places, and weights above 0");
    }
  }

  /** A value with its standard error. */
  public record Estimate(double value, double standardError) {
    /** Infinite where there is no error at all. */
    public double t() {
      return value / standardError;
    }
  }

  /**
   * The line through some points.
   *
   * @param weights above 0, as many as points
   */
  public static WeightedLine of(double[] x, double[] y, double[] weights) {
    double weight = 0;
    double sumX = 0;
    double sumY = 0;
    for (int i = 0; i < x.length; i++) {
      weight += weights[i];
      sumX += weights[i] * x[i];
      sumY += weights[i] * y[i];
    }
    double meanX = sumX / weight;
    double meanY = sumY / weight;
    double squaresX = 0;
    double squaresY = 0;
    double products = 0;
    for (int i = 0; i < x.length; i++) {
      squaresX += weights[i] * (x[i] - meanX) * (x[i] - meanX);
      squaresY += weights[i] * (y[i] - meanY) * (y[i] - meanY);
      products += weights[i] * (x[i] - meanX) * (y[i] - meanY);
    }
    double slope = products / squaresX;
    double left = 0;
    for (int i = 0; i < x.length; i++) {
      double off = y[i] - meanY - slope * (x[i] - meanX);
      left += weights[i] * off * off;
    }
    long degrees = x.length - 2L;
    return new WeightedLine(
        slope, meanX, meanY, weight, squaresX, squaresY, left / Math.max(1, degrees), degrees);
  }

  public Estimate slopeEstimate() {
    return new Estimate(slope, Math.sqrt(residualVariance / squaresX));
  }

  public Estimate intercept() {
    return at(0);
  }

  /** Where the line is at x. */
  public Estimate at(double x) {
    double away = x - meanX;
    return new Estimate(
        meanY + slope * away, Math.sqrt(residualVariance * (1 / weight + away * away / squaresX)));
  }

  /** Two-sided probability of an estimate as far from 0 if it were 0. */
  public double p(Estimate estimate) {
    return 2 * new StudentT(degrees).above(Math.abs(estimate.t()));
  }

  /** Half the width of an interval about an estimate that holds with a probability. */
  public double halfWidth(Estimate estimate, double confidence) {
    return new StudentT(degrees).upperQuantile((1 - confidence) / 2) * estimate.standardError();
  }

  /** Share of the squares that the line explains. */
  public double rSquared() {
    return 1 - residualVariance * degrees / squaresY;
  }
}
