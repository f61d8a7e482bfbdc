package dev.filmward.pipeline;

import dev.filmward.pipeline.SeriesView.Judged;
import dev.filmward.pipeline.SeriesView.Summary;
import dev.filmward.pipeline.SpecTimes.Spec;
import dev.filmward.store.FigureColumns;
import java.time.Instant;

/**
 * Sums the subgroups of a span up: all of them, and for the capability those that were made since
 * something else was asked for the last time, since readings under two specifications have no index
 * in common. Wants them in the order of time. For one thread.
 */
final class AskedFigures {
  private final SpecTimes asked;
  private final SeriesFigures all = new SeriesFigures();
  private SeriesFigures latest = all;
  private int asking;
  private boolean isBegun;

  AskedFigures(SpecTimes asked) {
    this.asked = asked;
    asking = asked.all().size() - 1;
  }

  static AskedFigures of(FigureColumns columns, SpecTimes asked) {
    AskedFigures figures = new AskedFigures(asked);
    for (int i = 0; i < columns.count(); i++) {
      if (columns.size(i) > 0) {
        figures.at(columns.takenAt(i));
        figures.add(columns.size(i), columns.mean(i), columns.range(i), columns.sumOfSquares(i));
      }
    }
    return figures;
  }

  /** Says when the next subgroup was taken. */
  void at(Instant moment) {
    int now = asked.indexAt(moment);
    if (isBegun && now != asking) {
      latest = new SeriesFigures();
    }
    asking = now;
    isBegun = true;
  }

  void add(int size, double mean, double range, double sumOfSquares) {
    all.add(size, mean, range, sumOfSquares);
    if (latest != all) {
      latest.add(size, mean, range, sumOfSquares);
    }
  }

  Summary summary(long samples) {
    Spec spec = asked.all().get(asking);
    return new Summary(
        samples,
        all.readings(),
        all.mean(),
        all.sigmaWithin(),
        all.sigmaOverall(),
        latest.capability(spec.individual()),
        new Judged(spec, latest.readings()));
  }
}
