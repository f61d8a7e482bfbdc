package dev.filmward.chart;

import java.util.OptionalDouble;

/**
 * Where a sample lies on the three charts, as distances from the centre lines in standard
 * deviations of what is charted. Immutable.
 *
 * @param level mean of the readings less their lanes' effects, in the unit of the readings
 * @param zJump empty for the first sample
 */
public record ThreeWayPoint(double level, double zLevel, OptionalDouble zJump, Within within) {

  /**
   * How the lanes lie about their usual profile.
   *
   * @param zDeviation of their standard deviation; empty for a sample of one lane
   * @param farthestLane index from 0 of the lane that is farthest off
   * @param zFarthestLane its distance in standard deviations; 0 for a sample of one lane
   */
  public record Within(OptionalDouble zDeviation, int farthestLane, double zFarthestLane) {}
}
