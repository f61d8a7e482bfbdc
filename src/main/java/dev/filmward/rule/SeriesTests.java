package dev.filmward.rule;

import static dev.filmward.chart.ChartKind.RANGE;
import static dev.filmward.rule.SignalTest.BEYOND_LIMIT;

import dev.filmward.chart.ChartPoint;
import java.io.Serializable;
import java.util.List;

/**
 * All tests of one series of subgroups: the zone tests on the mean chart, and on the range chart
 * whether a range is beyond its limit. Takes chart points in time order, answers with the signals
 * at each.
 *
 * <p>A subgroup of one joins the mean chart and not the range chart. Mutable, constant memory, for
 * one thread.
 */
public final class SeriesTests implements Serializable {
  private static final long serialVersionUID = 1L;

  /**
   * How many earlier points settle the answer at the next. A fresh object that was given these last
   * points (or all, if there were fewer) goes on exactly as the one that saw the whole series.
   */
  public static final int WARM_UP = 7;

  private static final int RANGE_HIGH = new Signal(RANGE, BEYOND_LIMIT, Side.HIGH).bit();
  private static final int RANGE_LOW = new Signal(RANGE, BEYOND_LIMIT, Side.LOW).bit();

  private final ZoneTests means = new ZoneTests();

  /** Signals at the next point, in order; a shared empty list where there are none. */
  public List<Signal> next(ChartPoint point) {
    return Signal.decode(
        point.zRange().isPresent()
            ? next(point.zMean(), point.zRange().getAsDouble())
            : next(point.zMean()));
  }

  /** The same without allocating: a set for {@link Signal#decode}. */
  public int next(double zMean, double zRange) {
    if (Double.isNaN(zRange)) {
      throw new IllegalArgumentException("a range must have a place on the chart, not NaN");
    }
    return means.next(zMean) | (zRange > 3 ? RANGE_HIGH : 0) | (zRange < -3 ? RANGE_LOW : 0);
  }

  /** The same for a subgroup of one. */
  public int next(double zMean) {
    return means.next(zMean);
  }
}
