package dev.filmward.stats;

/**
 * A straight line through points by weighted least squares: {@code y = intercept + slope x}.
 * Accumulates points about a moving centre of gravity, so that points far from zero lose no digits;
 * for one thread.
 *
 * <p>Weights are 1 / variance of y where that is known; then the uncertainties {@link
 * #varianceOfSlope}, {@link #varianceOfIntercept} and {@link #covariance} hold as they are. With
 * weights of 1 they are to be multiplied by {@link #residualVariance}. Source: P. R. Bevington, D.
 * K. Robinson, Data Reduction and Error Analysis for the Physical Sciences, chapter 6 (from
 * memory).
 */
public final class WeightedLineSum {
  private int points;
  private double weight;
  private double meanX;
  private double meanY;
  private double xx;
  private double xy;
  private double yy;

  /**
   * Adds a point.
   *
   * @param w weight, above 0
   */
  public void add(double x, double y, double w) {
    if (!(w > 0) || !Double.isFinite(w) || !Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException("no point at " + x + ", " + y + " of weight " + w);
    }
    points++;
    double total = weight + w;
    double dx = x - meanX;
    double dy = y - meanY;
    double share = weight * w / total;
    xx += share * dx * dx;
    xy += share * dx * dy;
    yy += share * dy * dy;
    meanX += dx * w / total;
    meanY += dy * w / total;
    weight = total;
  }

  public int points() {
    return points;
  }

  public double slope() {
    return xy / spreadOfX();
  }

  public double intercept() {
    return meanY - slope() * meanX;
  }

  /** Of the slope, for weights that are 1 / variance. */
  public double varianceOfSlope() {
    return 1 / spreadOfX();
  }

  /** Of the intercept, for weights that are 1 / variance. */
  public double varianceOfIntercept() {
    return 1 / weight + meanX * meanX / spreadOfX();
  }

  /** Of slope and intercept, for weights that are 1 / variance. */
  public double covariance() {
    return -meanX / spreadOfX();
  }

  /** Weighted squares of what the line leaves over; chi-square where weights are 1 / variance. */
  public double chiSquare() {
    return Math.max(0, yy - xy * xy / spreadOfX());
  }

  /** Points less 2. */
  public int degrees() {
    return points - 2;
  }

  /** Squares left over by degree of freedom; asked only where there is one. */
  public double residualVariance() {
    if (degrees() < 1) {
      throw new IllegalStateException("two points leave nothing over");
    }
    return chiSquare() / degrees();
  }

  private double spreadOfX() {
    if (!(xx > 0)) {
      throw new IllegalStateException("a line needs points at two places at least");
    }
    return xx;
  }
}
