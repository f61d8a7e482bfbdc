package dev.filmward.intake;

import java.time.ZoneId;
import java.util.Optional;

/**
 * How a file writes points in time. Immutable.
 *
 * @param pattern see {@link TimePattern}
 * @param zone of times without an offset; the plant's where there is none
 */
public record TimeForm(String pattern, Optional<ZoneId> zone, Twice twice) {
  public TimeForm {
    TimePattern.of(pattern);
  }
}
