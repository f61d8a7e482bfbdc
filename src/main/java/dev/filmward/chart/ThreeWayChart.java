package dev.filmward.chart;

import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Takes samples lane by lane in time order, answers with their places on the three charts. Mutable,
 * constant memory, for one thread.
 */
public final class ThreeWayChart implements Serializable {
  private static final long serialVersionUID = 1L;

  private final ThreeWayLimits limits;
  private double last = Double.NaN;

  public ThreeWayChart(ThreeWayLimits limits) {
    this.limits = limits;
  }

  /** A reading for each lane, NaN where there is none; one must be there. */
  public ThreeWayPoint next(double[] readings) {
    LaneProfile profile = limits.profile();
    double[] corrected = profile.corrected(readings);
    LaneReadings present = LaneReadings.of(corrected, profile.lanes());
    if (present.size() == 0) {
      throw new IllegalArgumentException("a sample has at least one reading");
    }
    double level = present.mean();
    double jump = Math.abs(level - last);
    last = level;
    return new ThreeWayPoint(
        level,
        limits.zLevel(present.size(), level),
        Double.isNaN(jump)
            ? OptionalDouble.empty()
            : OptionalDouble.of(limits.level().zMovingRange(jump)),
        within(corrected, present));
  }

  private ThreeWayPoint.Within within(double[] corrected, LaneReadings present) {
    int worst = -1;
    double farthest = 0;
    double squares = 0;
    double mean = present.mean();
    for (int lane = 0; lane < corrected.length; lane++) {
      double deviation = present.has(lane) ? corrected[lane] - mean : 0;
      squares += deviation * deviation;
      boolean farther = worst < 0 || Math.abs(deviation) > Math.abs(farthest);
      if (farther && present.has(lane)) {
        worst = lane;
        farthest = deviation;
      }
    }
    int size = present.size();
    return size == 1
        ? new ThreeWayPoint.Within(OptionalDouble.empty(), worst, 0)
        : new ThreeWayPoint.Within(
            OptionalDouble.of(limits.zWithin(size, Math.sqrt(squares / (size - 1)))),
            worst,
            zLane(size, farthest));
  }

  /** In standard deviations of the distance of one of {@code size} lanes from their mean. */
  private double zLane(int size, double deviation) {
    double sigma = limits.profile().sigmaResidual();
    return deviation == 0 ? 0 : deviation / (sigma * Math.sqrt(1 - 1.0 / size));
  }
}
