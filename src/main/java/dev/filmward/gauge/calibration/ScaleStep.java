package dev.filmward.gauge.calibration;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How readings are re-scaled from a moment on. Immutable.
 *
 * @param velocityMps the velocity that the corrected readings have, m/s; with a temperature model,
 *     at the temperature of the calibration
 * @param temperature by which readings are corrected as well, where the temperature of their film
 *     was measured
 */
public record ScaleStep(
    Instant holdsFrom, Scale scale, double velocityMps, Optional<TemperatureModel> temperature) {
  public ScaleStep {
    if (!(velocityMps > 0)) {
      throw new IllegalArgumentException("a velocity is above 0, not " + velocityMps);
    }
  }

  /** One that leaves temperatures out. */
  public ScaleStep(Instant holdsFrom, Scale scale, double velocityMps) {
    this(holdsFrom, scale, velocityMps, Optional.empty());
  }

  /** The same, with what temperatures do. */
  public ScaleStep with(Optional<TemperatureModel> model) {
    return new ScaleStep(holdsFrom, scale, velocityMps, model);
  }

  /**
   * A thickness as exported, corrected.
   *
   * @param celsius of the film; empty where it was not measured
   */
  double of(double um, OptionalDouble celsius) {
    double scaled = scale.of(um);
    return temperature.isPresent() && celsius.isPresent()
        ? scaled * temperature.get().factor(celsius.getAsDouble())
        : scaled;
  }

  /** Whether it leaves the readings of a sample as they are. */
  boolean leaves(boolean hasTemperature) {
    return scale.isAsExported() && (temperature.isEmpty() || !hasTemperature);
  }
}
