package dev.filmward.chart;

import java.util.OptionalDouble;

/**
 * Where a subgroup lies on the mean chart and the range chart, as distances from the centre line in
 * standard deviations of what is charted; below the line they are negative. A process without any
 * spread gives infinite distances. Immutable.
 *
 * @param zRange of the range, or of the standard deviation or moving range that is charted in its
 *     place; empty for a subgroup of one, which has no range
 */
public record ChartPoint(double zMean, OptionalDouble zRange) {

  public ChartPoint {
    if (Double.isNaN(zMean) || Double.isNaN(zRange.orElse(0))) {
      throw new IllegalArgumentException("a chart point is a number: " + zMean + ", " + zRange);
    }
  }

  public boolean hasRange() {
    return zRange.isPresent();
  }
}
