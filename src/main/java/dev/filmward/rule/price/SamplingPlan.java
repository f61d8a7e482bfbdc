package dev.filmward.rule.price;

import java.time.Duration;

/**
 * How often a line is sampled, and how long a shift is.
 *
 * @param interval from one sample to the next, above 0
 * @param shift length of a shift, above 0
 */
public record SamplingPlan(Duration interval, Duration shift) {

  public SamplingPlan {
    if (interval.isNegative() || interval.isZero() || shift.isNegative() || shift.isZero()) {
      throw new IllegalArgumentException(
          "sampling takes time; not every " + interval + " in a shift of " + shift);
    }
  }

  public double samplesPerShift() {
    return shift.toMillis() / (double) interval.toMillis();
  }
}
