package dev.filmward.chart;

import java.io.Serializable;

/**
 * Two cumulative sums of points in standard units, one for each side of the centre line, that never
 * fall below 0. Takes the distance of each mean from the target in its own standard deviations.
 *
 * <p>A sum beyond its limit stays until the points bring it down; whoever has mended the cause
 * starts afresh with {@link #restart}. Mutable, constant memory, for one thread. Source: as {@link
 * CusumDesign}.
 */
public final class Cusum implements Serializable {
  private static final long serialVersionUID = 1L;

  private final CusumDesign design;
  private double high;
  private double low;
  private long pointsHigh;
  private long pointsLow;

  public Cusum(CusumDesign design) {
    this.design = design;
    restart();
  }

  /** Puts both sums back to the head start. */
  public void restart() {
    high = design.headStart();
    low = design.headStart();
    pointsHigh = 0;
    pointsLow = 0;
  }

  public CusumPoint next(double z) {
    if (Double.isNaN(z)) {
      throw new IllegalArgumentException("a point must have a place on the chart, not NaN");
    }
    high = Math.max(0, high + z - design.allowance());
    low = Math.max(0, low - z - design.allowance());
    pointsHigh = high > 0 ? pointsHigh + 1 : 0;
    pointsLow = low > 0 ? pointsLow + 1 : 0;
    return new CusumPoint(
        new CusumPoint.Sum(high, pointsHigh), new CusumPoint.Sum(low, pointsLow), design.limit());
  }
}
