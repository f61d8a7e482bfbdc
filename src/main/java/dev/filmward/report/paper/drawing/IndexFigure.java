package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * What an {@link IndexChart} shows. Immutable.
 *
 * @param points one a week, oldest first
 * @param steps places of points before which the specification changed
 */
public record IndexFigure(
    List<IndexPoint> points,
    List<Integer> steps,
    double required,
    String requiredWords,
    Numbers numbers) {
  public IndexFigure {
    points = List.copyOf(points);
    steps = List.copyOf(steps);
  }
}
