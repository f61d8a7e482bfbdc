package dev.filmward.pipeline;

import dev.filmward.chart.ChartKind;
import dev.filmward.chart.ChartPoint;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Signal;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import dev.filmward.store.FigureRow;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Runs the tests along one series, each point under the limits and the choice of tests in force at
 * its time. Where other limits take over, patterns begin anew; where another choice does, they go
 * on, for all tests are followed all the time. A sample in which the characteristic was not
 * measured is passed over. For one thread.
 */
final class SeriesJudge {
  private static final TestSet ALL = TestSet.ALL.withAverage();

  private final List<LimitsVersion> versions;
  private final Function<Instant, TestChoice> choice;
  private final int depth;
  private Optional<LimitsVersion> inForce = Optional.empty();
  private SeriesTests tests = fresh();
  private List<List<Signal>> before = List.of();

  /**
   * @param versions first to last
   * @param choice of tests at a moment
   * @param depth at so many points, this one included, signals are remembered
   */
  SeriesJudge(List<LimitsVersion> versions, Function<Instant, TestChoice> choice, int depth) {
    this.versions = versions;
    this.choice = choice;
    this.depth = depth;
  }

  /**
   * One judged point.
   *
   * @param now tests fulfilled that are shown
   * @param recent those that raise alarms at this point, at the one before it, and so on
   */
  record Judged(
      FigureRow row,
      Subgroup subgroup,
      LimitsVersion limits,
      double zMean,
      List<Signal> now,
      List<List<Signal>> recent) {}

  /** All tests, at their beginning. */
  static SeriesTests fresh() {
    return new SeriesTests(ALL, ChartKind.RANGE);
  }

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
    return LimitsVersion.inForce(versions, moment);
  }

  private List<List<Signal>> recent(List<Signal> now) {
    List<List<Signal>> recent = new ArrayList<>(depth);
    recent.add(now);
    recent.addAll(before.subList(0, Math.min(before.size(), depth - 1)));
    return List.copyOf(recent);
  }

  private Optional<Judged> judge(FigureRow row, Subgroup subgroup) {
    Optional<LimitsVersion> version = inForce(versions, row.takenAt());
    if (!version.equals(inForce)) {
      inForce = version;
      tests = fresh();
      before = List.of();
    }
    return version.map(
        held -> {
          ChartPoint point = held.limits().plot(subgroup);
          List<Signal> all = tests.next(point);
          TestChoice chosen = choice.apply(row.takenAt());
          before = recent(chosen.alarming(all));
          return new Judged(row, subgroup, held, point.zMean(), chosen.shown(all), before);
        });
  }
}
