package dev.filmward.alarm;

import java.time.Duration;
import java.util.Optional;

/**
 * What an unusual characteristic may lead to.
 *
 * @param outOfSpec whether a reading lies outside the individual specification
 * @param critical whether it is the total or holds a barrier layer
 * @param timeToSpec until the mean meets a specification limit, where it is drifting to one
 */
public record Stakes(boolean outOfSpec, boolean critical, Optional<Duration> timeToSpec) {

  /** How soon film would be out of specification; the later constant is the more urgent one. */
  enum Consequence {
    NONE_FORESEEN,
    WITHIN_A_SHIFT,
    WITHIN_AN_HOUR,
    NOW
  }

  private static final Duration HOUR = Duration.ofHours(1);

  /** Forecasts are not made further than a shift (common practice, no source). */
  public static final Duration SHIFT = Duration.ofHours(8);

  Consequence consequence() {
    if (outOfSpec) {
      return Consequence.NOW;
    }
    if (timeToSpec.isEmpty() || timeToSpec.get().compareTo(SHIFT) > 0) {
      return Consequence.NONE_FORESEEN;
    }
    return timeToSpec.get().compareTo(HOUR) <= 0
        ? Consequence.WITHIN_AN_HOUR
        : Consequence.WITHIN_A_SHIFT;
  }

  /**
   * From severity and time to consequence: a barrier or the total is severe, and a mean beyond its
   * limits weighs more than a test of runs. Common practice, no source.
   */
  Priority priority(Priority atLeast) {
    Priority byConsequence =
        switch (consequence()) {
          case NOW, WITHIN_AN_HOUR -> critical ? Priority.HIGH : Priority.MEDIUM;
          case WITHIN_A_SHIFT -> critical ? Priority.MEDIUM : Priority.LOW;
          case NONE_FORESEEN -> Priority.LOW;
        };
    return byConsequence.compareTo(atLeast) > 0 ? byConsequence : atLeast;
  }
}
