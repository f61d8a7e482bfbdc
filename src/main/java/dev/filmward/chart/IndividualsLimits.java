package dev.filmward.chart;

import java.io.Serializable;

/**
 * Limits of an individuals and moving range chart at three standard deviations: 2.660 and 3.267
 * times the average moving range. In the unit of the values. A sigma of 0 is allowed: then any
 * difference is infinitely far off. Immutable.
 *
 * <p>Source: ISO 7870-2. Autocorrelation makes moving ranges small and these limits too narrow.
 *
 * @param sigma standard deviation of a value from one to the next
 */
public record IndividualsLimits(double centre, double sigma) implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final int NEIGHBOURS = 2;

  public IndividualsLimits {
    new MeanRangeLimits(centre, sigma);
  }

  public Band value() {
    return bothCharts().mean(1);
  }

  public Band movingRange() {
    return bothCharts().range(NEIGHBOURS);
  }

  /** Distance of a value from the centre, in sigma. */
  public double zValue(double value) {
    return bothCharts().zMean(1, value);
  }

  /** Distance of a moving range from its centre line, in standard deviations of such a range. */
  public double zMovingRange(double movingRange) {
    return bothCharts().zRange(NEIGHBOURS, movingRange);
  }

  private MeanRangeLimits bothCharts() {
    return new MeanRangeLimits(centre, sigma);
  }
}
