package dev.filmward.gauge.calibration;

import java.time.Instant;

/**
 * What a gauge showed on a check standard. Immutable.
 *
 * @param id 0 until it is kept
 * @param um as shown
 */
public record CheckReading(
    long id, long standardId, Instant at, double um, String by, String note) {
  private static final double THICKEST_UM = 100_000;

  public CheckReading {
    if (!(um > 0 && um <= THICKEST_UM)) {
      throw new IllegalArgumentException("a reading of a film is in um, above 0, not " + um);
    }
  }
}
