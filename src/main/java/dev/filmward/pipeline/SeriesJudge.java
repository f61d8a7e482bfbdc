package dev.filmward.pipeline;

import dev.filmward.chart.ChartPoint;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Signal;
import dev.filmward.store.FigureRow;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Runs the tests along one series, each point under the limits in force at its time; where other
 * limits take over, patterns begin anew. A sample in which the characteristic was not measured is
 * passed over. For one thread.
 */
final class SeriesJudge {
  private final List<LimitsVersion> versions;
  private Optional<LimitsVersion> inForce = Optional.empty();
  private SeriesTests tests = new SeriesTests();
  private List<Signal> before = List.of();

  /**
   * @param versions first to last
   */
  SeriesJudge(List<LimitsVersion> versions) {
    this.versions = versions;
  }

  /** One judged point. */
  record Judged(
      FigureRow row,
      Subgroup subgroup,
      LimitsVersion limits,
      double zMean,
      List<Signal> now,
      List<Signal> before) {}

  /** Judges rows in time order; points from before any limits held are left out. */
  List<Judged> judge(List<FigureRow> rows) {
    List<Judged> judged = new ArrayList<>();
    for (FigureRow row : rows) {
      row.subgroup().flatMap(subgroup -> judge(row, subgroup)).ifPresent(judged::add);
    }
    return judged;
  }

  /** The version that holds at a moment. */
  static Optional<LimitsVersion> inForce(List<LimitsVersion> versions, Instant moment) {
    for (int i = versions.size() - 1; i >= 0; i--) {
      LimitsVersion version = versions.get(i);
      if (!version.holdsFrom().isAfter(moment)) {
        return version.holdsAt(moment) ? Optional.of(version) : Optional.empty();
      }
    }
    return Optional.empty();
  }

  private Optional<Judged> judge(FigureRow row, Subgroup subgroup) {
    Optional<LimitsVersion> version = inForce(versions, row.takenAt());
    if (!version.equals(inForce)) {
      inForce = version;
      tests = new SeriesTests();
      before = List.of();
    }
    return version.map(
        held -> {
          ChartPoint point = held.limits().plot(subgroup);
          List<Signal> now = tests.next(point);
          Judged judged = new Judged(row, subgroup, held, point.zMean(), now, before);
          before = now;
          return judged;
        });
  }
}
