package dev.filmward.store;

import dev.filmward.film.SampleKey;
import dev.filmward.store.FigureTable.Series;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Subgroup figures of one characteristic as columns, in the order of time, then roll, then sample;
 * a point costs nothing until it is asked for. For one thread.
 */
public final class FigureColumns {
  private final Series series;
  private final List<Point> points = new ArrayList<>();

  FigureColumns(Series series) {
    this.series = series;
  }

  private record Point(BlockKeys keys, BlockFigures figures, int place) {}

  /** Adds a sample of a block, unless it has no such characteristic. */
  void add(BlockKeys keys, BlockFigures figures, int place) {
    if (figures.isPresent(place)) {
      points.add(new Point(keys, figures, place));
    }
  }

  void reverse() {
    Collections.reverse(points);
  }

  public int count() {
    return points.size();
  }

  /** Microseconds since 1970 UTC. */
  public long takenAtMicros(int index) {
    Point point = points.get(index);
    return point.keys.takenAt(point.place);
  }

  public Instant takenAt(int index) {
    return Times.toInstant(takenAtMicros(index));
  }

  public long sampleId(int index) {
    Point point = points.get(index);
    return point.keys.sampleId(point.place);
  }

  /** Readings in the subgroup; 0 where the characteristic was not measured. */
  public int size(int index) {
    Point point = points.get(index);
    return point.figures.size(point.place);
  }

  /** Asked only where something was measured; so are the other figures. */
  public double mean(int index) {
    Point point = points.get(index);
    return point.figures.mean(point.place);
  }

  public double range(int index) {
    Point point = points.get(index);
    return point.figures.greatest(point.place) - point.figures.least(point.place);
  }

  public double sumOfSquares(int index) {
    Point point = points.get(index);
    return point.figures.sumOfSquares(point.place);
  }

  /** The point with all that is known of it. */
  public FigureRow row(int index) {
    Point point = points.get(index);
    BlockEntry.Id id = point.keys.id(point.place);
    return new FigureRow(
        id.sampleId(),
        new SampleKey(series.line(), series.structure(), id.roll(), id.sample()),
        Times.toInstant(point.keys.takenAt(point.place)),
        id.fileId(),
        point.figures.subgroup(point.place));
  }

  /** All points with all that is known of them. */
  public List<FigureRow> rows() {
    List<FigureRow> rows = new ArrayList<>(count());
    for (int i = 0; i < count(); i++) {
      rows.add(row(i));
    }
    return rows;
  }
}
