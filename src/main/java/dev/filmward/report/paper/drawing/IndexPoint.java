package dev.filmward.report.paper.drawing;

/**
 * An index of one week. NaN where there is none, or no interval. Immutable.
 *
 * @param week short, as "W47"
 */
public record IndexPoint(String week, double value, double from, double to, Claim claim) {
  /** What the figure may be called. */
  public enum Claim {
    CAPABILITY,
    PERFORMANCE
  }
}
