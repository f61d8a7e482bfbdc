package dev.filmward.report.paper.drawing;

import java.util.Optional;

/**
 * One sample on a control chart. NaN where there is no mean, or no limit. Immutable.
 *
 * @param at seconds, on the axis
 * @param membership whether it is judged, or was left out
 * @param signal short name of the test that it fulfilled
 */
public record ControlPoint(
    double at,
    double mean,
    double lower,
    double centre,
    double upper,
    Membership membership,
    Optional<String> signal) {

  /** Whether a sample is judged with the others. */
  public enum Membership {
    JUDGED,
    HELD_OUT
  }

  boolean isDrawn() {
    return Double.isFinite(mean);
  }

  boolean isHeldOut() {
    return membership == Membership.HELD_OUT;
  }

  boolean sameLimits(ControlPoint other) {
    return same(lower, other.lower) && same(centre, other.centre) && same(upper, other.upper);
  }

  private static boolean same(double a, double b) {
    return Double.compare(a, b) == 0;
  }
}
