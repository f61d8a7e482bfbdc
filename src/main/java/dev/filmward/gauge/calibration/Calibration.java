package dev.filmward.gauge.calibration;

import dev.filmward.gauge.calibration.Scaling.Word;
import java.util.List;
import java.util.Optional;

/**
 * The record of a calibration: never changed once made. Immutable.
 *
 * @param id 0 until it is kept
 * @param before velocity and zero offset set in the gauge then
 * @param temperature how the velocity follows the temperature, where that is known
 * @param doubts what a person was told to look at
 */
public record Calibration(
    long id,
    Subject subject,
    Velocity before,
    FittedVelocity found,
    List<PieceReadings> pieces,
    Optional<TemperatureModel> temperature,
    List<String> doubts,
    Word word) {
  public Calibration {
    pieces = List.copyOf(pieces);
    doubts = List.copyOf(doubts);
  }

  /**
   * What was calibrated.
   *
   * @param structure code of the structure, or empty for every layer of that resin
   * @param layer name of the layer or the reported layer; empty where only the resin counts
   * @param resin of it, in words; may be empty
   */
  public record Subject(String gauge, String structure, String layer, String resin) {
    public Subject {
      if (gauge.isBlank()) {
        throw new IllegalArgumentException("which gauge is calibrated?");
      }
      if (layer.isBlank() && resin.isBlank()) {
        throw new IllegalArgumentException("which layer or which resin is calibrated?");
      }
      if (structure.isBlank() && resin.isBlank()) {
        throw new IllegalArgumentException(
            "a calibration for all structures names the resin that it is of");
      }
    }
  }

  /** The same under the number that it is kept under. */
  public Calibration withId(long kept) {
    return new Calibration(kept, subject, before, found, pieces, temperature, doubts, word);
  }

  /** How readings at the velocity before turn into those at the one found. */
  public Scale scale() {
    return Scale.between(before, found.velocity());
  }
}
