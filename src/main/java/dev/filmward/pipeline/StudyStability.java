package dev.filmward.pipeline;

import dev.filmward.chart.Band;
import dev.filmward.chart.Baseline;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.gauge.study.KnownPieces;
import dev.filmward.gauge.study.ReferencePiece;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a known piece read from date to date: means and ranges of each date, or single readings and
 * their moving ranges where there is one a date, with limits from themselves. Immutable.
 *
 * <p>Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III B (from memory), which
 * looks for points beyond the limits of a control chart; limits as in ISO 7870-2.
 *
 * @param perDate readings of a date
 * @param limits empty with fewer than 20 dates, or where readings never differ
 */
public record StudyStability(int perDate, List<Dated> points, Optional<Limits> limits) {
  /** The rules behind it, for people. */
  public static final String SOURCE =
      "AIAG, Measurement Systems Analysis, 4th edition, chapter III B: stable where no point lies"
          + " beyond the limits of its chart; limits as in ISO 7870-2";

  public StudyStability {
    points = List.copyOf(points);
  }

  /** The readings of one date, all of them. */
  public record Dated(LocalDate date, List<Double> um) {
    public Dated {
      um = List.copyOf(um);
    }

    public double mean() {
      return um.stream().mapToDouble(value -> value).average().orElseThrow();
    }

    double range() {
      return Collections.max(um) - Collections.min(um);
    }
  }

  /**
   * Limits of the charts.
   *
   * @param beyond indices from 0 of points that lie beyond them
   */
  public record Limits(Band level, Band spread, List<Integer> beyond) {
    public Limits {
      beyond = List.copyOf(beyond);
    }
  }

  static StudyStability of(int perDate, List<Dated> points) {
    if (points.size() < KnownPieces.LEAST_DATES) {
      return new StudyStability(perDate, points, Optional.empty());
    }
    return new StudyStability(
        perDate, points, perDate == 1 ? individuals(points) : means(perDate, points));
  }

  /** Of a date, or from the date before; empty for a first single reading. */
  public OptionalDouble spreadAt(int index) {
    if (perDate > 1) {
      return OptionalDouble.of(points.get(index).range());
    }
    return index == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.abs(points.get(index).mean() - points.get(index - 1).mean()));
  }

  private static Optional<Limits> individuals(List<Dated> points) {
    List<Double> um = points.stream().map(Dated::mean).toList();
    return CheckStandard.of(new ReferencePiece("", 0, um))
        .map(one -> new Limits(one.value(), one.movingRange(), one.beyond()));
  }

  private static Optional<Limits> means(int perDate, List<Dated> points) {
    Baseline baseline = new Baseline();
    points.forEach(point -> baseline.add(perDate, point.mean(), point.range()));
    return baseline
        .limits()
        .filter(limits -> limits.sigmaWithin() > 0)
        .map(limits -> on(limits, perDate, points));
  }

  private static Limits on(MeanRangeLimits limits, int perDate, List<Dated> points) {
    Band level = limits.mean(perDate);
    Band spread = limits.range(perDate);
    List<Integer> beyond = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      if (!holds(level, points.get(i).mean()) || !holds(spread, points.get(i).range())) {
        beyond.add(i);
      }
    }
    return new Limits(level, spread, beyond);
  }

  private static boolean holds(Band band, double value) {
    return value >= band.lower() && value <= band.upper();
  }
}
