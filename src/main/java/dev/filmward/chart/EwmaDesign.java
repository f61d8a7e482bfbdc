package dev.filmward.chart;

import java.io.Serializable;

/**
 * How an exponentially weighted moving average is charted. Immutable.
 *
 * <p>Source: J. M. Lucas and M. S. Saccucci, Exponentially weighted moving average control schemes,
 * Technometrics 32 (1990) 1.
 *
 * @param lambda weight of the newest point, above 0 and at most 1; 0.2 sees shifts of one sigma
 *     soon
 * @param reach of the limits, in standard deviations of the average, above 0
 */
public record EwmaDesign(double lambda, double reach, Limits limits) implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Which standard deviation of the average the limits are made from. */
  public enum Limits {
    /** That after the points seen so far, smaller at the start. */
    EXACT,
    /** That after very many points. */
    ASYMPTOTIC
  }

  public EwmaDesign {
    if (!(lambda > 0 && lambda <= 1) || !(reach > 0) || !Double.isFinite(reach)) {
      throw new IllegalArgumentException(
          "lambda is in (0, 1] and the reach above 0, not " + lambda + " and " + reach);
    }
  }

  /** Limit after very many points, in standard deviations of a point. */
  public double asymptoticLimit() {
    return reach * Math.sqrt(lambda / (2 - lambda));
  }
}
