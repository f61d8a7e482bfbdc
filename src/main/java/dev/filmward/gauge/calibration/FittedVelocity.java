package dev.filmward.gauge.calibration;

import java.util.OptionalDouble;

/**
 * What a calibration found. Immutable.
 *
 * @param uMps standard uncertainty of the velocity, m/s
 * @param uOffsetNs standard uncertainty of the zero offset, ns; 0 where the offset was taken over
 * @param covariance of velocity and offset, m/s ns
 * @param chiSquare weighted squares of what the line leaves over; empty where nothing can be left
 *     over or no spread is known
 * @param degrees of freedom of that: pieces less 2
 */
public record FittedVelocity(
    Velocity velocity,
    double uMps,
    double uOffsetNs,
    double covariance,
    OptionalDouble chiSquare,
    int degrees) {
  public FittedVelocity {
    if (!(uMps >= 0) || !(uOffsetNs >= 0) || !Double.isFinite(covariance)) {
      throw new IllegalArgumentException("an uncertainty is 0 or more");
    }
  }

  /** Relative standard uncertainty of the velocity. */
  public double relative() {
    return uMps / velocity.mps();
  }
}
