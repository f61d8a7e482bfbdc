package dev.filmward.gauge.calibration;

import dev.filmward.gauge.calibration.Scaling.Word;
import java.time.Instant;

/** Which gauge measures a line from a moment on. Immutable. */
public record GaugeUse(String line, String gauge, Instant holdsFrom, Word word) {
  public GaugeUse {
    if (line.isBlank() || gauge.isBlank()) {
      throw new IllegalArgumentException("which gauge measures which line?");
    }
  }
}
