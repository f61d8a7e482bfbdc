package dev.filmward.alarm;

import java.time.Instant;
import java.util.Optional;

/**
 * What a line was doing when a sample was taken.
 *
 * @param madeElseAt when it last made something else before that; empty where it never did
 */
public record LineMoment(LineMode mode, Optional<Instant> madeElseAt) {
  /** It was running, and has never made anything else. */
  public static final LineMoment RUNNING = new LineMoment(LineMode.RUNNING, Optional.empty());
}
