package dev.filmward.gauge.calibration;

import java.time.Instant;

/**
 * How readings are re-scaled from a moment on. Immutable.
 *
 * @param velocityMps the velocity that the corrected readings have, m/s
 */
public record ScaleStep(Instant holdsFrom, Scale scale, double velocityMps) {
  public ScaleStep {
    if (!(velocityMps > 0)) {
      throw new IllegalArgumentException("a velocity is above 0, not " + velocityMps);
    }
  }
}
