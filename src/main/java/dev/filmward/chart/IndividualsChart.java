package dev.filmward.chart;

import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Takes single values in time order, answers with their places on the individuals and the moving
 * range chart, the latter in the place of a range; the first value has none. Mutable, constant
 * memory, for one thread.
 */
public final class IndividualsChart implements Serializable {
  private static final long serialVersionUID = 1L;

  private final IndividualsLimits limits;
  private double last = Double.NaN;

  public IndividualsChart(IndividualsLimits limits) {
    this.limits = limits;
  }

  public ChartPoint next(double value) {
    double jump = Math.abs(value - last);
    last = value;
    return new ChartPoint(
        limits.zValue(value),
        Double.isNaN(jump) ? OptionalDouble.empty() : OptionalDouble.of(limits.zMovingRange(jump)));
  }
}
