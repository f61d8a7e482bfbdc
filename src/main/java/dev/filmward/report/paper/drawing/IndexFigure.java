package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * What an {@link IndexChart} shows. Immutable.
 *
 * @param points one a week, oldest first
 */
public record IndexFigure(
    List<IndexPoint> points, double required, String requiredWords, Numbers numbers) {
  public IndexFigure {
    points = List.copyOf(points);
  }
}
