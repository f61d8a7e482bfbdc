package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * What a {@link LanesChart} shows. Immutable.
 *
 * @param target NaN where there is none
 */
public record LanesFigure(List<LanePoint> lanes, SpecLand land, double target, Numbers numbers) {
  public LanesFigure {
    lanes = List.copyOf(lanes);
  }
}
