package dev.filmward.pipeline;

import dev.filmward.store.FigureColumns;
import java.util.BitSet;
import java.util.function.IntToDoubleFunction;

/**
 * Chooses the points that show a long series on a chart as wide as it is: the time is cut into
 * buckets of {@value #PIXELS_PER_BUCKET} pixels; of each the first and the last point stay, and
 * those with the least and greatest mean and range. The newest {@value #NEWEST} points all stay,
 * for the table below the chart. A series that is short enough stays whole.
 */
public final class PointChoice {
  private static final int PIXELS_PER_BUCKET = 4;
  private static final int POINTS_PER_BUCKET = 6;
  private static final int NEWEST = 300;

  private final FigureColumns columns;
  private final BitSet chosen = new BitSet();

  private PointChoice(FigureColumns columns) {
    this.columns = columns;
  }

  /** The indices of the points to show. */
  public static BitSet of(FigureColumns columns, int pixels) {
    PointChoice choice = new PointChoice(columns);
    int buckets = Math.max(1, pixels / PIXELS_PER_BUCKET);
    int count = columns.count();
    if (count <= NEWEST + (long) POINTS_PER_BUCKET * buckets) {
      choice.chosen.set(0, count);
    } else {
      choice.chosen.set(count - NEWEST, count);
      choice.choose(buckets);
    }
    return choice.chosen;
  }

  private void choose(int buckets) {
    int count = columns.count();
    double first = columns.takenAtMicros(0);
    double width = Math.max(1, (columns.takenAtMicros(count - 1) - first) / buckets);
    int from = 0;
    while (from < count) {
      double bucket = Math.floor((columns.takenAtMicros(from) - first) / width);
      int to = from + 1;
      while (to < count && columns.takenAtMicros(to) < first + (bucket + 1) * width) {
        to++;
      }
      chosen.set(from);
      chosen.set(to - 1);
      chooseOutermost(from, to, columns::mean);
      chooseOutermost(from, to, columns::range);
      from = to;
    }
  }

  private void chooseOutermost(int from, int to, IntToDoubleFunction figure) {
    int least = -1;
    int greatest = -1;
    for (int i = from; i < to; i++) {
      if (columns.size(i) > 0) {
        double value = figure.applyAsDouble(i);
        least = least < 0 || value < figure.applyAsDouble(least) ? i : least;
        greatest = greatest < 0 || value > figure.applyAsDouble(greatest) ? i : greatest;
      }
    }
    if (least >= 0) {
      chosen.set(least);
      chosen.set(greatest);
    }
  }
}
