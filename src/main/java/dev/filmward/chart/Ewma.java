package dev.filmward.chart;

import java.io.Serializable;

/**
 * An exponentially weighted moving average of points in standard units, from 0 on. Takes the
 * distance of each mean from the centre line in its own standard deviations, so that subgroups of
 * any size weigh alike; answers with the average and its limit in the same units.
 *
 * <p>Mutable, constant memory, for one thread. Source: as {@link EwmaDesign}.
 */
public final class Ewma implements Serializable {
  private static final long serialVersionUID = 1L;

  private final EwmaDesign design;
  private double average;
  private double forgotten = 1;

  public Ewma(EwmaDesign design) {
    this.design = design;
  }

  /** Where the average lies; {@link SmoothedPoint} tells whether beyond the limit. */
  public SmoothedPoint next(double z) {
    advance(z);
    return new SmoothedPoint(average, limit());
  }

  /** The same without allocating: the average as a multiple of its limit, beyond 1 is outside. */
  public double advance(double z) {
    if (Double.isNaN(z)) {
      throw new IllegalArgumentException("a point must have a place on the chart, not NaN");
    }
    average += design.lambda() * (z - average);
    double kept = 1 - design.lambda();
    forgotten *= kept * kept;
    return average / limit();
  }

  private double limit() {
    return design.limits() == EwmaDesign.Limits.EXACT
        ? design.asymptoticLimit() * Math.sqrt(1 - forgotten)
        : design.asymptoticLimit();
  }
}
