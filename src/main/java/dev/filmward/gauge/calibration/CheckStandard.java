package dev.filmward.gauge.calibration;

import dev.filmward.gauge.calibration.Scaling.Word;
import java.util.OptionalDouble;

/**
 * A known film that a gauge is checked on, again and again. Immutable.
 *
 * @param id 0 until it is kept
 * @param film its thickness and how well that is known
 * @param sigmaUm standard deviation of single readings of it, um, where it is known; else it comes
 *     from the first readings
 */
public record CheckStandard(
    long id, String gauge, ReferencePiece film, OptionalDouble sigmaUm, Word word) {
  public CheckStandard {
    if (gauge.isBlank()) {
      throw new IllegalArgumentException("which gauge is checked on \"" + film.name() + "\"?");
    }
    if (sigmaUm.isPresent() && !(sigmaUm.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "the standard deviation of readings is in um, above 0, not " + sigmaUm.getAsDouble());
    }
  }
}
