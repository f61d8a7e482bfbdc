package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.rule.ChosenTests;
import dev.filmward.rule.SeriesTests;
import dev.filmward.rule.Signal;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureRow;
import dev.filmward.store.SignalTable.Stored;
import dev.filmward.subgroup.Subgroup;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * The signals of many points under limits on trial, which hold for all of them. The same as {@link
 * SeriesJudge} gives, without a row for each point: a chart on trial asks for them each time. For
 * one thread.
 */
final class TrialSignals {
  private final MeanRangeLimits limits;
  private final ChosenTests choice;
  private final int position;
  private final SeriesTests tests = SeriesJudge.fresh();

  TrialSignals(LimitsVersion version, ChosenTests choice, int position) {
    this.limits = version.limits();
    this.choice = choice;
    this.position = position;
  }

  /**
   * Tests points.
   *
   * @param before measured points that settle the answer at the first
   */
  List<Stored> of(List<FigureRow> before, FigureColumns columns) {
    for (FigureRow row : before) {
      row.subgroup().ifPresent(this::next);
    }
    List<Stored> signals = new ArrayList<>();
    for (int i = 0; i < columns.count(); i++) {
      int size = columns.size(i);
      int fulfilled = size == 0 ? 0 : next(size, columns.mean(i), columns.range(i));
      if (fulfilled != 0) {
        Instant takenAt = columns.takenAt(i);
        for (Signal signal : choice.at(takenAt, position).shown(Signal.decode(fulfilled))) {
          signals.add(new Stored(columns.sampleId(i), signal));
        }
      }
    }
    return signals;
  }

  private void next(Subgroup subgroup) {
    next(subgroup.size(), subgroup.mean(), subgroup.range());
  }

  private int next(int size, double mean, double range) {
    double zMean = limits.zMean(size, mean);
    return size == 1 ? tests.next(zMean) : tests.next(zMean, limits.zRange(size, range));
  }
}
