package dev.filmward.chart;

/**
 * A point of a chart that sums up or smooths what came before, with limits on both sides of 0, in
 * standard deviations of a single charted mean. Immutable.
 *
 * @param limit above 0
 */
public record SmoothedPoint(double value, double limit) {

  public SmoothedPoint {
    if (Double.isNaN(value) || !(limit > 0)) {
      throw new IllegalArgumentException("not a point: " + value + " with limit " + limit);
    }
  }

  public boolean isBeyond() {
    return Math.abs(value) > limit;
  }

  /** The limits on the scale of the means. */
  public Band limits(double centre, double sigmaOfMean) {
    return new Band(centre - limit * sigmaOfMean, centre, centre + limit * sigmaOfMean);
  }

  /** The value on the scale of the means. */
  public double value(double centre, double sigmaOfMean) {
    return centre + value * sigmaOfMean;
  }
}
