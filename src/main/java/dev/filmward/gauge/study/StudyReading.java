package dev.filmward.gauge.study;

/**
 * One reading of a gauge study. Immutable.
 *
 * @param part the marked spot that was measured
 * @param operator who measured
 * @param trial which of the repeats, as the person wrote it
 * @param layer its position or name, or {@code total}
 * @param um the thickness, finite
 */
public record StudyReading(String part, String operator, String trial, String layer, double um) {

  public StudyReading {
    if (part.isBlank() || operator.isBlank() || trial.isBlank() || layer.isBlank()) {
      throw new IllegalArgumentException(
          "a reading of a gauge study names its part, operator, trial and layer");
    }
    if (!Double.isFinite(um)) {
      throw new IllegalArgumentException("a thickness is finite, not " + um);
    }
  }
}
