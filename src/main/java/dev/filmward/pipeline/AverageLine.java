package dev.filmward.pipeline;

import dev.filmward.chart.Ewma;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.rule.SeriesTests;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureRow;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The moving average of the means along a chart, as the tests follow it: from the centre line on
 * where other limits take over, each mean by its distance in its own standard deviations. For one
 * thread.
 */
final class AverageLine {
  /** So many points of before settle the average at the first. */
  static final int WARM_UP = SeriesTests.WARM_UP_OF_AVERAGE;

  private final List<LimitsVersion> versions;
  private Optional<LimitsVersion> inForce = Optional.empty();
  private Ewma average = new Ewma(SeriesTests.AVERAGE);

  AverageLine(List<LimitsVersion> versions) {
    this.versions = versions;
  }

  /**
   * Follows the means.
   *
   * @param before measured points that were taken before, oldest first
   * @return for each point the average in standard deviations of its mean, off the centre line; NaN
   *     where nothing was measured or no limits held
   */
  double[] of(List<FigureRow> before, FigureColumns columns) {
    for (FigureRow row : before) {
      row.subgroup().ifPresent(found -> next(row.takenAt(), found.size(), found.mean()));
    }
    double[] line = new double[columns.count()];
    Arrays.fill(line, Double.NaN);
    for (int i = 0; i < line.length; i++) {
      if (columns.size(i) > 0) {
        Instant at = columns.takenAt(i);
        line[i] = next(at, columns.size(i), columns.mean(i));
      }
    }
    return line;
  }

  private double next(Instant at, int size, double mean) {
    Optional<LimitsVersion> version = LimitsVersion.inForce(versions, at);
    if (!version.equals(inForce)) {
      inForce = version;
      average = new Ewma(SeriesTests.AVERAGE);
    }
    return version
        .map(held -> average.next(SeriesTests.averaged(held.limits().zMean(size, mean))).value())
        .orElse(Double.NaN);
  }
}
