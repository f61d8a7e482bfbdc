package dev.filmward.report.paper.drawing;

/**
 * One lane. NaN where nothing was measured. Immutable.
 *
 * @param mean of the week
 * @param low mean less three standard deviations
 * @param high mean and three standard deviations
 */
public record LanePoint(String lane, double mean, double low, double high) {}
