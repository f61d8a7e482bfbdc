package dev.filmward.chart;

/**
 * Where the two cumulative sums stand, in standard deviations of a single charted mean. Immutable.
 *
 * @param high sum of deviations above the target
 * @param low sum of deviations below the target, not negative either
 */
public record CusumPoint(Sum high, Sum low, double limit) {

  /**
   * One sum.
   *
   * @param points how many points ago it last was 0: when it is beyond the limit, an estimate of
   *     when the change began
   */
  public record Sum(double value, long points) {}

  public boolean isHigh() {
    return high.value > limit;
  }

  public boolean isLow() {
    return low.value > limit;
  }
}
