package dev.filmward.chart;

import java.time.Instant;

/**
 * Control limits that a person froze from a baseline; they hold until a person freezes others.
 *
 * @param version from 1, for each characteristic
 */
public record LimitsVersion(
    int version,
    MeanRangeLimits limits,
    BaselineSpan baseline,
    Instant holdsFrom,
    Decision decision) {

  /** The subgroups that limits were computed from. */
  public record BaselineSpan(Instant from, Instant to, long subgroups) {}

  /** Who froze limits, when and why. */
  public record Decision(String author, String reason, Instant at) {
    public Decision {
      if (author.isBlank()) {
        throw new IllegalArgumentException("who freezes the limits? Give a name");
      }
      if (reason.isBlank()) {
        throw new IllegalArgumentException("why are the limits frozen? Give a reason");
      }
    }
  }
}
