package dev.filmward.report.paper.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToLongFunction;

/** Takes many points in time order, gives those that paper can tell apart. Pure. */
final class Columns {
  private static final Comparator<ControlPoint> BY_MEAN =
      Comparator.comparingDouble(ControlPoint::mean);

  private Columns() {}

  /** The lowest and the highest mean of each column, in time order; all that are not drawn. */
  static List<ControlPoint> thinned(
      List<ControlPoint> points, ToLongFunction<ControlPoint> column) {
    List<ControlPoint> kept = new ArrayList<>();
    List<ControlPoint> one = new ArrayList<>();
    for (ControlPoint point : points) {
      boolean isNext =
          !one.isEmpty() && column.applyAsLong(one.get(0)) != column.applyAsLong(point);
      if (isNext || !point.isDrawn() || point.isHeldOut()) {
        flush(one, kept);
      }
      if (point.isDrawn() && !point.isHeldOut()) {
        one.add(point);
      } else {
        kept.add(point);
      }
    }
    flush(one, kept);
    return kept;
  }

  private static void flush(List<ControlPoint> column, List<ControlPoint> kept) {
    if (column.isEmpty()) {
      return;
    }
    ControlPoint low = column.stream().min(BY_MEAN).orElseThrow();
    ControlPoint high = column.stream().max(BY_MEAN).orElseThrow();
    kept.add(low.at() <= high.at() ? low : high);
    if (low.at() != high.at()) {
      kept.add(low.at() <= high.at() ? high : low);
    }
    column.clear();
  }
}
