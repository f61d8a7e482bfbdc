package dev.filmward.film;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One layer of a structure, as it is extruded.
 *
 * @param individual limits for a single reading, um
 * @param average limits for the mean of a sample, um; may be empty
 * @param densityGcm3 density in g/cm3
 * @param extruder name of the extruder that feeds it; layers that share one move together
 * @param velocityMps sound velocity set in the gauge, m/s
 * @param greatestUm the greatest thickness that the gauge is set to expect, um
 */
public record Layer(
    String name,
    Role role,
    Optional<String> resin,
    SpecLimits individual,
    SpecLimits average,
    OptionalDouble densityGcm3,
    Optional<String> extruder,
    OptionalDouble velocityMps,
    OptionalDouble greatestUm) {

  public Layer {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a layer needs a name");
    }
    positive("density", densityGcm3);
    positive("velocity", velocityMps);
    positive("greatest", greatestUm);
  }

  private static void positive(String what, OptionalDouble value) {
    if (value.isPresent() && !(value.getAsDouble() > 0)) {
      throw new IllegalArgumentException(what + " must be above zero, not " + value.getAsDouble());
    }
  }
}
