package dev.filmward.rule;

import static dev.filmward.rule.SignalTest.BEYOND_LIMIT;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.ChartPoint;
import dev.filmward.chart.Ewma;
import dev.filmward.chart.EwmaDesign;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All tests of one series of subgroups that are on: those on the mean chart, and on the chart of
 * spread and the moving average of the means whether a point is beyond its limit. Takes chart
 * points in time order, answers with the signals at each.
 *
 * <p>A subgroup of one joins the mean chart and not that of spread. Mutable, constant memory, for
 * one thread.
 */
public final class SeriesTests implements Serializable {
  private static final long serialVersionUID = 1L;

  /** {@link TestSet#warmUp} of the standard tests. */
  public static final int WARM_UP = 7;

  /** As far back as a point of the moving average weighs anything: 0.8 to this power is 4e-20. */
  public static final int WARM_UP_OF_AVERAGE = 200;

  /** The moving average: 371 means between false alarms. Asymptotic, so that its past fades. */
  public static final EwmaDesign AVERAGE = new EwmaDesign(0.2, 2.86, EwmaDesign.Limits.ASYMPTOTIC);

  /** Where a process has no spread a mean may be infinitely far off; an average must not be. */
  private static final double FARTHEST = 1000;

  private final ZoneTests means = new ZoneTests();
  private final @Nullable PatternTests patterns;
  private final @Nullable Ewma average;
  private final int on;
  private final int spreadHigh;
  private final int spreadLow;

  /** The standard tests, with ranges as spread. */
  public SeriesTests() {
    this(TestSet.STANDARD, ChartKind.RANGE);
  }

  /**
   * Tests of a choice.
   *
   * @param spread what is charted beside the means: range, deviation or moving range
   */
  public SeriesTests(TestSet tests, ChartKind spread) {
    patterns = tests.hasPatterns() ? new PatternTests() : null;
    average = tests.onAverage().contains(BEYOND_LIMIT) ? new Ewma(AVERAGE) : null;
    boolean spreadIsTested = tests.onSpread().contains(BEYOND_LIMIT);
    spreadHigh = spreadIsTested ? new Signal(spread, BEYOND_LIMIT, Side.HIGH).bit() : 0;
    spreadLow = spreadIsTested ? new Signal(spread, BEYOND_LIMIT, Side.LOW).bit() : 0;
    on = tests.signalsOnMeans();
  }

  /** Signals at the next point, in order; a shared empty list where there are none. */
  public List<Signal> next(ChartPoint point) {
    return Signal.decode(
        point.zRange().isPresent()
            ? next(point.zMean(), point.zRange().getAsDouble())
            : next(point.zMean()));
  }

  /** The same without allocating: a set for {@link Signal#decode}. */
  public int next(double zMean, double zSpread) {
    if (Double.isNaN(zSpread)) {
      throw new IllegalArgumentException("a spread must have a place on the chart, not NaN");
    }
    return next(zMean) | (zSpread > 3 ? spreadHigh : 0) | (zSpread < -3 ? spreadLow : 0);
  }

  /** The same for a subgroup of one. */
  public int next(double zMean) {
    int zones = means.next(zMean);
    int onMeans = on & (patterns == null ? zones : zones | patterns.next(zMean));
    return average == null ? onMeans : onMeans | ofAverage(average, zMean);
  }

  private static int ofAverage(Ewma average, double zMean) {
    return Signal.beyond(ChartKind.EWMA, average.advance(averaged(zMean)), 1);
  }

  /** The place of a mean as the moving average takes it. */
  public static double averaged(double zMean) {
    return Math.max(-FARTHEST, Math.min(FARTHEST, zMean));
  }
}
