package dev.filmward.report.paper.drawing;

/**
 * What lies outside the specification since a moment, until the next. Immutable.
 *
 * @param since place on the axis of time, seconds
 */
public record LandSince(double since, SpecLand land) {}
