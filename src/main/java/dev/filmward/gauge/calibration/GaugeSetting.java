package dev.filmward.gauge.calibration;

import dev.filmward.gauge.calibration.Scaling.Word;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * What the gauge of a line is set to for a layer, from a moment on. Immutable.
 *
 * @param layer name of the layer, or of the reported layer where it has several
 * @param greatestUm the greatest thickness that the gauge is set to expect, um
 */
public record GaugeSetting(
    String line,
    String structure,
    String layer,
    Velocity velocity,
    OptionalDouble greatestUm,
    Instant holdsFrom,
    Word word) {
  public GaugeSetting {
    if (line.isBlank() || structure.isBlank() || layer.isBlank()) {
      throw new IllegalArgumentException("which layer of which structure on which line is set?");
    }
    if (greatestUm.isPresent() && !(greatestUm.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "the greatest thickness is in um, above 0, not " + greatestUm.getAsDouble());
    }
  }
}
