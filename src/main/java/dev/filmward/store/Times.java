package dev.filmward.store;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Instants as the database keeps them: whole microseconds since 1970-01-01 UTC. */
final class Times {
  private static final long MICROS = 1_000_000;

  private Times() {}

  /** Exact for 290 000 years around 1970; the library's own difference ends in 2262. */
  static long toMicros(Instant instant) {
    return Math.addExact(
        Math.multiplyExact(instant.getEpochSecond(), MICROS), instant.getNano() / 1000);
  }

  static Instant toInstant(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS);
  }
}
