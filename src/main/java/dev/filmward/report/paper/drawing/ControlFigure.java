package dev.filmward.report.paper.drawing;

import java.util.List;

/**
 * What a {@link ControlChart} shows. Immutable.
 *
 * @param from begin of the axis, seconds
 * @param until its end
 * @param gapSeconds a longer time between two samples is a gap in the line
 * @param days written places on the axis of time
 * @param moments written places where something else begins to hold
 * @param points in time order
 * @param lands in time order, the first from the begin of the axis
 */
public record ControlFigure(
    double from,
    double until,
    double gapSeconds,
    List<Mark> days,
    List<Mark> moments,
    List<ControlPoint> points,
    List<LandSince> lands,
    String lowerWords,
    String centreWords,
    String upperWords,
    Numbers numbers) {
  public ControlFigure {
    days = List.copyOf(days);
    moments = List.copyOf(moments);
    points = List.copyOf(points);
    lands = List.copyOf(lands);
  }
}
