package dev.filmward.diagnosis;

import java.time.Instant;
import java.util.Optional;

/**
 * When a change began, with an interval of 95 %.
 *
 * @param at for a step the first sample after it; for a drift where it began
 * @param notBefore empty where it may have begun before the window
 */
public record Since(Instant at, Optional<Instant> notBefore, Instant notAfter) {
  public Since {
    if (notAfter.isBefore(at) || notBefore.map(at::isBefore).orElse(false)) {
      throw new IllegalArgumentException(
          "an interval holds its moment; not " + notBefore + ", " + at + ", " + notAfter);
    }
  }
}
