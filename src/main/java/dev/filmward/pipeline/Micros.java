package dev.filmward.pipeline;

import java.time.Instant;

/** Times as microseconds since 1970 UTC, as samples have them. */
final class Micros {
  private static final long PER_SECOND = 1_000_000;

  private Micros() {}

  static long of(Instant time) {
    return time.getEpochSecond() * PER_SECOND + time.getNano() / 1000;
  }

  static Instant toInstant(long micros) {
    long second = Math.floorDiv(micros, PER_SECOND);
    return Instant.ofEpochSecond(second, (micros - second * PER_SECOND) * 1000);
  }
}
