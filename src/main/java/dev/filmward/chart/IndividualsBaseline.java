package dev.filmward.chart;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.CompensatedSum;
import dev.filmward.stats.Moments;
import java.io.Serializable;
import java.util.Optional;

/**
 * Sums up the single values, in time order, that limits of an individuals and moving range chart
 * are computed from. A moving range is the distance of a value from the one before it.
 *
 * <p>Mutable, for one thread, constant memory; a baseline merges with the one that follows it in
 * time. Source: ISO 7870-2.
 */
public final class IndividualsBaseline implements Serializable {
  private static final long serialVersionUID = 1L;

  private final Moments values = new Moments();
  private final CompensatedSum movingRanges = new CompensatedSum();
  private double first;
  private double last;

  public void add(double value) {
    values.add(value);
    if (count() == 1) {
      first = value;
    } else {
      movingRanges.add(Math.abs(value - last));
    }
    last = value;
  }

  /** Adds all values of a later baseline; the later one stays as it is. */
  public void merge(IndividualsBaseline later) {
    if (later.count() == 0) {
      return;
    }
    if (count() == 0) {
      first = later.first;
    } else {
      movingRanges.add(Math.abs(later.first - last));
    }
    movingRanges.add(later.movingRanges);
    last = later.last;
    values.merge(later.values);
  }

  public long count() {
    return values.count();
  }

  /** Mean of the values; there must be one. */
  public double centre() {
    return values.mean();
  }

  /** Mean of the moving ranges; there must be two values ({@link IllegalStateException}). */
  public double movingRangeBar() {
    if (count() < 2) {
      throw new IllegalStateException("no moving range of " + count() + " values");
    }
    return movingRanges.value() / (count() - 1);
  }

  /** Empty for fewer than two values. */
  public Optional<IndividualsLimits> limits() {
    return count() < 2
        ? Optional.empty()
        : Optional.of(new IndividualsLimits(centre(), movingRangeBar() / ChartConstants.d2(2)));
  }
}
